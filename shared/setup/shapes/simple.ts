/** Checks of a polygon: repeated corners, area, and sides that meet where they should not. */
import type { Point } from '../../field/geometry/outline.ts';

/** Corners without those that repeat the one before; the last may not repeat the first. */
export function withoutRepeats(points: readonly Point[]): readonly Point[] {
  return points.filter((p, i) => {
    const before = points[(i + points.length - 1) % points.length];
    return before === undefined || p.x !== before.x || p.y !== before.y;
  });
}

/** Signed area, mm²: positive anticlockwise. */
export function areaOf(points: readonly Point[]): number {
  let twice = 0;
  eachSide(points, (a, b) => {
    twice += a.x * b.y - b.x * a.y;
  });
  return twice / 2;
}

/** All corners lie on one straight line. */
export function onOneLine(points: readonly Point[]): boolean {
  const [a, b] = points;
  return a === undefined || b === undefined || points.every((p) => side(a, b, p) === 0);
}

/** The first two sides, by number, that cross, touch or run into each other though they are not neighbours; or neighbours that fold back. */
export function crossingEdges(points: readonly Point[]): readonly [number, number] | null {
  const sides: [Point, Point][] = [];
  eachSide(points, (a, b) => sides.push([a, b]));
  for (const [i, [a, b]] of sides.entries()) {
    for (const [j, [c, d]] of sides.entries()) {
      if (j <= i) continue;
      const neighbours = j === i + 1 || (i === 0 && j === sides.length - 1);
      if (neighbours ? folds(j === i + 1 ? [a, b, d] : [c, d, b]) : meets(a, b, c, d)) return [i, j];
    }
  }
  return null;
}

function eachSide(points: readonly Point[], visit: (a: Point, b: Point) => void): void {
  for (const [i, a] of points.entries()) {
    const b = points[(i + 1) % points.length];
    if (b !== undefined) visit(a, b);
  }
}

const side = (a: Point, b: Point, p: Point): number =>
  Math.sign((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x));

function meets(a: Point, b: Point, c: Point, d: Point): boolean {
  const c1 = side(a, b, c);
  const d1 = side(a, b, d);
  const a1 = side(c, d, a);
  const b1 = side(c, d, b);
  if (c1 !== d1 && a1 !== b1 && (c1 !== 0 || d1 !== 0)) return true;
  if (c1 !== 0 || d1 !== 0) return false;
  // All on one line: do the stretches overlap?
  const apart = (p: number, q: number, r: number, s: number): boolean =>
    Math.max(p, q) < Math.min(r, s) || Math.max(r, s) < Math.min(p, q);
  return !apart(a.x, b.x, c.x, d.x) && !apart(a.y, b.y, c.y, d.y);
}

/** From a to b and straight back toward c. */
function folds([a, b, c]: readonly [Point, Point, Point]): boolean {
  return side(a, b, c) === 0 && (b.x - a.x) * (c.x - b.x) + (b.y - a.y) * (c.y - b.y) < 0;
}
