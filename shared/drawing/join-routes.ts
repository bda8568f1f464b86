/** Leads on the paper: the shortest way between joined metal that keeps clear of other metal, probes and rows. */
import type { Point } from '../field/geometry/outline.ts';
import { boxAround, crossingCost, distanceToSegment } from './crossing.ts';
import { onPaper, type Page, type PageElectrode, type PagePiece } from './page.ts';
import { between, insidePolygons, sides } from './polygon.ts';

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
      const crossed = crossingCost(page, [a, b], boxAround(from, to));
      const cost = way.reduce((sum, p) => sum + 1 + crossed(p), 0);
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
