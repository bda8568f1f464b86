/** A triangular spike seen with its outermost metal at the origin, pointing right; a tip radius rounds it. */
import type { SpikeShape } from '../../block/tree.ts';
import type { Edge, Outline, Point } from '../../field/geometry/outline.ts';
import type { Report } from '../report.ts';

/**
 * `root_mm` is how far the base reaches back into the metal it stands on. The rounded tip is the circle of radius r about
 * C = (−r, 0); from the base corner P = (−L, b) at distance d from C its tangent meets the circle at
 * C + (r²/d²)(P − C) + (r/d²)√(d² − r²) n, with n the quarter turn of P − C toward the tip.
 */
export function spikeOutline(shape: SpikeShape, root_mm: number, report: Report): Outline | null {
  const half = shape.base.value / 2;
  const length = shape.length.value;
  const radius = shape.tipRadius?.value ?? 0;
  if (radius > half || radius >= length) {
    return report('tip-radius', {
      span: shape.tipRadius?.span ?? shape.span,
      message: `A tip radius of ${radius} mm does not fit a spike of base ${2 * half} mm and length ${length} mm.`,
    });
  }
  const base = baseCorners(length, half, root_mm);
  if (radius === 0) return { edges: [corner({ x: 0, y: 0 }), ...base.map(corner)] };
  const px = radius - length;
  const d2 = px * px + half * half;
  const along = (radius * radius) / d2;
  const across = (radius * Math.sqrt(d2 - radius * radius)) / d2;
  const touch: Point = { x: -radius + along * px + across * half, y: along * half - across * px };
  return {
    edges: [
      { from: { x: touch.x, y: -touch.y }, arc: { centre: { x: -radius, y: 0 }, anticlockwise: true } },
      corner(touch),
      ...base.map(corner),
    ],
  };
}

/** Base corners from above to below, with the root behind them. */
function baseCorners(length: number, half: number, root_mm: number): readonly Point[] {
  const above = { x: -length, y: half };
  const below = { x: -length, y: -half };
  if (root_mm === 0) return [above, below];
  const back = -length - root_mm;
  return [above, { x: back, y: half }, { x: back, y: -half }, below];
}

const corner = (from: Point): Edge => ({ from, arc: null });
