/** Drawings of solved setups: with equipotentials, field lines and values where they are asked for and there is a solution. */
import type { Audience, DrawingPart } from '../../block/tree.ts';
import { outlineScene } from '../../drawing/outline-scene.ts';
import { solvedScene } from '../../drawing/solved-scene.ts';
import type { Setup } from '../../setup/setup.ts';
import type { Draw } from './figure-plan.ts';
import { figureOf, needsSolution, outlineParts } from './figures.ts';
import type { Solutions } from './solved-values.ts';
import type { Figure, Placing } from './view.ts';

export interface SolvedDrawing {
  readonly setup: Setup;
  readonly parts: readonly DrawingPart[];
  readonly solutions: Solutions;
  readonly audience: Audience;
  readonly caption: string | null;
}

/** Null where nothing is to be drawn. */
export function solvedFigure(drawing: SolvedDrawing, placing: Placing): Figure | null {
  const { setup, parts, solutions, audience, caption } = drawing;
  if (parts.length === 0 || setup.paper === null) return null;
  const missing = parts.some(needsSolution) && !solutions.has(setup.block);
  const scene = drawWith(solutions, audience)(setup, parts, placing.scale);
  return figureOf(scene, placing, { caption, remark: missing ? 'not solved' : null });
}

/** The outlines alone where the setup has no solution or none is asked for. */
export function drawWith(solutions: Solutions, audience: Audience): Draw {
  return (setup, parts, scale) => {
    const solved = parts.some(needsSolution) ? solutions.get(setup.block) : undefined;
    return solved === undefined
      ? outlineScene(setup, { parts: outlineParts(parts), audience, scale })
      : solvedScene(setup, solved, { parts, audience, scale });
  };
}
