/** The shortest way between two curves. */
import { hypot } from '../maths.ts';
import { arcFaces, type Curve, nearestOn } from './curve.ts';
import { meetings } from './intersect.ts';
import type { Point } from './outline.ts';

export interface Gap {
  readonly gap: number;
  /** Half-way between the nearest points. */
  readonly at: Point;
}

/**
 * Where curves do not meet, the shortest way ends in an end of one of them or stands at right angles on both: on the line from an
 * arc's centre at right angles to a straight piece, or through both centres.
 */
export function gapBetween(a: Curve, b: Curve): Gap {
  const meeting = meetings(a, b)[0];
  if (meeting) return { gap: 0, at: meeting };
  const starts = [...ends(a), ...ends(b), ...facing(a, b), ...facing(b, a)];
  let best: Gap = { gap: Infinity, at: { x: a.ax, y: a.ay } };
  for (const start of starts) {
    const p = nearestOn(a, start.x, start.y);
    const q = nearestOn(b, start.x, start.y);
    const gap = hypot(p.x - q.x, p.y - q.y);
    if (gap < best.gap) best = { gap, at: { x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 } };
  }
  return best;
}

function ends(c: Curve): Point[] {
  return [
    { x: c.ax, y: c.ay },
    { x: c.bx, y: c.by },
  ];
}

/** Points of arc a that face the other curve squarely. */
function facing(a: Curve, b: Curve): Point[] {
  if (a.sweep === 0) return [];
  let dx = b.cx - a.cx;
  let dy = b.cy - a.cy;
  if (b.sweep === 0) {
    dx = b.by - b.ay;
    dy = b.ax - b.bx;
  }
  const length = hypot(dx, dy);
  if (length === 0) return [];
  return [1, -1]
    .map((s) => ({ x: a.cx + (s * a.radius * dx) / length, y: a.cy + (s * a.radius * dy) / length }))
    .filter((p) => arcFaces(a, p.x, p.y));
}
