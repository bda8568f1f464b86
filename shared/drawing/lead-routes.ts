/**
 * The ways of leads. A lead leaves the board from the clip on its conductor straight up, left, right or down, by the way that crosses
 * least; where electrodes or pieces are joined on the paper, the lead takes the shortest way that keeps clear of probes and rows.
 */
import type { Bounds } from '../field/geometry/curve.ts';
import type { Point } from '../field/geometry/outline.ts';
import { hypot } from '../field/maths.ts';
import type { Electrode } from '../setup/setup.ts';
import {
  isOn,
  middleOf,
  onPaper,
  type Page,
  type PageElectrode,
  type PagePiece,
  paperClips,
  rowEnds,
  scaled,
  wants,
} from './page.ts';
import { between, edgePoints, insidePolygons, sides } from './polygon.ts';

export type Polarity = 'positive' | 'negative' | 'held' | 'black lead';

export interface Lead {
  readonly electrode: Electrode;
  readonly polarity: Polarity;
  /** On the edge of the metal. */
  readonly clip: Point;
  /** Outwards, along an axis. */
  readonly direction: Point;
  /** Beyond the board. */
  readonly end: Point;
}

/** How far a lead runs beyond the board. */
const BEYOND_mm = 5;

const directions: readonly { readonly d: Point; readonly cost: number }[] = [
  { d: { x: 0, y: 1 }, cost: 0 },
  { d: { x: -1, y: 0 }, cost: 2 },
  { d: { x: 1, y: 0 }, cost: 2 },
  // The key stands below.
  { d: { x: 0, y: -1 }, cost: 300 },
];

/** One lead for each connected conductor, and one for a black lead on metal that has none. */
export function chooseLeads(page: Page, board: Bounds): Lead[] {
  const leads: Lead[] = [];
  const conductors = new Set<number>();
  const add = (placed: PageElectrode, polarity: Polarity): void => {
    const { conductor } = placed.electrode;
    if (conductor !== null && conductors.has(conductor)) return;
    const lead = bestLead(page, board, placed, polarity, leads);
    if (lead === null) return;
    leads.push(lead);
    if (conductor !== null) conductors.add(conductor);
  };
  for (const placed of page.electrodes) {
    const { connection, joinedTo, partOf } = placed.electrode;
    if (connection === null || connection.kind === 'floating' || joinedTo !== null || partOf !== null)
      continue;
    add(placed, connection.kind);
  }
  const black = page.electrodes.find(({ electrode }) => electrode.name === page.setup.meter?.blackLead);
  if (
    wants(page, 'circuit') &&
    black !== undefined &&
    !leads.some(({ electrode }) => electrode === black.electrode)
  ) {
    add(black, 'black lead');
  }
  return leads;
}

function bestLead(
  page: Page,
  board: Bounds,
  placed: PageElectrode,
  polarity: Polarity,
  others: readonly Lead[],
): Lead | null {
  let best: Lead | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const piece of placed.pieces) {
    for (const { p, n } of edgePoints(piece.polygons[0] ?? [])) {
      if (!onPaper(page, p, -8)) continue;
      for (const { d, cost } of directions) {
        if (n.x * d.x + n.y * d.y < 0.7) continue;
        const lead = {
          electrode: placed.electrode,
          polarity,
          clip: p,
          direction: d,
          end: beyond(board, p, d),
        };
        const total = cost + wayCost(page, placed, lead, others) + offMiddle(piece, lead);
        if (total >= least - 1e-6) continue;
        best = lead;
        least = total;
      }
    }
  }
  return best;
}

function beyond(board: Bounds, p: Point, d: Point): Point {
  if (d.y > 0) return { x: p.x, y: board.y1 + BEYOND_mm };
  if (d.y < 0) return { x: p.x, y: board.y0 - BEYOND_mm };
  return { x: d.x < 0 ? board.x0 - BEYOND_mm : board.x1 + BEYOND_mm, y: p.y };
}

/** Length on the paper, and much more for all that the lead would cross or come close to. */
function wayCost(page: Page, own: PageElectrode, lead: Lead, others: readonly Lead[]): number {
  const { clip, direction: d, end } = lead;
  const start = { x: clip.x + d.x * 0.4, y: clip.y + d.y * 0.4 };
  let cost = 0;
  for (const p of between(start, end, 1)) {
    if (onPaper(page, p)) cost += 1;
    if (isOn(own, p)) return Number.POSITIVE_INFINITY;
    cost += crossingCost(page, own, own, p);
    if (paperClips(page).some((b) => p.x > b.x0 - 2 && p.x < b.x1 + 2 && p.y > b.y0 && p.y < b.y1))
      cost += 20;
  }
  for (const other of others) {
    const apart = Math.abs(d.x === 0 ? other.end.x - end.x : other.end.y - end.y);
    if (other.direction.x === d.x && other.direction.y === d.y && apart < 14) cost += 60;
  }
  return cost + (page.look.parts.includes('circuit') && d.y <= 0 ? 12 : 0);
}

function offMiddle(piece: PagePiece, { clip, direction }: Lead): number {
  const centre = middleOf(piece.bounds);
  return 0.15 * Math.abs(direction.x === 0 ? clip.x - centre.x : clip.y - centre.y);
}

/** Of one point of a lead between two electrodes. */
function crossingCost(page: Page, a: PageElectrode, b: PageElectrode, p: Point): number {
  let cost = 0;
  for (const other of page.electrodes) {
    if (other === a || other === b) continue;
    if (isOn(other, p)) cost += 15;
  }
  for (const { at: probe } of page.setup.probes) {
    const q = scaled(probe, page.scale);
    if (hypot(q.x - p.x, q.y - p.y) < 4) cost += 8;
  }
  for (const row of page.setup.rows) {
    const [first, last] = rowEnds(page, row);
    if (first !== null && last !== null && distanceToSegment(first, last, p) < 2) cost += 6;
  }
  return cost;
}

function distanceToSegment(a: Point, b: Point, p: Point): number {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const length2 = dx * dx + dy * dy;
  const s = length2 === 0 ? 0 : Math.max(0, Math.min(1, ((p.x - a.x) * dx + (p.y - a.y) * dy) / length2));
  return hypot(p.x - a.x - s * dx, p.y - a.y - s * dy);
}

export interface Join {
  readonly from: Point;
  readonly to: Point;
}

/** Leads on the paper: from joined electrodes, and between pieces of one name that do not touch. */
export function chooseJoins(page: Page): Join[] {
  const joins: Join[] = [];
  for (const placed of page.electrodes) {
    placed.pieces.forEach((piece, i) => {
      const earlier = placed.pieces.slice(0, i);
      const near = nearestPiece(earlier, piece);
      if (near !== null) joins.push(...joinBetween(page, [placed, piece], [placed, near]));
    });
    const { joinedTo } = placed.electrode;
    const target = page.electrodes.find(({ electrode }) => electrode.name === joinedTo);
    const own = placed.pieces[0];
    if (target === undefined || own === undefined || touches(placed, target)) continue;
    const near = nearestPiece(target.pieces, own);
    if (near !== null) joins.push(...joinBetween(page, [placed, own], [target, near]));
  }
  return joins;
}

const touches = (a: PageElectrode, b: PageElectrode): boolean =>
  a.pieces.some((p) => b.pieces.some((q) => gapBetween(p, q) < 0.1));

function nearestPiece(pieces: readonly PagePiece[], to: PagePiece): PagePiece | null {
  let best: PagePiece | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const piece of pieces) {
    const gap = gapBetween(piece, to);
    if (gap < 0.1) return null;
    if (gap >= least) continue;
    best = piece;
    least = gap;
  }
  return best;
}

/** Distance of the metal of two pieces, 0 where they overlap; to the accuracy of the points along their edges. */
function gapBetween(a: PagePiece, b: PagePiece): number {
  let least = Number.POSITIVE_INFINITY;
  for (const [from, to] of [
    [a, b],
    [b, a],
  ] as const) {
    for (const p of from.polygons.flat()) {
      if (insidePolygons(to.polygons, p)) return 0;
      for (const [q, r] of to.polygons.flatMap(sides)) least = Math.min(least, distanceToSegment(q, r, p));
    }
  }
  return least;
}

function joinBetween(
  page: Page,
  [a, piece]: readonly [PageElectrode, PagePiece],
  [b, target]: readonly [PageElectrode, PagePiece],
): Join[] {
  const ends = (of: PagePiece): Point[] =>
    of.polygons.flatMap((polygon) => spread(polygon, 24)).filter((p) => onPaper(page, p));
  let best: Join | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const from of ends(piece)) {
    for (const to of ends(target)) {
      const way = between(from, to, 1.5).slice(1);
      if (way.length >= least) continue;
      const cost = way.reduce((sum, p) => sum + 1 + crossingCost(page, a, b, p), 0);
      if (cost >= least) continue;
      best = { from, to };
      least = cost;
    }
  }
  return best === null ? [] : [best];
}

/** About `count` points spread along a polygon, middles of long sides among them. */
function spread(polygon: readonly Point[], count: number): Point[] {
  if (polygon.length > 2 * count)
    return polygon.filter((_, i) => i % Math.ceil(polygon.length / count) === 0);
  const each = Math.max(2, Math.floor(count / Math.max(1, polygon.length)));
  return sides(polygon).flatMap(([a, b]) =>
    Array.from({ length: each - 1 }, (_, i) => {
      const s = (i + 1) / each;
      return { x: a.x + s * (b.x - a.x), y: a.y + s * (b.y - a.y) };
    }),
  );
}
