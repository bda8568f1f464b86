/** Small exact measures of closed outlines. */
import { areaUnder, type Bounds, type Curve, curveBounds, curvesOf, distanceToCurve } from './curve.ts';
import type { Outline, Point } from './outline.ts';

const NOWHERE: Bounds = { x0: Infinity, y0: Infinity, x1: -Infinity, y1: -Infinity };

/** Is the point inside? Points on the outline itself count either way. */
export function insideOutline(outline: Outline, point: Point): boolean {
  return insideCurves(curvesOf(outline), point);
}

/**
 * The parity of the polygon of chords, turned once for every circular segment (between a chord and its arc) that holds the point.
 */
export function insideCurves(curves: readonly Curve[], { x, y }: Point): boolean {
  let inside = false;
  for (const c of curves) {
    const left = isLeftOfChord(c, x, y);
    const rises = c.by > y;
    if (c.ay > y !== rises && left === rises) inside = !inside;
    if (c.sweep !== 0 && (left === c.sweep < 0 || isWhole(c)) && inCircle(c, x, y)) inside = !inside;
  }
  return inside;
}

/** A point on the chord's line counts as a trifle higher, then a trifle to the right: as the parity rule takes it. */
function isLeftOfChord(c: Curve, x: number, y: number): boolean {
  const dx = c.bx - c.ax;
  const dy = c.by - c.ay;
  const cross = dx * (y - c.ay) - dy * (x - c.ax);
  return cross !== 0 ? cross > 0 : dy !== 0 ? dy < 0 : dx > 0;
}

function isWhole(c: Curve): boolean {
  return c.ax === c.bx && c.ay === c.by;
}

function inCircle(c: Curve, x: number, y: number): boolean {
  return (x - c.cx) * (x - c.cx) + (y - c.cy) * (y - c.cy) < c.radius * c.radius;
}

export function outlineBounds(outline: Outline): Bounds {
  return boundsOfCurves(curvesOf(outline));
}

export function boundsOfCurves(curves: readonly Curve[]): Bounds {
  return curves.map(curveBounds).reduce(
    (all, one) => ({
      x0: Math.min(all.x0, one.x0),
      y0: Math.min(all.y0, one.y0),
      x1: Math.max(all.x1, one.x1),
      y1: Math.max(all.y1, one.y1),
    }),
    NOWHERE,
  );
}

/** Enclosed area, mm², whatever the sense. */
export function outlineArea(outline: Outline): number {
  return Math.abs(signedArea(curvesOf(outline)));
}

/** Positive for a closed chain that runs anticlockwise. */
export function signedArea(curves: readonly Curve[]): number {
  const first = curves[0];
  if (!first) return 0;
  return curves.reduce((sum, c) => sum + areaUnder(c, first.ax, first.ay), 0);
}

/** Distance from the outline's curve, mm, inside and outside alike. */
export function distanceToOutline(outline: Outline, { x, y }: Point): number {
  return Math.min(...curvesOf(outline).map((c) => distanceToCurve(c, x, y)));
}
