/** Pieces of one electrode: which of them touch, and the gaps that a lead bridges. */
import { type Curve, distanceToCurve, pointAt } from '../field/geometry/curve.ts';
import { insideOutline } from '../field/geometry/measure.ts';
import type { PlacedPiece } from './places.ts';
import { curvesOfPieces } from './plane.ts';
import type { Report } from './report.ts';
import { shown } from './shown.ts';

/** A note for each piece that touches none of those before it. */
export function apartNotes(name: string, pieces: readonly PlacedPiece[], report: Report): void {
  const loose = pieces.map((_, i) => i);
  // Clusters of touching pieces: each ends with the number of its first piece.
  for (const [i, a] of pieces.entries()) {
    for (let j = 0; j < i; j++) {
      const b = pieces[j];
      if (b === undefined || boxesApart(a, b) || gapBetween(a, b) > touching_mm) continue;
      const [low, high] = [Math.min(loose[i] ?? i, loose[j] ?? j), Math.max(loose[i] ?? i, loose[j] ?? j)];
      for (const k of loose.keys()) if (loose[k] === high) loose[k] = low;
    }
  }
  for (const [i, piece] of pieces.entries()) {
    if (i === 0 || loose[i] !== i) continue;
    const before = pieces.filter((_, j) => (loose[j] ?? j) < i);
    const gap = leastGap(piece, before);
    report('pieces-apart', {
      span: piece.shape.name.span,
      message: `This piece of ${name} stands ${shown(gap, 'length')} from the others: a lead joins them.`,
    });
  }
}

const touching_mm = 1e-6;

/** No distance between two pieces is less than that of their boxes along either axis. */
const boxGap = ({ box: a }: PlacedPiece, { box: b }: PlacedPiece): number =>
  Math.max(a.x0 - b.x1, b.x0 - a.x1, a.y0 - b.y1, b.y0 - a.y1);

const boxesApart = (a: PlacedPiece, b: PlacedPiece): boolean => boxGap(a, b) > touching_mm;

/** To the nearest of the others; those whose boxes lie beyond what is found already are not measured. */
function leastGap(piece: PlacedPiece, others: readonly PlacedPiece[]): number {
  const byBox = others.map((other) => ({ other, atLeast: boxGap(piece, other) }));
  let least = Number.POSITIVE_INFINITY;
  for (const { other, atLeast } of byBox.sort((a, b) => a.atLeast - b.atLeast)) {
    if (atLeast >= least) break;
    least = Math.min(least, gapBetween(piece, other));
  }
  return least;
}

/** Shortest distance between the metal of two pieces, 0 where they overlap; arcs by points along them. */
function gapBetween(a: PlacedPiece, b: PlacedPiece): number {
  if (covers(a, b) || covers(b, a)) return 0;
  const [curvesA, curvesB] = [curvesOfPieces([a.geometry]), curvesOfPieces([b.geometry])];
  if (curvesA.some((c) => curvesB.some((d) => cross(c, d)))) return 0;
  return Math.min(reach(curvesA, curvesB), reach(curvesB, curvesA));
}

/** A point of b's edge lies in the metal of a. */
function covers(a: PlacedPiece, b: PlacedPiece): boolean {
  const [first] = curvesOfPieces([b.geometry]);
  if (first === undefined) return false;
  const at = { x: first.ax, y: first.ay };
  return (
    insideOutline(a.geometry.outer, at) && !a.geometry.hollows.some((hollow) => insideOutline(hollow, at))
  );
}

const pointsOf = (c: Curve): readonly { x: number; y: number }[] =>
  Array.from({ length: c.sweep === 0 ? 2 : 73 }, (_, i) => pointAt(c, c.sweep === 0 ? i : i / 72));

const reach = (from: readonly Curve[], to: readonly Curve[]): number =>
  Math.min(
    ...from.flatMap((c) =>
      pointsOf(c).map(({ x, y }) => Math.min(...to.map((d) => distanceToCurve(d, x, y)))),
    ),
  );

/** Chords of the curves cross. */
function cross(c: Curve, d: Curve): boolean {
  const p = pointsOf(c);
  const q = pointsOf(d);
  return p.slice(1).some((b, i) => q.slice(1).some((e, j) => chordsCross(p[i] ?? b, b, q[j] ?? e, e)));
}

interface XY {
  readonly x: number;
  readonly y: number;
}

function chordsCross(a: XY, b: XY, c: XY, d: XY): boolean {
  const turn = (p: XY, q: XY, r: XY): number => (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
  return turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0;
}
