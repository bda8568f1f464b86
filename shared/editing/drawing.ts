/** The drawing of a setup for an editor: all that is known of it, small, and the same in words. */
import { type DrawingPart, drawingParts } from '../block/tree.ts';
import { outlineScene } from '../drawing/outline-scene.ts';
import { solvedScene } from '../drawing/solved-scene.ts';
import { renderSvg } from '../drawing/svg.ts';
import type { SolvedSetup } from '../setup/readings.ts';
import type { Setup } from '../setup/setup.ts';

export interface EditorDrawing {
  /** An SVG document. */
  readonly svg: string;
  readonly title: string;
  readonly description: string;
}

/** Largest extent of the paper in the drawing, mm; letters keep their size. */
const widest_mm = 120;
const highest_mm = 70;

/** What would crowd a small drawing. */
const leftOut: readonly DrawingPart[] = ['ruling', 'circuit', 'dimensions'];
const parts = drawingParts.filter((part) => !leftOut.includes(part));

/** Null for a setup without paper. Without a solution the outlines alone. */
export function editorDrawing(setup: Setup, solved: SolvedSetup | null): EditorDrawing | null {
  if (setup.paper === null) return null;
  const { width_mm, height_mm } = setup.paper;
  const scale = Math.min(1, widest_mm / width_mm, highest_mm / height_mm);
  const look = { parts, audience: 'teachers' as const, scale };
  const scene = solved === null ? outlineScene(setup, look) : solvedScene(setup, solved, look);
  return {
    svg: renderSvg(scene, { id: 'setup', backed: true }),
    title: scene.title,
    description: scene.description,
  };
}
