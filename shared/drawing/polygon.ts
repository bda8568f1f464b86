/** Fine polygons in place of true curves: for hatching, for asking what is metal, for keeping labels clear. */
import { type Curve, pointAt } from '../field/geometry/curve.ts';
import type { Point } from '../field/geometry/outline.ts';
import { hypot } from '../field/maths.ts';

/** Chords stay this close to their arcs. */
const CHORD_mm = 0.002;

export function polygonOf(curves: readonly Curve[]): Point[] {
  return curves.flatMap((curve) => {
    const steps =
      curve.sweep === 0
        ? 1
        : Math.max(2, Math.ceil(Math.abs(curve.sweep) * Math.sqrt(curve.radius / (8 * CHORD_mm))));
    return Array.from({ length: steps }, (_, i) => pointAt(curve, i / steps));
  });
}

/** Even-odd over all polygons: hollows are outside. */
export function insidePolygons(polygons: readonly (readonly Point[])[], { x, y }: Point): boolean {
  let inside = false;
  for (const polygon of polygons) {
    let a = polygon[polygon.length - 1];
    for (const b of polygon) {
      if (a !== undefined && a.y > y !== b.y > y && x < a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x)) {
        inside = !inside;
      }
      a = b;
    }
  }
  return inside;
}

/** Where the level c of u·p meets the polygons, as positions along the direction (−u.y, u.x), ascending. */
export function crossings(polygons: readonly (readonly Point[])[], u: Point, c: number): number[] {
  const found: number[] = [];
  for (const polygon of polygons) {
    for (const [a, b] of sides(polygon)) {
      const da = u.x * a.x + u.y * a.y - c;
      const db = u.x * b.x + u.y * b.y - c;
      if (da > 0 === db > 0) continue;
      const s = da / (da - db);
      const x = a.x + s * (b.x - a.x);
      const y = a.y + s * (b.y - a.y);
      found.push(-u.y * x + u.x * y);
    }
  }
  return found.sort((p, q) => p - q);
}

export function sides(polygon: readonly Point[]): (readonly [Point, Point])[] {
  return polygon.map((a, i) => [a, polygon[i + 1] ?? polygon[0] ?? a] as const);
}

/** Points along the sides, about `step` apart. */
export function alongSides(polygon: readonly Point[], step: number): Point[] {
  return sides(polygon).flatMap(([a, b]) => between(a, b, step));
}

/** No way is walked in more steps than this, however absurd its length. */
const MOST_STEPS = 4000;

/** Points from a towards b, a included and b left out, at most `step` apart. */
export function between(a: Point, b: Point, step: number): Point[] {
  const length = hypot(b.x - a.x, b.y - a.y);
  const count = Math.min(MOST_STEPS, Math.max(1, Math.ceil(length / step)));
  return Array.from({ length: count }, (_, i) => ({
    x: a.x + ((b.x - a.x) * i) / count,
    y: a.y + ((b.y - a.y) * i) / count,
  }));
}

export interface EdgePoint {
  readonly p: Point;
  /** Unit normal, away from the polygon. */
  readonly n: Point;
  /** 0 in the middle of its straight side, up to 1 at the ends; 0 on curves. */
  readonly offMiddle: number;
}

/** Points along a polygon with their outward normals: some on each long side, its middle among them, and every few of a curve's. */
export function edgePoints(polygon: readonly Point[]): EdgePoint[] {
  const all = sides(polygon);
  const turn = all.reduce((sum, [a, b]) => sum + a.x * b.y - a.y * b.x, 0) > 0 ? 1 : -1;
  const stride = Math.max(1, Math.floor(all.length / 48));
  return all.flatMap(([a, b], i) => {
    const length = hypot(b.x - a.x, b.y - a.y);
    const curved = length < 1;
    if (length === 0 || (curved && i % stride !== 0)) return [];
    const n = { x: (turn * (b.y - a.y)) / length, y: (-turn * (b.x - a.x)) / length };
    const count = curved ? 2 : Math.max(2, 2 * Math.ceil(length / 8));
    return Array.from({ length: count - 1 }, (_, k): EdgePoint => {
      const s = (k + 1) / count;
      const p = { x: a.x + s * (b.x - a.x), y: a.y + s * (b.y - a.y) };
      return { p, n, offMiddle: Math.abs(2 * s - 1) };
    });
  });
}
