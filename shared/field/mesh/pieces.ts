/**
 * The boundary as the triangulation takes it: fans cut off its corners, arcs divided into chords of at most 30°, everything joined
 * by numbered points.
 */
import { type Curve, pointAt, reversed } from '../geometry/curve.ts';
import type { Point } from '../geometry/outline.ts';
import { asin, atan2, cos, hypot, sin } from '../maths.ts';
import { type Boundary, type Corner, singularCorners } from './corners.ts';
import { fanRadii } from './fan-radius.ts';
import { FAN_RIM, type Fan, type MeshArc, type MeshSide } from './mesh.ts';
import { type Chord, separate } from './separate.ts';

/** Straight pieces from point to point, paper on the left. */
export interface Pieces {
  readonly x: number[];
  readonly y: number[];
  readonly from: number[];
  readonly to: number[];
  /** Index into `sides`. */
  readonly side: number[];
  readonly sides: MeshSide[];
  readonly arcs: MeshArc[];
  readonly fans: FanDraft[];
}

/** A fan before the triangles around it are known; ray 0 runs along the edge that leaves the corner. */
export type FanDraft = Omit<Fan, 'rim'>;

const FULL_TURN = 2 * Math.PI;
const CHORD_TURN = Math.PI / 6;
/** Greatest angle of a rim chord seen from the fan's vertex. */
const RIM_TURN = (50 * Math.PI) / 180;

/** Where an edge begins and ends, as fractions of its length, once the fans are cut off. */
interface Trim {
  start: number;
  end: number;
  from: Point | null;
  to: Point | null;
}

export function piecesOf(
  boundary: Boundary,
  sheet_ohm: readonly [number, number],
  size_mm: number,
  fan_mm: number,
): Pieces {
  const corners = singularCorners(boundary, sheet_ohm);
  const radii = fanRadii(boundary, corners, size_mm).map((radius) => Math.min(radius, fan_mm));
  const trims: Trim[] = boundary.curves.map(() => ({ start: 0, end: 1, from: null, to: null }));
  const sides: MeshSide[] = [];
  const arcs: MeshArc[] = [];
  const fans: FanDraft[] = [];
  const chords: Chord[] = [];
  corners.forEach((corner, i) => {
    const { fan, rim } = draftFan(boundary, corner, radii[i] ?? 0, trims);
    const side = sides.push({ tag: FAN_RIM, arc: -1, fan: fans.push(fan) - 1 }) - 1;
    for (let j = rim.length - 1; j > 0; j--) {
      chords.push({ from: rim[j] as Point, to: rim[j - 1] as Point, side, curve: null, start: 0, end: 0 });
    }
  });
  boundary.curves.forEach((curve, i) => {
    let arc = -1;
    if (curve.sweep !== 0) arc = arcs.push({ x: curve.cx, y: curve.cy, radius: curve.radius }) - 1;
    const side = sides.push({ tag: boundary.tags[i] ?? -1, arc, fan: -1 }) - 1;
    chords.push(...chordsOf(curve, trims[i] as Trim, side));
  });
  const { x, y, from, to, side } = numbered(separate(chords));
  return { x, y, from, to, side, sides, arcs, fans };
}

function draftFan(
  boundary: Boundary,
  corner: Corner,
  radius: number,
  trims: Trim[],
): { fan: FanDraft; rim: Point[] } {
  const before = boundary.previous[corner.edge] ?? corner.edge;
  const leaving = boundary.curves[corner.edge] as Curve;
  const arriving = reversed(boundary.curves[before] as Curve);
  const first = along(leaving, radius);
  const last = along(arriving, radius);
  Object.assign(trims[corner.edge] as Trim, { start: first.s, from: first.point });
  Object.assign(trims[before] as Trim, { end: 1 - last.s, to: last.point });
  const { ax: x, ay: y } = leaving;
  const ray0 = unit(first.point.x - x, first.point.y - y);
  const ray1 = unit(last.point.x - x, last.point.y - y);
  const angle = turnBetween(ray0, ray1, corner.angle);
  const rim = [first.point];
  const count = rimChords(angle);
  const phase = atan2(ray0[1], ray0[0]);
  for (let j = 1; j < count; j++) {
    const phi = phase + (angle * j) / count;
    rim.push({ x: x + radius * cos(phi), y: y + radius * sin(phi) });
  }
  rim.push(last.point);
  const tag0 = boundary.tags[corner.edge] ?? -1;
  const tag1 = boundary.tags[before] ?? -1;
  return { fan: { x, y, angle, ray0, ray1, tag0, tag1 }, rim };
}

/** The point of a curve at a straight distance from its first point, and its fraction. */
function along(c: Curve, distance: number): { s: number; point: Point } {
  if (c.sweep === 0) {
    const s = distance / hypot(c.bx - c.ax, c.by - c.ay);
    return { s, point: { x: c.ax + s * (c.bx - c.ax), y: c.ay + s * (c.by - c.ay) } };
  }
  const s = (2 * asin(distance / (2 * c.radius))) / Math.abs(c.sweep);
  return { s, point: pointAt(c, s) };
}

function unit(x: number, y: number): readonly [number, number] {
  const length = hypot(x, y);
  return [x / length, y / length];
}

/** Turn from one ray to another, in (0, 2π]; `expected` decides between none and a full one. */
function turnBetween(
  ray0: readonly [number, number],
  ray1: readonly [number, number],
  expected: number,
): number {
  const turn = atan2(ray0[0] * ray1[1] - ray0[1] * ray1[0], ray0[0] * ray1[0] + ray0[1] * ray1[1]);
  if (Math.abs(turn) < 1e-9 && expected > Math.PI) return FULL_TURN;
  return turn <= 0 ? turn + FULL_TURN : turn;
}

function rimChords(angle: number): number {
  const least = angle > 2.5 ? 3 : angle > 1.2 ? 2 : 1;
  return Math.max(least, Math.ceil(angle / RIM_TURN - 1e-9));
}

function chordsOf(curve: Curve, trim: Trim, side: number): Chord[] {
  const first = trim.from ?? { x: curve.ax, y: curve.ay };
  const last = trim.to ?? { x: curve.bx, y: curve.by };
  if (curve.sweep === 0) return [{ from: first, to: last, side, curve: null, start: 0, end: 1 }];
  const turn = Math.abs(curve.sweep) * (trim.end - trim.start);
  const count = Math.max(1, Math.ceil(turn / CHORD_TURN - 1e-9));
  const chords: Chord[] = [];
  let from = first;
  let start = trim.start;
  for (let j = 1; j <= count; j++) {
    const end = trim.start + ((trim.end - trim.start) * j) / count;
    const to = j === count ? last : pointAt(curve, end);
    chords.push({ from, to, side, curve, start, end });
    from = to;
    start = end;
  }
  return chords;
}

/** Points closer than about 1e-9 mm become one; pieces without length are dropped. */
function numbered(chords: readonly Chord[]) {
  const x: number[] = [];
  const y: number[] = [];
  const from: number[] = [];
  const to: number[] = [];
  const side: number[] = [];
  const known = new Map<string, number>();
  const number = (p: Point): number => {
    const key = `${Math.round(p.x * 1e9)},${Math.round(p.y * 1e9)}`;
    let n = known.get(key);
    if (n === undefined) {
      n = x.push(p.x) - 1;
      y.push(p.y);
      known.set(key, n);
    }
    return n;
  };
  for (const chord of chords) {
    const a = number(chord.from);
    const b = number(chord.to);
    if (a === b) continue;
    from.push(a);
    to.push(b);
    side.push(chord.side);
  }
  return { x, y, from, to, side };
}
