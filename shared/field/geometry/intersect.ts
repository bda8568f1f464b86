/** Where two curves cross or touch: straight pieces and arcs in all pairs. Points within TOUCH of both count. */
import { hypot } from '../maths.ts';
import { arcFaces, type Curve } from './curve.ts';
import type { Point } from './outline.ts';

/** Points nearer than this (mm) are one point. */
export const TOUCH = 1e-6;

/** Crossings and tangent points. Pieces of one line or one circle have none: their ends tell how they overlap. */
export function meetings(a: Curve, b: Curve): Point[] {
  const candidates =
    a.sweep === 0
      ? b.sweep === 0
        ? lines(a, b)
        : lineCircle(a, b)
      : b.sweep === 0
        ? lineCircle(b, a)
        : circles(a, b);
  return candidates.filter((p) => reaches(a, p) && reaches(b, p));
}

/** Is a point of the curve's whole line or circle on the piece itself? */
function reaches(c: Curve, p: Point): boolean {
  if (near(p, c.ax, c.ay) || near(p, c.bx, c.by)) return true;
  if (c.sweep !== 0) return arcFaces(c, p.x, p.y);
  const dx = c.bx - c.ax;
  const dy = c.by - c.ay;
  const s = (p.x - c.ax) * dx + (p.y - c.ay) * dy;
  return s > 0 && s < dx * dx + dy * dy;
}

function near(p: Point, x: number, y: number): boolean {
  return hypot(p.x - x, p.y - y) <= TOUCH;
}

function lines(a: Curve, b: Curve): Point[] {
  const ax = a.bx - a.ax;
  const ay = a.by - a.ay;
  const bx = b.bx - b.ax;
  const by = b.by - b.ay;
  const cross = ax * by - ay * bx;
  if (Math.abs(cross) <= 1e-14 * hypot(ax, ay) * hypot(bx, by)) return [];
  const s = ((b.ax - a.ax) * by - (b.ay - a.ay) * bx) / cross;
  return [{ x: a.ax + s * ax, y: a.ay + s * ay }];
}

function lineCircle(line: Curve, circle: Curve): Point[] {
  const length = hypot(line.bx - line.ax, line.by - line.ay);
  const ux = (line.bx - line.ax) / length;
  const uy = (line.by - line.ay) / length;
  const along = (circle.cx - line.ax) * ux + (circle.cy - line.ay) * uy;
  const fx = line.ax + along * ux;
  const fy = line.ay + along * uy;
  const away = Math.abs((circle.cx - line.ax) * uy - (circle.cy - line.ay) * ux);
  if (away > circle.radius + TOUCH) return [];
  if (away > circle.radius - TOUCH) return [{ x: fx, y: fy }];
  const half = Math.sqrt((circle.radius - away) * (circle.radius + away));
  return [
    { x: fx - half * ux, y: fy - half * uy },
    { x: fx + half * ux, y: fy + half * uy },
  ];
}

function circles(a: Curve, b: Curve): Point[] {
  const dx = b.cx - a.cx;
  const dy = b.cy - a.cy;
  const apart = hypot(dx, dy);
  const outside = apart - (a.radius + b.radius);
  const inside = Math.abs(a.radius - b.radius) - apart;
  if (outside > TOUCH || inside > TOUCH) return [];
  if (apart <= TOUCH) return [];
  const along = (apart * apart + (a.radius - b.radius) * (a.radius + b.radius)) / (2 * apart);
  const ux = dx / apart;
  const uy = dy / apart;
  const fx = a.cx + along * ux;
  const fy = a.cy + along * uy;
  if (outside > -TOUCH || inside > -TOUCH) {
    const reach = along < 0 ? -a.radius : a.radius;
    return [{ x: a.cx + reach * ux, y: a.cy + reach * uy }];
  }
  const half = Math.sqrt(Math.max(0, (a.radius - along) * (a.radius + along)));
  return [
    { x: fx + half * uy, y: fy - half * ux },
    { x: fx - half * uy, y: fy + half * ux },
  ];
}
