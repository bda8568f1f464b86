/** What a shape hands to placing: its metal, and the box by which others count distances from it. */
import type { Bounds } from '../../field/geometry/curve.ts';
import { outlineBounds } from '../../field/geometry/measure.ts';
import type { Outline, Point } from '../../field/geometry/outline.ts';
import type { Piece as FieldPiece } from '../../field/problem.ts';
import { origin, placedOutline, placedPiece, unitVector } from '../plane.ts';

export interface Form {
  readonly geometry: FieldPiece;
  /** Of the whole shape after turning; an opening counts as closed. */
  readonly box: Bounds;
}

/** Sizes below this are no metal that can be cut, mm. */
export const leastSize_mm = 0.001;
/** Sizes above this are slips, mm. */
export const greatestSize_mm = 10_000;

/** A shape about the origin, turned; `closed` is its outline without openings. */
export function turnedForm(geometry: FieldPiece, closed: Outline, turned_deg: number): Form {
  const u = unitVector(turned_deg);
  return { geometry: placedPiece(geometry, u, origin), box: outlineBounds(placedOutline(closed, u, origin)) };
}

export const solid = (outer: Outline): FieldPiece => ({ outer, hollows: [] });

export function shiftedForm(form: Form, by: Point): Form {
  const { x0, y0, x1, y1 } = form.box;
  return {
    geometry: placedPiece(form.geometry, { x: 1, y: 0 }, by),
    box: { x0: x0 + by.x, y0: y0 + by.y, x1: x1 + by.x, y1: y1 + by.y },
  };
}
