/** The line from one electrode or point to another: where it leaves metal and where it meets metal. */
import type { Point } from '../field/geometry/outline.ts';
import type { Piece as FieldPiece } from '../field/problem.ts';
import { crossings, curvesOfPieces, distance, minus, plus, times } from './plane.ts';

/** An end of a line: a point, or metal with its centre. */
export interface End {
  readonly centre: Point;
  /** Null for a plain point and for the tip of a spike. */
  readonly metal: readonly FieldPiece[] | null;
}

/**
 * The stretch between the facing edges of both ends on the line through their centres: of all crossings of that line with both
 * outlines the two that lie nearest each other. Null where the centres coincide or the line misses the metal.
 */
export function lineBetween(a: End, b: End): { readonly from: Point; readonly to: Point } | null {
  const apart = distance(a.centre, b.centre);
  if (apart < 1e-6) return null;
  const u = times(minus(b.centre, a.centre), 1 / apart);
  const leave = a.metal === null ? [0] : crossings(curvesOfPieces(a.metal), a.centre, u);
  const meet = b.metal === null ? [apart] : crossings(curvesOfPieces(b.metal), a.centre, u);
  let best: readonly [number, number] | null = null;
  for (const s of leave) {
    for (const t of meet) {
      if (best === null || Math.abs(t - s) < Math.abs(best[1] - best[0])) best = [s, t];
    }
  }
  if (best === null) return null;
  const at = (t: number): Point => plus(a.centre, times(u, t));
  return { from: at(best[0]), to: at(best[1]) };
}
