/** A prong: a rectangular spike seen with the middle of its free end at the origin, pointing right. */
import type { ProngShape } from '../../block/tree.ts';
import type { Outline } from '../../field/geometry/outline.ts';
import { polygon } from '../plane.ts';

/** `root_mm` is how far it reaches back into the metal it stands on. */
export function prongOutline({ size }: ProngShape, root_mm: number): Outline {
  const half = size.width.value / 2;
  const back = -size.height.value - root_mm;
  return polygon([
    { x: 0, y: -half },
    { x: 0, y: half },
    { x: back, y: half },
    { x: back, y: -half },
  ]);
}
