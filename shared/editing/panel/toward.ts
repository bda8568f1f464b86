/** Follows the field from a place of the paper to the metal at which its line ends. */

import type { Point } from '../../field/geometry/outline.ts';
import { hypot } from '../../field/maths.ts';
import { metalAt } from '../../setup/metal.ts';
import type { PointReader } from '../../setup/points.ts';
import type { Setup } from '../../setup/setup.ts';

type Field = Pick<PointReader, 'strength'>;

/** The longest step, mm, so short that no metal is jumped over; and how far before metal a line counts as having reached it. */
const STEP_MM = 1;
const REACH_MM = 0.05;
const MOST_STEPS = 1500;

/**
 * Name of the electrode; null where the line comes to nothing: at the rim of a hole, which it meets only on paper with a grain, or where
 * the field dies away. Midpoint steps along −grad V, halved wherever one leaves the bare paper:
 *
 *     p' = p + h e(p + ½ h e(p)),   e = −grad V / |grad V|
 */
export function leadsTo(field: Field, setup: Setup, from: Point): string | null {
  let at = from;
  let step = STEP_MM;
  for (let count = 0; count < MOST_STEPS; count++) {
    const next = midpointStep(field, at, step);
    if (next !== null) {
      at = next;
      step = Math.min(STEP_MM, 2 * step);
      continue;
    }
    if (step > REACH_MM) {
      step /= 2;
      continue;
    }
    return metalAhead(field, setup, at);
  }
  return null;
}

function metalAhead(field: Field, setup: Setup, at: Point): string | null {
  const e = directionAt(field, at);
  if (e === null) return null;
  const ahead = { x: at.x + 2 * REACH_MM * e.x, y: at.y + 2 * REACH_MM * e.y };
  return metalAt(setup, ahead)?.name ?? null;
}

function midpointStep(field: Field, at: Point, step: number): Point | null {
  const first = directionAt(field, at);
  if (first === null) return null;
  const middle = directionAt(field, { x: at.x + (step / 2) * first.x, y: at.y + (step / 2) * first.y });
  if (middle === null) return null;
  const next = { x: at.x + step * middle.x, y: at.y + step * middle.y };
  return directionAt(field, next) === null ? null : next;
}

/** Unit vector along the field; null off the bare paper and where there is no field. */
function directionAt(field: Field, at: Point): Point | null {
  const strength = field.strength(at);
  if (strength === null) return null;
  const [x, y] = strength;
  const size = hypot(x, y);
  return size > 0 ? { x: x / size, y: y / size } : null;
}
