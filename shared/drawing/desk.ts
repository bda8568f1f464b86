/** What the makers of a drawing's parts work on: the page, the room that is left on it, the leads. No solution is to be had here. */
import { type Bounds, curvesOf } from '../field/geometry/curve.ts';
import type { Point } from '../field/geometry/outline.ts';
import { keyHeight } from './key.ts';
import { Occupancy } from './labels.ts';
import { chooseLeads, type Lead } from './lead-routes.ts';
import { at } from './marks.ts';
import { isMetal, type Page, rowEnds, scaled, wants } from './page.ts';
import { alongSides, between, polygonOf } from './polygon.ts';

export interface Desk {
  readonly page: Page;
  readonly room: Occupancy;
  readonly leads: readonly Lead[];
  readonly board: Bounds;
}

export function deskOf(page: Page): Desk {
  const board = boardOf(page);
  const room = new Occupancy((p) => isMetal(page, p));
  for (const { pieces } of page.electrodes) {
    for (const polygon of pieces.flatMap((piece) => piece.polygons)) {
      room.keepSolid(alongSides(polygon, 0.8));
    }
  }
  const { probes, rows, slits } = page.setup;
  if (wants(page, 'probes')) {
    for (const { at: place } of probes) room.keepSolid(around(scaled(place, page.scale), 1.2));
    for (const { at: place } of rows.flatMap(({ points }) => points)) {
      room.keepSolid([scaled(place, page.scale)]);
    }
  }
  for (const row of rows) {
    const [first, last] = rowEnds(page, row);
    if (first !== null && last !== null) room.keepLine(between(first, last, 0.5));
  }
  for (const { from, to } of slits) {
    room.keepSolid(between(scaled(from, page.scale), scaled(to, page.scale), 0.5));
  }
  room.keepBox({ ...board, y1: board.y0 + keyHeight(page) });
  for (const outline of page.holes) room.keepSolid(alongSides(polygonOf(curvesOf(outline)), 0.8));
  for (const box of page.paperClips) room.keepBox(box);
  for (const [a, b] of paperEdges(page)) room.keepSolid(between(a, b, 0.5));
  for (const [a, b] of edgesOf(board)) room.keepSolid(between(a, b, 0.5));
  return { page, room, leads: chooseLeads(page, board), board };
}

function boardOf(page: Page): Bounds {
  const { side, end } = page.margin;
  return { x0: -side, y0: -end - keyHeight(page), x1: page.width + side, y1: page.height + end };
}

const paperEdges = (page: Page): (readonly [Point, Point])[] =>
  edgesOf({ x0: 0, y0: 0, x1: page.width, y1: page.height });

function edgesOf({ x0, y0, x1, y1 }: Bounds): (readonly [Point, Point])[] {
  const corners = [at(x0, y0), at(x1, y0), at(x1, y1), at(x0, y1)];
  return corners.map((a, i) => [a, corners[(i + 1) % 4] ?? a] as const);
}

const around = ({ x, y }: Point, r: number): Point[] => [
  at(x, y),
  at(x - r, y),
  at(x + r, y),
  at(x, y - r),
  at(x, y + r),
];
