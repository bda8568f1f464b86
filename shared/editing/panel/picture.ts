/** The drawing of a setup for the panel beside the editor: as large as letters allow, in the editor's colours, with the way from the paper to its units. */
import { type DrawingPart, drawingParts } from '../../block/tree.ts';
import { outlineScene } from '../../drawing/outline-scene.ts';
import type { Scene } from '../../drawing/scene.ts';
import { solvedScene } from '../../drawing/solved-scene.ts';
import { renderSvg } from '../../drawing/svg.ts';
import type { SolvedSetup } from '../../setup/readings.ts';
import type { Setup } from '../../setup/setup.ts';
import type { PanelDrawing } from '../messages.ts';

/** What of a panel's drawing follows from a setup and its solution, whatever text they stand in. */
export type PanelPicture = Pick<PanelDrawing, 'name' | 'svg' | 'title' | 'description' | 'frame' | 'paper'>;

/** Largest extent of the paper in the drawing, mm: a panel of 450 pixels then shows letters of ten pixels, a wider one larger ones. */
const widest_mm = 130;
const highest_mm = 92;

/** What would crowd it: lengths are read by pointing, the circuit is drawn on the technicians' sheet. */
const leftOut: readonly DrawingPart[] = ['ruling', 'circuit', 'dimensions'];
const parts = drawingParts.filter((part) => !leftOut.includes(part));

/** Null for a setup without paper. Without a solution the outlines alone. */
export function panelPicture(setup: Setup, solved: SolvedSetup | null): PanelPicture | null {
  if (setup.paper === null) return null;
  const { width_mm, height_mm } = setup.paper;
  const scale = Math.min(1, widest_mm / width_mm, highest_mm / height_mm);
  const look = { parts, audience: 'teachers' as const, scale };
  const scene = solved === null ? outlineScene(setup, look) : solvedScene(setup, solved, look);
  return {
    name: setup.name,
    svg: renderSvg(scene, { id: 'panel', theme: 'editor' }),
    title: scene.title,
    description: scene.description,
    frame: frameOf(scene),
    paper: { width_mm, height_mm },
  };
}

/** The view box keeps the scene's x and turns its y down, from its upper edge on. */
function frameOf({ scale, bottom, height }: Scene): PanelDrawing['frame'] {
  return { left: 0, top: bottom + height, scale };
}
