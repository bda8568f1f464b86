/** Curved triangles: the smooth map from the reference triangle that carries its sides onto true circles. */
// Indices are bounded by construction throughout, hence `a[i]!`.
import { atan2, cos, sin } from '../maths.ts';
import type { Mesh } from '../mesh/mesh.ts';
import { barycentric } from './reference-triangle.ts';

/** Position and its derivatives by r and s. */
export interface MapPoint {
  x: number;
  y: number;
  xr: number;
  xs: number;
  yr: number;
  ys: number;
}

/** A side that follows a circle from the corner `from` (0, 1, 2) of its triangle to the next. */
interface ArcSide {
  readonly from: number;
  readonly radius: number;
  /** Half the turn from end to end, rad, positive anticlockwise. */
  readonly half: number;
  /** Unit vector from the centre to the middle of the arc. */
  readonly ux: number;
  readonly uy: number;
}

/**
 * x = Σ l_k v_k + Σ_sides 4 l_a l_b F(l_b - l_a),   F(σ) = (arc(σ) - chord(σ)) / (1 - σ²).
 * The bulge f = arc - chord vanishes at both ends, so F is smooth, and on the side itself 4 l_a l_b = 1 - σ².
 */
export class ArcMap {
  private readonly x: readonly number[];
  private readonly y: readonly number[];
  private readonly sides: readonly ArcSide[];

  private constructor(x: readonly number[], y: readonly number[], sides: readonly ArcSide[]) {
    this.x = x;
    this.y = y;
    this.sides = sides;
  }

  /** The map of triangle t, or null if all its sides are straight. */
  static of(mesh: Mesh, t: number): ArcMap | null {
    const corners = [0, 1, 2].map((j) => mesh.corners[3 * t + j]!);
    const x = corners.map((v) => mesh.x[v]!);
    const y = corners.map((v) => mesh.y[v]!);
    const sides: ArcSide[] = [];
    for (let j = 0; j < 3; j++) {
      const e = 3 * t + j;
      const arc = mesh.twins[e]! < 0 ? mesh.sides[mesh.side[e]!]!.arc : -1;
      if (arc < 0) continue;
      const { x: cx, y: cy, radius } = mesh.arcs[arc]!;
      const k = (j + 1) % 3;
      sides.push(arcSide(j, radius, [x[j]! - cx, y[j]! - cy], [x[k]! - cx, y[k]! - cy]));
    }
    return sides.length === 0 ? null : new ArcMap(x, y, sides);
  }

  /** Position and derivatives at (r, s), written into `into`. */
  at(r: number, s: number, into: MapPoint): void {
    const l = barycentric(r, s);
    const { x, y } = this;
    into.x = l[0] * x[0]! + l[1] * x[1]! + l[2] * x[2]!;
    into.y = l[0] * y[0]! + l[1] * y[1]! + l[2] * y[2]!;
    into.xr = (x[1]! - x[0]!) / 2;
    into.xs = (x[2]! - x[0]!) / 2;
    into.yr = (y[1]! - y[0]!) / 2;
    into.ys = (y[2]! - y[0]!) / 2;
    for (const side of this.sides) addBulge(side, l, into);
  }
}

/** The side from p to q, both relative to the circle's centre. */
function arcSide(
  from: number,
  radius: number,
  [px, py]: [number, number],
  [qx, qy]: [number, number],
): ArcSide {
  const turn = atan2(px * qy - py * qx, px * qx + py * qy);
  const start = atan2(py, px);
  return { from, radius, half: turn / 2, ux: cos(start + turn / 2), uy: sin(start + turn / 2) };
}

/** Derivatives of l_0, l_1, l_2 by r and by s. */
const BY_R = [-0.5, 0.5, 0] as const;
const BY_S = [-0.5, 0, 0.5] as const;

/**
 * With u the middle direction, n = u turned by 90°, h the half turn and R the radius:
 *   f(σ) = R [(cos hσ - cos h) u + (sin hσ - σ sin h) n],   f'(σ) = R [-h sin hσ u + (h cos hσ - sin h) n].
 */
function addBulge(side: ArcSide, l: readonly [number, number, number], into: MapPoint): void {
  const { from, radius, half, ux, uy } = side;
  const to = (from + 1) % 3;
  const la = l[from]!;
  const lb = l[to]!;
  const sigma = lb - la;
  const rest = 1 - sigma * sigma;
  // At a corner the bulge and, with it, its derivative along the side are zero or met by the limit; nodes there need the position only.
  if (rest < 1e-13) return;
  const along = radius * (cos(half * sigma) - cos(half));
  const across = radius * (sin(half * sigma) - sigma * sin(half));
  const alongSlope = -radius * half * sin(half * sigma);
  const acrossSlope = radius * (half * cos(half * sigma) - sin(half));
  const fx = (along * ux - across * uy) / rest;
  const fy = (along * uy + across * ux) / rest;
  const weight = 4 * la * lb;
  into.x += weight * fx;
  into.y += weight * fy;
  const dfx = (alongSlope * ux - acrossSlope * uy + 2 * sigma * fx) / rest;
  const dfy = (alongSlope * uy + acrossSlope * ux + 2 * sigma * fy) / rest;
  const weightR = 4 * (BY_R[from]! * lb + la * BY_R[to]!);
  const weightS = 4 * (BY_S[from]! * lb + la * BY_S[to]!);
  const sigmaR = BY_R[to]! - BY_R[from]!;
  const sigmaS = BY_S[to]! - BY_S[from]!;
  into.xr += weightR * fx + weight * dfx * sigmaR;
  into.yr += weightR * fy + weight * dfy * sigmaR;
  into.xs += weightS * fx + weight * dfx * sigmaS;
  into.ys += weightS * fy + weight * dfy * sigmaS;
}
