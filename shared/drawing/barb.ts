/** The open barb of 60° that tells the direction of a field line. */
import type { Point } from '../field/geometry/outline.ts';
import { cos, sin } from '../field/maths.ts';
import { at, polyline } from './marks.ts';
import type { Path } from './scene.ts';

const LENGTH_mm = 2.4;
const HALF_ANGLE = Math.PI / 6;

/** Its tip at `p`, pointing along the unit vector `u`. */
export function barb(p: Point, u: Point): Path {
  const cs = cos(HALF_ANGLE) * LENGTH_mm;
  const sn = sin(HALF_ANGLE) * LENGTH_mm;
  const stroke = (side: 1 | -1): Point =>
    at(p.x - cs * u.x - side * sn * u.y, p.y - cs * u.y + side * sn * u.x);
  return polyline('barb', [stroke(1), p, stroke(-1)]);
}
