/** Spikes and prongs: their outline, and how one stands on the side of another electrode. */
import type { ProngShape, SpikeShape } from '../../block/tree.ts';
import { type Curve, curveBounds } from '../../field/geometry/curve.ts';
import type { Outline, Point } from '../../field/geometry/outline.ts';
import type { Piece as FieldPiece } from '../../field/problem.ts';
import { crossings, curvesOfPieces, dot, plus, quarter, times, unitVector } from '../plane.ts';
import type { Report } from '../report.ts';
import { prongOutline } from './prong.ts';
import { sizesFit } from './sizes.ts';
import { spikeOutline } from './spike.ts';

/** Tip at the origin, pointing right; `root_mm` reaches back into the metal behind the base. */
export function pointedOutline(
  shape: SpikeShape | ProngShape,
  root_mm: number,
  report: Report,
): Outline | null {
  if (!sizesFit(shape, report)) return null;
  return shape.shape === 'spike' ? spikeOutline(shape, root_mm, report) : prongOutline(shape, root_mm);
}

export interface Stand {
  readonly tip: Point;
  /** How far the base must reach back for all of it to touch metal. */
  readonly root_mm: number;
}

/**
 * The stand on the side that faces the direction u: the base lies across u, at the middle of that side or at a distance from its
 * lower or left end, and touches the metal where the line along u last leaves it.
 */
export function standingOn(
  shape: SpikeShape | ProngShape,
  metal: readonly FieldPiece[],
  report: Report,
): Stand | null {
  const u = unitVector(shape.pointing.angle_deg);
  const v = upOrRight(quarter(u));
  const [width, length] =
    shape.shape === 'spike'
      ? [shape.base.value, shape.length.value]
      : [shape.size.width.value, shape.size.height.value];
  const curves = curvesOfPieces(metal);
  const { low, high, flat } = sideFacing(curves, u, v);
  const along = shape.tip.kind === 'on' ? shape.tip.along : null;
  const s = along === null ? (low + high) / 2 : low + along.value;
  const surface = lastCrossing(curves, u, v, s);
  if (surface === null || s < low || s > high) {
    return report('stand-beyond', {
      span: (along ?? shape.tip).span,
      message: `That side is ${rounded(high - low)} mm long: there is no metal to stand on at this place.`,
    });
  }
  if (flat !== null && surface < flat - onSide_mm) {
    return report('stand-beyond', {
      span: (along ?? shape.tip).span,
      message: 'There is a gap in that side here: no metal to stand on.',
      hints: ['Say `at` which distance from the lower or left end of the side it stands.'],
    });
  }
  const corners = [s - width / 2, s + width / 2].map((t) => lastCrossing(curves, u, v, t) ?? surface);
  // Metal much deeper than that is the far wall, seen through an opening.
  const depths = corners.map((t) => surface - t).filter((depth) => depth <= width);
  const sink = flat === null ? Math.max(0, ...depths) : 0;
  const slanted = u.x !== 0 && u.y !== 0;
  const root_mm = sink > 0 || slanted ? sink + 0.01 : 0;
  return { tip: plus(times(v, s), times(u, surface + length)), root_mm };
}

const rounded = (mm: number): number => Math.round(mm * 100) / 100;

/** Of a vector and its opposite, the one that points up, or right where level. */
const upOrRight = (v: Point): Point => (v.y < 0 || (v.y === 0 && v.x < 0) ? times(v, -1) : v);

function lastCrossing(curves: readonly Curve[], u: Point, v: Point, s: number): number | null {
  return crossings(curves, times(v, s), u).at(-1) ?? null;
}

/** What differs by less lies on one side, mm. */
const onSide_mm = 1e-6;

interface Side {
  /** Extent along v. */
  readonly low: number;
  readonly high: number;
  /** Where along u it lies; null for metal without a straight side across u, whose whole extent counts. */
  readonly flat: number | null;
}

/** The straight side that lies farthest along u and across it. */
function sideFacing(curves: readonly Curve[], u: Point, v: Point): Side {
  const reach = Math.max(...curves.map((c) => extent(c, u)[1]));
  const straight = curves.filter((c) => c.sweep === 0 && reach - extent(c, u)[0] < onSide_mm);
  const chosen = straight.length > 0 ? straight : curves;
  return {
    low: Math.min(...chosen.map((c) => extent(c, v)[0])),
    high: Math.max(...chosen.map((c) => extent(c, v)[1])),
    flat: straight.length > 0 ? reach : null,
  };
}

/** Least and greatest of p·w over a curve. */
function extent(c: Curve, w: Point): readonly [number, number] {
  const a = dot({ x: c.ax, y: c.ay }, w);
  const b = dot({ x: c.bx, y: c.by }, w);
  if (c.sweep === 0) return [Math.min(a, b), Math.max(a, b)];
  // The box is that of the arc; along a slanting direction the whole circle stands for it.
  const box = curveBounds(c);
  if (w.x === 0) return w.y > 0 ? [box.y0, box.y1] : [-box.y1, -box.y0];
  if (w.y === 0) return w.x > 0 ? [box.x0, box.x1] : [-box.x1, -box.x0];
  const centre = dot({ x: c.cx, y: c.cy }, w);
  return [centre - c.radius, centre + c.radius];
}
