/** One directed edge of the plane, a straight segment or a circular arc, and the exact measures of it that everything else uses. */
import { atan2, cos, hypot, sin } from '../maths.ts';
import type { DomainEdge } from '../problem.ts';
import type { Edge, Outline, Point } from './outline.ts';

/** From (ax, ay) to (bx, by). A straight curve has sweep 0 and radius 0; an arc turns by `sweep` (rad, anticlockwise positive). */
export interface Curve {
  readonly ax: number;
  readonly ay: number;
  readonly bx: number;
  readonly by: number;
  readonly cx: number;
  readonly cy: number;
  readonly radius: number;
  readonly sweep: number;
}

/** Axis-parallel box, mm. */
export interface Bounds {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

const FULL_TURN = 2 * Math.PI;

export function straight(a: Point, b: Point): Curve {
  return { ax: a.x, ay: a.y, bx: b.x, by: b.y, cx: 0, cy: 0, radius: 0, sweep: 0 };
}

/** An arc about `centre`; equal ends mean the whole circle. The radius is that of the first point. */
export function circular(a: Point, b: Point, centre: Point, anticlockwise: boolean): Curve {
  const radius = hypot(a.x - centre.x, a.y - centre.y);
  const from = atan2(a.y - centre.y, a.x - centre.x);
  const to = atan2(b.y - centre.y, b.x - centre.x);
  let sweep = anticlockwise ? to - from : from - to;
  if (a.x === b.x && a.y === b.y) sweep = FULL_TURN;
  else if (sweep < 0) sweep += FULL_TURN;
  return {
    ax: a.x,
    ay: a.y,
    bx: b.x,
    by: b.y,
    cx: centre.x,
    cy: centre.y,
    radius,
    sweep: anticlockwise ? sweep : -sweep,
  };
}

/** The curves of an outline, in its own sense. */
export function curvesOf(outline: Outline): Curve[] {
  const { edges } = outline;
  return edges.map((edge, i) => curveBetween(edge, (edges[i + 1] ?? edges[0] ?? edge).from));
}

function curveBetween(edge: Edge, to: Point): Curve {
  return edge.arc
    ? circular(edge.from, to, edge.arc.centre, edge.arc.anticlockwise)
    : straight(edge.from, to);
}

/** The curve of a domain's edge that ends at `to`. */
export function domainCurve(edge: DomainEdge, to: Point): Curve {
  return edge.arc ? circular(edge, to, edge.arc, edge.arc.anticlockwise) : straight(edge, to);
}

/** The same points from the other end. */
export function reversed(c: Curve): Curve {
  return { ...c, ax: c.bx, ay: c.by, bx: c.ax, by: c.ay, sweep: -c.sweep };
}

/** Point at fraction s of the curve's length. */
export function pointAt(c: Curve, s: number): Point {
  if (c.sweep === 0) return { x: c.ax + s * (c.bx - c.ax), y: c.ay + s * (c.by - c.ay) };
  const turn = s * c.sweep;
  const ux = c.ax - c.cx;
  const uy = c.ay - c.cy;
  const cs = cos(turn);
  const sn = sin(turn);
  return { x: c.cx + ux * cs - uy * sn, y: c.cy + ux * sn + uy * cs };
}

/** Direction of travel at the first point (`end` 0) or the last one (`end` 1); not normalised. */
export function tangentAt(c: Curve, end: 0 | 1): Point {
  if (c.sweep === 0) return { x: c.bx - c.ax, y: c.by - c.ay };
  const s = c.sweep > 0 ? 1 : -1;
  const x = end === 0 ? c.ax : c.bx;
  const y = end === 0 ? c.ay : c.by;
  return { x: -s * (y - c.cy), y: s * (x - c.cx) };
}

export function curveLength(c: Curve): number {
  return c.sweep === 0 ? hypot(c.bx - c.ax, c.by - c.ay) : Math.abs(c.sweep) * c.radius;
}

/** Does the direction from an arc's centre to (x, y) fall inside the arc? */
export function arcFaces(c: Curve, x: number, y: number): boolean {
  const ux = c.ax - c.cx;
  const uy = c.ay - c.cy;
  const vx = x - c.cx;
  const vy = y - c.cy;
  const turned = atan2(ux * vy - uy * vx, ux * vx + uy * vy);
  const along = c.sweep > 0 ? turned : -turned;
  return (along < 0 ? along + FULL_TURN : along) <= Math.abs(c.sweep);
}

/** Nearest point of the curve to (x, y). */
export function nearestOn(c: Curve, x: number, y: number): Point {
  if (c.sweep === 0) {
    const dx = c.bx - c.ax;
    const dy = c.by - c.ay;
    const length2 = dx * dx + dy * dy;
    const s = length2 > 0 ? ((x - c.ax) * dx + (y - c.ay) * dy) / length2 : 0;
    if (s <= 0) return { x: c.ax, y: c.ay };
    if (s >= 1) return { x: c.bx, y: c.by };
    return { x: c.ax + s * dx, y: c.ay + s * dy };
  }
  const away = hypot(x - c.cx, y - c.cy);
  if (away === 0) return { x: c.ax, y: c.ay };
  if (arcFaces(c, x, y)) {
    return { x: c.cx + (c.radius * (x - c.cx)) / away, y: c.cy + (c.radius * (y - c.cy)) / away };
  }
  const toA = hypot(x - c.ax, y - c.ay);
  const toB = hypot(x - c.bx, y - c.by);
  return toA <= toB ? { x: c.ax, y: c.ay } : { x: c.bx, y: c.by };
}

export function distanceToCurve(c: Curve, x: number, y: number): number {
  const near = nearestOn(c, x, y);
  return hypot(x - near.x, y - near.y);
}

/** Box around the curve, with the true extents of an arc. */
export function curveBounds(c: Curve): Bounds {
  let x0 = Math.min(c.ax, c.bx);
  let x1 = Math.max(c.ax, c.bx);
  let y0 = Math.min(c.ay, c.by);
  let y1 = Math.max(c.ay, c.by);
  if (c.sweep !== 0) {
    if (arcFaces(c, c.cx + 1, c.cy)) x1 = Math.max(x1, c.cx + c.radius);
    if (arcFaces(c, c.cx - 1, c.cy)) x0 = Math.min(x0, c.cx - c.radius);
    if (arcFaces(c, c.cx, c.cy + 1)) y1 = Math.max(y1, c.cy + c.radius);
    if (arcFaces(c, c.cx, c.cy - 1)) y0 = Math.min(y0, c.cy - c.radius);
  }
  return { x0, y0, x1, y1 };
}

/**
 * The curve's part in the area ½ ∮ (x dy - y dx) about (ox, oy): the triangle under its chord, and for an arc the segment
 * ½ r² (sweep - sin sweep) between chord and circle.
 */
export function areaUnder(c: Curve, ox: number, oy: number): number {
  const chord = ((c.ax - ox) * (c.by - oy) - (c.bx - ox) * (c.ay - oy)) / 2;
  return c.sweep === 0 ? chord : chord + (c.radius * c.radius * (c.sweep - sin(c.sweep))) / 2;
}
