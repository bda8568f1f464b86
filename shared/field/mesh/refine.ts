/**
 * Quality refinement after Chew and Ruppert: no angle below 24°, no boundary piece seen from its triangle under more than about
 * 100°, nothing larger than the size asked for. Bounded by counters; the order of work depends on nothing but the input.
 *
 * Indices are bounded by construction: `a[i]!` below never meets a missing entry.
 */
import { hypot, sin, tan } from '../maths.ts';
import type { MeshArc, MeshSide } from './mesh.ts';
import { nextEdge, previousEdge, type Triangulation } from './triangulation.ts';

export interface RefineLimits {
  readonly size_mm: number;
  readonly maxVertices: number;
}

const SMALLEST_ANGLE = (24 * Math.PI) / 180;
/** (circumradius / shortest edge)² of a triangle with the smallest allowed angle. */
const WORST_RATIO = 1 / (2 * sin(SMALLEST_ANGLE)) ** 2;
/** Height of an off-centre over the shortest edge, as a part of that edge; a little inside the allowed shape. */
const OFF_CENTRE = 0.95 / (2 * tan(SMALLEST_ANGLE / 2));
/** A boundary piece is crowded by a vertex that sees it under an angle with a smaller cosine than this. */
const CROWDED_COSINE = -0.2;
/** Nothing shorter than this is divided, mm. */
const SHORTEST = 1e-7;
/** Longest side of a triangle's circumradius, as a part of the size. */
const RADIUS_PART = 0.6;
/** A triangle's angle at an arc that bulges into it, as a multiple of the angle between chord and arc. */
const ARC_ROOM = 1.25;

export interface Refined {
  readonly steps: number;
  readonly complete: boolean;
}

export function refine(
  mesh: Triangulation,
  sides: readonly MeshSide[],
  arcs: readonly MeshArc[],
  limits: RefineLimits,
): Refined {
  const refiner = new Refiner(mesh, sides, arcs, limits);
  return refiner.run();
}

class Refiner {
  private readonly mesh: Triangulation;
  private readonly sides: readonly MeshSide[];
  private readonly arcs: readonly MeshArc[];
  private readonly size2: number;
  private readonly limits: RefineLimits;
  private sound = true;

  constructor(
    mesh: Triangulation,
    sides: readonly MeshSide[],
    arcs: readonly MeshArc[],
    limits: RefineLimits,
  ) {
    this.mesh = mesh;
    this.sides = sides;
    this.arcs = arcs;
    this.limits = limits;
    this.size2 = limits.size_mm * limits.size_mm;
  }

  run(): Refined {
    const { mesh, limits } = this;
    const maxSteps = 40 * limits.maxVertices;
    let steps = 0;
    for (let t = mesh.takeWaiting(); t >= 0; t = mesh.takeWaiting()) {
      if (mesh.vertices >= limits.maxVertices || ++steps > maxSteps) return { steps, complete: false };
      if (mesh.corners[3 * t]! < 0) continue;
      if (this.improveBoundary(t) || this.improveShape(t)) mesh.wait(t);
    }
    return { steps, complete: this.sound };
  }

  /** Divides a boundary piece of t that is crowded or too long; false if there is none. */
  private improveBoundary(t: number): boolean {
    const { mesh } = this;
    for (let e = 3 * t; e < 3 * t + 3; e++) {
      if (mesh.twins[e]! >= 0) continue;
      const length2 = this.length2(e);
      const c = mesh.corners[previousEdge(e)]!;
      const wanted = length2 > this.size2 || this.crowds(e, mesh.x[c]!, mesh.y[c]!) || this.cramped(e);
      if (wanted && this.divide(e)) return true;
    }
    return false;
  }

  private length2(e: number): number {
    const { x, y, corners } = this.mesh;
    const a = corners[e]!;
    const b = corners[nextEdge(e)]!;
    return (x[b]! - x[a]!) * (x[b]! - x[a]!) + (y[b]! - y[a]!) * (y[b]! - y[a]!);
  }

  private crowds(e: number, px: number, py: number): boolean {
    const { x, y, corners } = this.mesh;
    const a = corners[e]!;
    const b = corners[nextEdge(e)]!;
    const ux = x[a]! - px;
    const uy = y[a]! - py;
    const vx = x[b]! - px;
    const vy = y[b]! - py;
    return ux * vx + uy * vy < CROWDED_COSINE * Math.sqrt((ux * ux + uy * uy) * (vx * vx + vy * vy));
  }

  /** Does the arc over e = a → b bulge so far into its triangle that the other sides have no room? */
  private cramped(e: number): boolean {
    const arc = this.arcs[this.sides[this.mesh.side[e]!]!.arc];
    if (!arc) return false;
    const { x, y, corners } = this.mesh;
    const a = corners[e]!;
    const b = corners[nextEdge(e)]!;
    const c = corners[previousEdge(e)]!;
    const dx = x[b]! - x[a]!;
    const dy = y[b]! - y[a]!;
    const towards = dx * (arc.y - y[a]!) - dy * (arc.x - x[a]!);
    if (towards > 0) return false;
    const length = hypot(dx, dy);
    const height = dx * (y[c]! - y[a]!) - dy * (x[c]! - x[a]!);
    const fromA = dx * (x[c]! - x[a]!) + dy * (y[c]! - y[a]!);
    const fromB = length * length - fromA;
    // tan of the angle between chord and arc, (length / 2) / (distance of the centre from the chord)
    const bend = (ARC_ROOM * length * length) / (2 * -towards);
    return height < bend * Math.max(fromA, fromB);
  }

  /** Halves a boundary piece, on its arc if it has one. */
  private divide(e: number): boolean {
    const { mesh } = this;
    if (this.length2(e) < SHORTEST * SHORTEST) return false;
    const a = mesh.corners[e]!;
    const b = mesh.corners[nextEdge(e)]!;
    const mx = (mesh.x[a]! + mesh.x[b]!) / 2;
    const my = (mesh.y[a]! + mesh.y[b]!) / 2;
    const arc = this.arcs[this.sides[mesh.side[e]!]!.arc];
    if (!arc) {
      mesh.splitBoundary(e, mx, my);
      return true;
    }
    const away = hypot(mx - arc.x, my - arc.y);
    const px = arc.x + (arc.radius * (mx - arc.x)) / away;
    const py = arc.y + (arc.radius * (my - arc.y)) / away;
    const right = (mesh.x[b]! - mesh.x[a]!) * (py - my) - (mesh.y[b]! - mesh.y[a]!) * (px - mx) <= 0;
    if (right) mesh.splitOutward(e, px, py);
    else if (!mesh.splitInward(e, px, py)) {
      this.sound = false;
      return false;
    }
    return true;
  }

  /** Puts a vertex near the circumcentre of t if t is too thin or too large; false if nothing was done. */
  private improveShape(t: number): boolean {
    const { mesh } = this;
    const { x, y, corners } = mesh;
    const a = corners[3 * t]!;
    const b = corners[3 * t + 1]!;
    const c = corners[3 * t + 2]!;
    const bx = x[b]! - x[a]!;
    const by = y[b]! - y[a]!;
    const cx = x[c]! - x[a]!;
    const cy = y[c]! - y[a]!;
    const bb = bx * bx + by * by;
    const cc = cx * cx + cy * cy;
    const area4 = 2 * (bx * cy - by * cx);
    const ox = (cy * bb - by * cc) / area4;
    const oy = (bx * cc - cx * bb) / area4;
    const radius2 = ox * ox + oy * oy;
    const aa = (cx - bx) * (cx - bx) + (cy - by) * (cy - by);
    const shortest2 = Math.min(aa, bb, cc);
    const tooLarge = radius2 > RADIUS_PART * RADIUS_PART * this.size2;
    if (!(radius2 > WORST_RATIO * shortest2 || tooLarge) || shortest2 < SHORTEST * SHORTEST) return false;
    let px = x[a]! + ox;
    let py = y[a]! + oy;
    if (!tooLarge) {
      const from = shortest2 === bb ? a : shortest2 === aa ? b : c;
      const to = shortest2 === bb ? b : shortest2 === aa ? c : a;
      const ex = x[to]! - x[from]!;
      const ey = y[to]! - y[from]!;
      const mx = (x[from]! + x[to]!) / 2;
      const my = (y[from]! + y[to]!) / 2;
      const offX = -OFF_CENTRE * ey;
      const offY = OFF_CENTRE * ex;
      if (offX * offX + offY * offY < (px - mx) * (px - mx) + (py - my) * (py - my)) {
        px = mx + offX;
        py = my + offY;
      }
    }
    return this.place(t, px, py);
  }

  /** Inserts (px, py), seen from t, or divides the boundary piece in the way or crowded by it. */
  private place(t: number, px: number, py: number): boolean {
    const { mesh } = this;
    const { x, y, corners } = mesh;
    const gx = (x[corners[3 * t]!]! + x[corners[3 * t + 1]!]! + x[corners[3 * t + 2]!]!) / 3;
    const gy = (y[corners[3 * t]!]! + y[corners[3 * t + 1]!]! + y[corners[3 * t + 2]!]!) / 3;
    const found = mesh.locate(t, gx, gy, px, py);
    if (found < 0) return this.divide(-1 - found);
    const crowded = this.crowdedAround(found, px, py);
    if (crowded >= 0) return this.divide(crowded);
    if (!mesh.holds(found, px, py)) return false;
    for (let e = 3 * found; e < 3 * found + 3; e++) {
      const v = corners[e]!;
      if (hypot(x[v]! - px, y[v]! - py) < SHORTEST) return false;
    }
    mesh.insert(found, px, py);
    return true;
  }

  /** A boundary half-edge of triangle t or its neighbours that (px, py) would crowd, or -1. */
  private crowdedAround(t: number, px: number, py: number): number {
    const { mesh } = this;
    for (let e = 3 * t; e < 3 * t + 3; e++) {
      const twin = mesh.twins[e]!;
      if (twin < 0) {
        if (this.crowds(e, px, py)) return e;
        continue;
      }
      const one = nextEdge(twin);
      if (mesh.twins[one]! < 0 && this.crowds(one, px, py)) return one;
      const other = previousEdge(twin);
      if (mesh.twins[other]! < 0 && this.crowds(other, px, py)) return other;
    }
    return -1;
  }
}
