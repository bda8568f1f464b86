/** Print of what the solutions say, for one reader: values, tables, drawings. */
import type { Audience, DrawingPart } from '../../block/tree.ts';
import { outlineScene } from '../../drawing/outline-scene.ts';
import { solvedScene } from '../../drawing/solved-scene.ts';
import type { Setup } from '../../setup/setup.ts';
import type { BoundInsert } from '../inserts/bound.ts';
import type { Insert } from '../sheet.ts';
import { freeBlank } from './blanks.ts';
import { figureOf, needsSolution, partsAsked } from './figures.ts';
import { type Html, html } from './html.ts';
import { solvedTable } from './solved-table.ts';
import { type Solutions, solvedValue } from './solved-values.ts';
import { laterBox, troubleBox } from './stand-ins.ts';
import { layoutTable } from './table-layout.ts';
import { type Amount, amountIn } from './values.ts';
import { block, type Figure, type FigurePlan, noPrint, type Placing, type Printed, words } from './view.ts';

export interface SolvedSource {
  readonly bound: readonly BoundInsert[];
  readonly setups: readonly Setup[];
  readonly plan: FigurePlan;
  readonly solutions: Solutions;
}

/** An insert with its value, its filled table, its drawing with equipotentials and field lines. */
export function solvedInsert(bound: BoundInsert, source: SolvedSource, audience: Audience): Printed {
  const { insert, target } = bound;
  if (target === null) return words(troubleBox(insert.written, bound.trouble));
  switch (target.kind) {
    case 'blank':
      return words(freeBlank(target.unit, target.length_mm));
    case 'readings':
      return block(solvedTable(layoutTable(target.rows, target.columns), source.solutions, target.caption));
    case 'drawing': {
      const parts = partsAsked(target.parts, audience);
      const figure = setupFigure(
        target.setup,
        parts,
        { ...source, audience, caption: target.caption },
        source.plan.ofInsert(insert.number),
      );
      return figure === null ? noPrint : { form: 'figure', figure };
    }
    case 'later':
      return audience === 'pupils' ? noPrint : block(laterBox(target.head));
    default: {
      const value = solvedValue(target, source.solutions);
      return words(value === null ? troubleBox(insert.written, 'no value') : valueText(value, insert));
    }
  }
}

/** The drawing of a block by its `draw` lines; null where it draws nothing for this reader. */
export function solvedBlock(number: number, source: SolvedSource, audience: Audience): Figure | null {
  const setup = source.setups[number];
  if (setup === undefined) return null;
  return setupFigure(
    setup,
    setup.draw[audience],
    { ...source, audience, caption: null },
    source.plan.ofBlock(number),
  );
}

interface Drawing {
  readonly solutions: Solutions;
  readonly audience: Audience;
  readonly caption: string | null;
}

function setupFigure(
  setup: Setup,
  parts: readonly DrawingPart[],
  { solutions, audience, caption }: Drawing,
  placing: Placing,
): Figure | null {
  if (parts.length === 0 || setup.paper === null) return null;
  const look = { parts, audience, scale: placing.scale };
  const solved = solutions.get(setup.block);
  const scene =
    solved === undefined || !parts.some(needsSolution)
      ? outlineScene(setup, { ...look, parts: parts.filter((part) => !needsSolution(part)) })
      : solvedScene(setup, solved, look);
  return figureOf(scene, placing, caption);
}

function valueText(value: Amount | readonly [Amount, Amount], insert: Insert): Html {
  if ('number' in value) return html`<span class="together">${amountText(value, insert)}</span>`;
  const [low, high] = value;
  return html`<span class="together">${amountText(low, insert)} to ${amountText(high, insert)}</span>`;
}

/** Bare in a column headed with a unit of its kind, in that unit; under any other heading the unit stays with the number. */
function amountText(amount: Amount, { bareNumber, columnUnit }: Insert): string {
  const wanted = columnUnit === null ? amount : amountIn(amount, columnUnit);
  if (wanted === null || !bareNumber) return withUnit(wanted ?? amount);
  return wanted.number;
}

const withUnit = ({ number, unit }: Amount): string => (unit === '' ? number : `${number}\u00a0${unit}`);
