/** From the pieces of a walk to the points of a line: bent onto the true level between the sides of cells, then thinned. */
// Indices are bounded by construction throughout, hence `a[i]!`.
import { hypot } from '../maths.ts';
import type { PatchScalar } from './patch-scalar.ts';
import { Spot } from './patch-shape.ts';
import { TIP } from './patches.ts';
import type { Walk } from './walk.ts';

/** Points on the paper, each with its patch and place in it. */
export interface Trail {
  readonly x: number[];
  readonly y: number[];
  readonly patch: number[];
  readonly u: number[];
  readonly v: number[];
}

/** How far a chord may stay from the curve, mm, before it is bent, and how often it may be halved. */
const BEND_MM = 0.005;
const MOST_HALVINGS = 10;

/** All points of a walk, first and last included. */
export function bentTrail(scalar: PatchScalar, walk: Walk): Trail {
  const trail: Trail = { x: [], y: [], patch: [], u: [], v: [] };
  const spot = new Spot();
  const pieces = walk.patch.length;
  for (let i = 0; i < pieces; i++) {
    const patch = walk.patch[i]!;
    if (i === 0) append(trail, endOf(scalar, spot, patch, walk.u0[0]!, walk.v0[0]!));
    const end = endOf(scalar, spot, patch, walk.u1[i]!, walk.v1[i]!);
    const start = lastEnd(trail, walk, i);
    if (scalar.patches.kind[patch] !== TIP) bend(scalar, trail, walk.level[i]!, start, end, 0);
    append(trail, end);
  }
  return trail;
}

interface End {
  readonly patch: number;
  readonly u: number;
  readonly v: number;
  readonly x: number;
  readonly y: number;
}

function endOf(scalar: PatchScalar, spot: Spot, patch: number, u: number, v: number): End {
  scalar.shape.place(patch, u, v, spot);
  return { patch, u, v, x: spot.x, y: spot.y };
}

/** The trail's last point as the start of piece i, in that piece's own patch. */
function lastEnd(trail: Trail, walk: Walk, i: number): End {
  const n = trail.x.length - 1;
  return { patch: walk.patch[i]!, u: walk.u0[i]!, v: walk.v0[i]!, x: trail.x[n]!, y: trail.y[n]! };
}

function append(trail: Trail, end: End): void {
  trail.x.push(end.x);
  trail.y.push(end.y);
  trail.patch.push(end.patch);
  trail.u.push(end.u);
  trail.v.push(end.v);
}

const middle = new Spot();

/**
 * Adds the points needed between two ends on the level. The place m half-way between them in (u, v) is d = (level - f)/|∇f| from the
 * curve, whose direction there differs from the chord's by the angle α. Where m, moved by d, is near the chord and |chord| α is small,
 * the chord serves; else it is halved at m moved onto the curve.
 */
function bend(scalar: PatchScalar, trail: Trail, level: number, a: End, b: End, depth: number): void {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const length = hypot(dx, dy);
  if (length < 2 * BEND_MM || depth >= MOST_HALVINGS) return;
  let u = (a.u + b.u) / 2;
  let v = (a.v + b.v) / 2;
  for (let step = 0; step < 3; step++) {
    scalar.look(a.patch, u, v, middle);
    const { xu, xv, yu, yv, gx, gy } = middle;
    const steep = hypot(gx, gy);
    if (!(steep > 0)) return;
    const off = (level - middle.value) / steep;
    if (Math.abs(off) > length / 2) return;
    if (step === 0) {
      const slant = Math.abs(gx * dx + gy * dy) / steep;
      const aside = ((middle.y - a.y) * dx - (middle.x - a.x) * dy) / length;
      const curve = aside + (off * (gy * dx - gx * dy)) / (steep * length);
      if (Math.abs(curve) < BEND_MM && slant < 4 * BEND_MM) return;
    }
    if (Math.abs(off) < BEND_MM / 100) break;
    const mx = (off * gx) / steep;
    const my = (off * gy) / steep;
    const determinant = xu * yv - xv * yu;
    u += (mx * yv - my * xv) / determinant;
    v += (my * xu - mx * yu) / determinant;
  }
  const m = endOf(scalar, middle, a.patch, u, v);
  bend(scalar, trail, level, a, m, depth + 1);
  append(trail, m);
  bend(scalar, trail, level, m, b, depth + 1);
}

/** How far a thinned line may leave the points it drops, mm. */
const THIN_MM = 0.01;

/**
 * The points from `from` to `to` (both included) of a trail, thinned by Douglas and Peucker's method (Cartographica 10 (1973) 112).
 * A closed line ends where it begins; its first point is not repeated.
 */
export function thinned(trail: Trail, from: number, to: number, closed: boolean): Float64Array {
  const keep = new Uint8Array(to - from + 1);
  const mark = (i: number): void => {
    keep[i - from] = 1;
  };
  mark(from);
  mark(to);
  if (closed) {
    const turn = farthestFrom(trail, from, to);
    mark(turn);
    thin(trail, from, turn, mark);
    thin(trail, turn, to, mark);
  } else thin(trail, from, to, mark);
  const points: number[] = [];
  for (let i = from; i <= (closed ? to - 1 : to); i++) {
    if (keep[i - from] === 1) points.push(trail.x[i]!, trail.y[i]!);
  }
  return Float64Array.from(points);
}

function farthestFrom(trail: Trail, from: number, to: number): number {
  let best = from;
  let far = -1;
  for (let i = from; i <= to; i++) {
    const distance = hypot(trail.x[i]! - trail.x[from]!, trail.y[i]! - trail.y[from]!);
    if (distance > far) {
      far = distance;
      best = i;
    }
  }
  return best;
}

function thin(trail: Trail, from: number, to: number, mark: (i: number) => void): void {
  const open: [number, number][] = [[from, to]];
  for (let chord = open.pop(); chord !== undefined; chord = open.pop()) {
    const [a, b] = chord;
    let worst = THIN_MM;
    let at = -1;
    for (let i = a + 1; i < b; i++) {
      const off = distanceToChord(trail, a, b, i);
      if (off > worst) {
        worst = off;
        at = i;
      }
    }
    if (at < 0) continue;
    mark(at);
    open.push([a, at], [at, b]);
  }
}

function distanceToChord({ x, y }: Trail, a: number, b: number, i: number): number {
  const dx = x[b]! - x[a]!;
  const dy = y[b]! - y[a]!;
  const square = dx * dx + dy * dy;
  const px = x[i]! - x[a]!;
  const py = y[i]! - y[a]!;
  const along = square > 0 ? Math.min(1, Math.max(0, (px * dx + py * dy) / square)) : 0;
  return hypot(px - along * dx, py - along * dy);
}
