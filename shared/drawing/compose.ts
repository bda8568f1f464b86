/**
 * A scene from its parts. The tables give membership and two orders: in which parts take their room, and which is painted over
 * which. Nothing here knows a solution.
 */
import type { Bounds } from '../field/geometry/curve.ts';
import { circuit } from './circuit.ts';
import type { Desk } from './desk.ts';
import { dimensions } from './dimensions.ts';
import { board, clips, grain, ruling, ticks } from './frame.ts';
import { boxOf } from './labels.ts';
import { clipValues, joins, leadClips, leads, terminals } from './leads.ts';
import { lifted, metal, names, paperWork } from './metal.ts';
import { boundsAround } from './page.ts';
import { probes, rows } from './probes.ts';
import type { Item, Layer, PathPart, Scene } from './scene.ts';

/** From the lowest to the highest. Labels stand over everything. */
const painted = [
  'board',
  'ruling',
  'paper-work',
  'ticks',
  'clips',
  'equipotentials',
  'field-lines',
  'metal',
  'lifted',
  'leads',
  'joins',
  'lead-clips',
  'terminals',
  'circuit',
  'grain',
  'dimensions',
  'rows',
  'barbs',
  'carbon-dots',
  'probes',
  'readings',
  'values',
  'names',
  'key',
] as const;
export type LayerName = (typeof painted)[number];

export interface Part {
  readonly layer: LayerName;
  readonly draw: (desk: Desk) => Item[];
}

/** What stands where it stands: takes its room first. */
export const framing: readonly Part[] = [
  { layer: 'board', draw: board },
  { layer: 'clips', draw: clips },
  { layer: 'ticks', draw: ticks },
  { layer: 'ruling', draw: ruling },
  { layer: 'paper-work', draw: paperWork },
  { layer: 'metal', draw: metal },
  { layer: 'lifted', draw: lifted },
  { layer: 'leads', draw: leads },
  { layer: 'joins', draw: joins },
  { layer: 'lead-clips', draw: leadClips },
  { layer: 'circuit', draw: circuit },
  { layer: 'terminals', draw: terminals },
];

/** Names of probes and electrodes: before all that may be left out for want of room. */
export const naming: readonly Part[] = [
  { layer: 'probes', draw: probes },
  { layer: 'names', draw: names },
];

/** What may move a little to be read. */
export const lettering: readonly Part[] = [
  { layer: 'lead-clips', draw: clipValues },
  { layer: 'rows', draw: rows },
  { layer: 'dimensions', draw: dimensions },
  { layer: 'grain', draw: grain },
];

export type Drawn = readonly { readonly layer: LayerName; readonly items: readonly Item[] }[];

export function composed(desk: Desk, drawn: Drawn, words: Pick<Scene, 'title' | 'description'>): Scene {
  const layers: Layer[] = painted.flatMap((name) => {
    const items = drawn.filter(({ layer }) => layer === name).flatMap((part) => part.items);
    const shapes = items.filter((item) => item.kind !== 'label');
    return shapes.length === 0 ? [] : [{ name, items: shapes }];
  });
  const labels = drawn.flatMap(({ items }) => items.filter((item) => item.kind === 'label'));
  const extent = extentOf(desk.board, [...layers.flatMap(({ items }) => items), ...labels]);
  return {
    left: extent.x0,
    bottom: extent.y0,
    width: extent.x1 - extent.x0,
    height: extent.y1 - extent.y0,
    scale: desk.page.scale,
    layers: labels.length === 0 ? layers : [...layers, { name: 'labels', items: labels }],
    ...words,
  };
}

/** Room round the outermost marks, so that no pen is cut. */
const RIM_mm = 0.5;
/** What stands farther from the board is there by a slip: it is cut off, and the paper keeps its size. A circuit reaches about 40 mm. */
const REACH_mm = 60;

function extentOf(board: Bounds, items: readonly Item[]): Bounds {
  const isNear = (b: Bounds): boolean =>
    b.x0 >= board.x0 - REACH_mm &&
    b.y0 >= board.y0 - REACH_mm &&
    b.x1 <= board.x1 + REACH_mm &&
    b.y1 <= board.y1 + REACH_mm;
  const { x0, y0, x1, y1 } = boundsAround([board, ...items.flatMap(boundsOf).filter(isNear)]);
  const down = (value: number): number => Math.floor((value - RIM_mm) * 10) / 10;
  return { x0: down(x0), y0: down(y0), x1: -down(-x1), y1: -down(-y1) };
}

function boundsOf(item: Item): Bounds[] {
  if (item.kind === 'label') return [boxOf(item)];
  if (item.kind === 'dot') {
    const r = item.diameter / 2;
    return [{ x0: item.x - r, y0: item.y - r, x1: item.x + r, y1: item.y + r }];
  }
  return item.parts.flatMap((part: PathPart) =>
    part.to === 'close' ? [] : [{ x0: part.x, y0: part.y, x1: part.x, y1: part.y }],
  );
}
