/** A ring: two circles about one centre; with an opening, a slot of parallel sides cut through the wall. */
import type { Opening, RingShape } from '../../block/tree.ts';
import type { Outline, Point } from '../../field/geometry/outline.ts';
import type { Span } from '../../text/span.ts';
import { circle, origin, turnedBy, unitVector } from '../plane.ts';
import type { Report } from '../report.ts';
import { type Form, solid, turnedForm } from './form.ts';

export function ringForm(shape: RingShape, report: Report): Form | null {
  const radii = ringRadii(shape, report);
  if (radii === null) return null;
  const { inner, outer } = radii;
  const closed = circle(origin, outer);
  const turned = shape.place.turned?.value ?? 0;
  if (shape.opening === null) {
    return turnedForm({ outer: closed, hollows: [circle(origin, inner)] }, closed, turned);
  }
  const open = openRing(inner, outer, shape.opening);
  if (open === null) {
    return report('opening-too-wide', {
      span: shape.opening.width.span,
      message: `An opening of ${shape.opening.width.value} mm is wider than the hollow of ${2 * inner} mm.`,
    });
  }
  return turnedForm(solid(open), closed, turned);
}

function ringRadii(
  shape: RingShape,
  report: Report,
): { readonly inner: number; readonly outer: number } | null {
  const { diameter, inside, wall } = shape;
  const outside_mm = diameter?.value ?? (inside?.value ?? 0) + 2 * (wall?.value ?? 0);
  const inside_mm = inside?.value ?? outside_mm - 2 * (wall?.value ?? 0);
  if (inside_mm > 0 && inside_mm < outside_mm) return { inner: inside_mm / 2, outer: outside_mm / 2 };
  const at: Span = (wall ?? inside ?? diameter ?? shape).span;
  return report('ring-sizes', {
    span: at,
    message:
      inside_mm <= 0
        ? `A wall of ${wall?.value ?? 0} mm fills a ring of ${outside_mm} mm. A disc?`
        : `The inside diameter, ${inside_mm} mm, is not smaller than the outer one, ${outside_mm} mm.`,
  });
}

/**
 * Round the outer circle from the upper lip of the opening to the lower, and back along the inner one. The lips of an opening of
 * width w facing right lie at y = ±w/2, x = √(r² − w²/4).
 */
function openRing(inner: number, outer: number, opening: Opening): Outline | null {
  const half = opening.width.value / 2;
  if (half >= inner) return null;
  const u = unitVector(opening.facing.angle_deg);
  const lip = (r: number, side: number): Point =>
    turnedBy(u, { x: Math.sqrt(r * r - half * half), y: side * half });
  return {
    edges: [
      { from: lip(outer, 1), arc: { centre: origin, anticlockwise: true } },
      { from: lip(outer, -1), arc: null },
      { from: lip(inner, -1), arc: { centre: origin, anticlockwise: false } },
      { from: lip(inner, 1), arc: null },
    ],
  };
}
