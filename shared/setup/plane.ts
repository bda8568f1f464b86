/** Plane geometry for placing pieces: polygons, circles, turning, boxes, and where a line meets metal. Positions in mm, angles in degrees. */
import { arcFaces, type Bounds, type Curve, curvesOf } from '../field/geometry/curve.ts';
import type { Edge, Outline, Point } from '../field/geometry/outline.ts';
import { cos, hypot, sin } from '../field/maths.ts';
import type { Piece as FieldPiece } from '../field/problem.ts';

export const origin: Point = { x: 0, y: 0 };

export const plus = (a: Point, b: Point): Point => ({ x: a.x + b.x, y: a.y + b.y });
export const minus = (a: Point, b: Point): Point => ({ x: a.x - b.x, y: a.y - b.y });
export const times = (a: Point, k: number): Point => ({ x: a.x * k, y: a.y * k });
export const dot = (a: Point, b: Point): number => a.x * b.x + a.y * b.y;
export const distance = (a: Point, b: Point): number => hypot(a.x - b.x, a.y - b.y);
/** A quarter turn anticlockwise. */
export const quarter = (a: Point): Point => ({ x: -a.y, y: a.x });

/** Unit vector at an angle anticlockwise from x; exact along the axes. */
export function unitVector(angle_deg: number): Point {
  const whole = ((angle_deg % 360) + 360) % 360;
  if (whole === 0) return { x: 1, y: 0 };
  if (whole === 90) return { x: 0, y: 1 };
  if (whole === 180) return { x: -1, y: 0 };
  if (whole === 270) return { x: 0, y: -1 };
  const angle = (whole * Math.PI) / 180;
  return { x: cos(angle), y: sin(angle) };
}

/** `p` turned about the origin by the angle of the unit vector `u`. */
export const turnedBy = (u: Point, p: Point): Point => ({
  x: u.x * p.x - u.y * p.y,
  y: u.y * p.x + u.x * p.y,
});

export function polygon(corners: readonly Point[]): Outline {
  return { edges: corners.map((from) => ({ from, arc: null })) };
}

/** Rectangle about the origin. */
export function rectangle(width: number, height: number): Outline {
  const x = width / 2;
  const y = height / 2;
  return polygon([
    { x: -x, y: -y },
    { x, y: -y },
    { x, y },
    { x: -x, y },
  ]);
}

export function circle(centre: Point, radius: number): Outline {
  return { edges: [{ from: { x: centre.x + radius, y: centre.y }, arc: { centre, anticlockwise: true } }] };
}

/** The outline turned about the origin, then shifted. */
export function placedOutline(outline: Outline, u: Point, by: Point): Outline {
  const place = (p: Point): Point => plus(turnedBy(u, p), by);
  const edge = ({ from, arc }: Edge): Edge => ({
    from: place(from),
    arc: arc === null ? null : { centre: place(arc.centre), anticlockwise: arc.anticlockwise },
  });
  return { edges: outline.edges.map(edge) };
}

export function placedPiece(piece: FieldPiece, u: Point, by: Point): FieldPiece {
  return {
    outer: placedOutline(piece.outer, u, by),
    hollows: piece.hollows.map((hollow) => placedOutline(hollow, u, by)),
  };
}

/** The box around some boxes; at least one. */
export function boxAround(boxes: readonly Bounds[]): Bounds {
  return {
    x0: Math.min(...boxes.map((b) => b.x0)),
    y0: Math.min(...boxes.map((b) => b.y0)),
    x1: Math.max(...boxes.map((b) => b.x1)),
    y1: Math.max(...boxes.map((b) => b.y1)),
  };
}

export const boxCentre = (b: Bounds): Point => ({ x: (b.x0 + b.x1) / 2, y: (b.y0 + b.y1) / 2 });

export const shiftedBox = (b: Bounds, by: Point): Bounds => ({
  x0: b.x0 + by.x,
  y0: b.y0 + by.y,
  x1: b.x1 + by.x,
  y1: b.y1 + by.y,
});

/** All curves of some pieces, hollows included. */
export function curvesOfPieces(pieces: readonly FieldPiece[]): readonly Curve[] {
  return pieces.flatMap(({ outer, hollows }) => [outer, ...hollows].flatMap(curvesOf));
}

/** Distances along the line from `start` in the direction of the unit vector `u` at which it crosses or touches curves, rising; a corner counts with both its sides. */
export function crossings(curves: readonly Curve[], start: Point, u: Point): readonly number[] {
  return curves.flatMap((curve) => crossingsOf(curve, start, u)).sort((a, b) => a - b);
}

function crossingsOf(c: Curve, start: Point, u: Point): number[] {
  const across = quarter(u);
  if (c.sweep === 0) {
    const a = dot(minus({ x: c.ax, y: c.ay }, start), across);
    const b = dot(minus({ x: c.bx, y: c.by }, start), across);
    if (a === b || (a > 0 && b > 0) || (a < 0 && b < 0)) return [];
    const s = a / (a - b);
    const hit = { x: c.ax + s * (c.bx - c.ax), y: c.ay + s * (c.by - c.ay) };
    return [dot(minus(hit, start), u)];
  }
  // The foot of the centre on the line lies at `along`; the chord reaches half = √(r² − h²) to both sides of it.
  const toCentre = minus({ x: c.cx, y: c.cy }, start);
  const along = dot(toCentre, u);
  const height = dot(toCentre, across);
  const half2 = c.radius * c.radius - height * height;
  if (half2 < 0) return [];
  const half = Math.sqrt(half2);
  return [along - half, along + half].filter((t) => arcFaces(c, start.x + t * u.x, start.y + t * u.y));
}
