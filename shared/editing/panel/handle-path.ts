/** What of a handle can be grasped, as the data of an SVG path in mm on the paper, y up. */
import { type Curve, curvesOf, pointAt } from '../../field/geometry/curve.ts';
import type { Outline } from '../../field/geometry/outline.ts';

/** Null for a point. Hollows are outlines of their own: to be filled by the even-odd rule. */
export function handlePath(outlines: readonly Outline[]): string | null {
  return outlines.length === 0 ? null : outlines.map(closedPath).join('');
}

function closedPath(outline: Outline): string {
  const curves = curvesOf(outline);
  const [first] = curves;
  return first === undefined ? '' : `M${pair(first.ax, first.ay)}${curves.map(drawn).join('')}Z`;
}

/** A whole circle is two arcs: one alone would end where it begins and be nothing. */
function drawn(curve: Curve): string {
  if (curve.sweep === 0) return `L${pair(curve.bx, curve.by)}`;
  const half = pointAt(curve, 0.5);
  return arc(curve, half.x, half.y) + arc(curve, curve.bx, curve.by);
}

/** At most half a turn. Seen in axes with y up, anticlockwise is the sense of growing angles: sweep 1. */
const arc = ({ radius, sweep }: Curve, x: number, y: number): string =>
  `A${number(radius)} ${number(radius)} 0 0 ${sweep > 0 ? 1 : 0} ${pair(x, y)}`;

const pair = (x: number, y: number): string => `${number(x)} ${number(y)}`;

/** To a thousandth of a millimetre. */
const number = (value: number): string => String(Math.round(value * 1000) / 1000 + 0);
