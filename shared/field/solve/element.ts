/** Stiffness of single triangles, for conductivity normalised to determinant one: K_ij = ∫ ∇φ_i · σ ∇φ_j. */
// Indices are bounded by construction throughout, hence `a[i]!`.
import type { Mesh } from '../mesh/mesh.ts';
import { ArcMap, type MapPoint } from './arc-map.ts';
import { completeSymmetric } from './dense.ts';
import type { ReferenceElement } from './reference-triangle.ts';

/** Conductivity along x and along y, S per square; the axes of the grain are those of the sheet. */
export type Conductivity = readonly [number, number];

export interface TriangleStiffness {
  /** Triangle t: weights of the reference pieces rr, rs, ss at 3t, 3t + 1, 3t + 2. Unused where the triangle is curved. */
  readonly weights: Float64Array;
  /** Whole matrices of the curved triangles. */
  readonly curved: ReadonlyMap<number, Float64Array>;
  /** Triangles that are turned inside out by their curved sides, or have no area. */
  readonly broken: readonly number[];
}

export function triangleStiffness(
  mesh: Mesh,
  reference: ReferenceElement,
  sigma: Conductivity,
): TriangleStiffness {
  const triangles = mesh.corners.length / 3;
  const weights = new Float64Array(3 * triangles);
  const curved = new Map<number, Float64Array>();
  const broken: number[] = [];
  for (let t = 0; t < triangles; t++) {
    if (!straightWeights(mesh, t, sigma, weights)) broken.push(t);
    const map = ArcMap.of(mesh, t);
    if (map === null) continue;
    const matrix = curvedMatrix(map, reference, sigma);
    if (matrix === null) broken.push(t);
    else curved.set(t, matrix);
  }
  return { weights, curved, broken };
}

/** Whole row-major matrix of triangle t. */
export function triangleMatrix(
  stiffness: TriangleStiffness,
  reference: ReferenceElement,
  t: number,
): Float64Array {
  const curved = stiffness.curved.get(t);
  if (curved !== undefined) return curved;
  const { rr, rs, ss } = reference;
  const [wrr, wrs, wss] = [
    stiffness.weights[3 * t]!,
    stiffness.weights[3 * t + 1]!,
    stiffness.weights[3 * t + 2]!,
  ];
  const matrix = new Float64Array(rr.length);
  for (let i = 0; i < matrix.length; i++) matrix[i] = wrr * rr[i]! + wrs * rs[i]! + wss * ss[i]!;
  return matrix;
}

/**
 * With J = x_r y_s - x_s y_r and ∇r = (y_s, -x_s)/J, ∇s = (-y_r, x_r)/J:
 *   K = J (∇r·σ∇r) rr + J (∇r·σ∇s) rs + J (∇s·σ∇s) ss.
 */
function straightWeights(mesh: Mesh, t: number, [sx, sy]: Conductivity, into: Float64Array): boolean {
  const [a, b, c] = [mesh.corners[3 * t]!, mesh.corners[3 * t + 1]!, mesh.corners[3 * t + 2]!];
  const xr = (mesh.x[b]! - mesh.x[a]!) / 2;
  const yr = (mesh.y[b]! - mesh.y[a]!) / 2;
  const xs = (mesh.x[c]! - mesh.x[a]!) / 2;
  const ys = (mesh.y[c]! - mesh.y[a]!) / 2;
  const jacobian = xr * ys - xs * yr;
  into[3 * t] = (sx * ys * ys + sy * xs * xs) / jacobian;
  into[3 * t + 1] = -(sx * ys * yr + sy * xs * xr) / jacobian;
  into[3 * t + 2] = (sx * yr * yr + sy * xr * xr) / jacobian;
  return jacobian > 0;
}

/** The same by quadrature on the curved map; null if its Jacobian is not positive throughout. */
function curvedMatrix(map: ArcMap, reference: ReferenceElement, [sx, sy]: Conductivity): Float64Array | null {
  const { count, quadrature } = reference;
  const matrix = new Float64Array(count * count);
  const gx = new Float64Array(count);
  const gy = new Float64Array(count);
  const at: MapPoint = { x: 0, y: 0, xr: 0, xs: 0, yr: 0, ys: 0 };
  for (let q = 0; q < quadrature.weights.length; q++) {
    map.at(quadrature.r[q]!, quadrature.s[q]!, at);
    const jacobian = at.xr * at.ys - at.xs * at.yr;
    if (!(jacobian > 0)) return null;
    const row = q * count;
    for (let i = 0; i < count; i++) {
      gx[i] = quadrature.gradR[row + i]! * at.ys - quadrature.gradS[row + i]! * at.yr;
      gy[i] = quadrature.gradS[row + i]! * at.xr - quadrature.gradR[row + i]! * at.xs;
    }
    const weight = quadrature.weights[q]! / jacobian;
    for (let i = 0; i < count; i++) {
      const fx = weight * sx * gx[i]!;
      const fy = weight * sy * gy[i]!;
      for (let j = 0; j < i; j++) matrix[i * count + j]! += fx * gx[j]! + fy * gy[j]!;
    }
  }
  completeSymmetric(matrix, count);
  return matrix;
}
