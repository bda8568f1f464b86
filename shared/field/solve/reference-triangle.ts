/** The reference triangle: warp-and-blend nodes, their nodal basis, and the three stiffness pieces from which every straight triangle is made. */
// Indices are bounded by construction throughout, hence `a[i]!`.

import { completeSymmetric, inverse } from './dense.ts';
import type { ReferenceTriangle } from './discrete.ts';
import { gaussLobattoPoints, gaussRule, lagrangeValue } from './gauss.ts';

/** The reference triangle as the assembly needs it. Matrices are row-major, count × count. */
export interface ReferenceElement extends ReferenceTriangle {
  /** ∫ ∂_r φ_i ∂_r φ_j. */
  readonly rr: Float64Array;
  /** ∫ (∂_r φ_i ∂_s φ_j + ∂_s φ_i ∂_r φ_j). */
  readonly rs: Float64Array;
  /** ∫ ∂_s φ_i ∂_s φ_j. */
  readonly ss: Float64Array;
  /** A rule good enough for curved triangles, and the basis gradients at its points: entry (q, i) at q × count + i. */
  readonly quadrature: TriangleRule;
}

export interface TriangleRule {
  readonly r: Float64Array;
  readonly s: Float64Array;
  readonly weights: Float64Array;
  readonly gradR: Float64Array;
  readonly gradS: Float64Array;
}

/** The reference triangle of an order from 1 to 12. Pure function of the order, hence kept. */
export function referenceTriangle(order: number): ReferenceElement {
  let element = kept.get(order);
  if (element === undefined) {
    element = build(order);
    kept.set(order, element);
  }
  return element;
}

const kept = new Map<number, ReferenceElement>();

/** Barycentric coordinates of (r, s) for the corners (-1,-1), (1,-1), (-1,1). */
export function barycentric(r: number, s: number): [number, number, number] {
  return [-(r + s) / 2, (1 + r) / 2, (1 + s) / 2];
}

function build(order: number): ReferenceElement {
  const { r, s } = warpAndBlendNodes(order);
  const count = r.length;
  const modal = new ModalBasis(order);
  // Vandermonde matrix: mode m at node k. A nodal basis function is φ_i = Σ_m (V⁻¹)_mi mode_m.
  const vandermonde = new Float64Array(count * count);
  for (let k = 0; k < count; k++) {
    modal.evaluate(r[k]!, s[k]!);
    vandermonde.set(modal.value, k * count);
  }
  const toModes = inverse(vandermonde, count);
  const nodal = (modes: Float64Array, into: Float64Array): void => {
    into.fill(0, 0, count);
    for (let m = 0; m < count; m++) {
      const weight = modes[m]!;
      for (let i = 0; i < count; i++) into[i] = into[i]! + weight * toModes[m * count + i]!;
    }
  };
  const gradient = (r: number, s: number, intoR: Float64Array, intoS: Float64Array): void => {
    modal.evaluate(r, s);
    nodal(modal.byR, intoR);
    nodal(modal.byS, intoS);
  };
  const quadrature = triangleRule(order + 5, count, gradient);
  return {
    order,
    count,
    r,
    s,
    basis: (r, s, into) => {
      modal.evaluate(r, s);
      nodal(modal.value, into);
    },
    gradient,
    rr: stiffnessPiece(quadrature, quadrature.gradR, quadrature.gradR, count),
    rs: stiffnessPiece(quadrature, quadrature.gradR, quadrature.gradS, count),
    ss: stiffnessPiece(quadrature, quadrature.gradS, quadrature.gradS, count),
    quadrature,
  };
}

/**
 * Blending parameters by order from Hesthaven & Warburton, Nodal Discontinuous Galerkin Methods (2008), section 6.1. They move only
 * the inner nodes, and so touch the conditioning alone.
 */
const BLENDING = [0, 0, 0, 1.4152, 0.1001, 0.2751, 0.98, 1.0999, 1.2832, 1.3648, 1.4773, 1.4959, 1.5743];

/**
 * Warp-and-blend nodes. An equispaced lattice of barycentric coordinates (l0, l1, l2) is shifted along each edge a → b by
 *   δ = W(l_b - l_a) · 4 l_a l_b / (1 - (l_b - l_a)²) · (1 + (α l_c)²),   l_a -= δ/2, l_b += δ/2,
 * where W carries equispaced points of [-1, 1] to Gauss-Lobatto points. On the edge itself l_c = 0 and the factor is 1.
 */
function warpAndBlendNodes(order: number): { r: Float64Array; s: Float64Array } {
  const lattice = latticeOf(order);
  const warp = warpOf(order);
  const alpha = BLENDING[order] ?? 1.6;
  const r = new Float64Array(lattice.length);
  const s = new Float64Array(lattice.length);
  lattice.forEach((index, k) => {
    const start = index.map((i) => i / order);
    const moved = [...start];
    for (const [a, b, c] of EDGES) {
      const la = start[a]!;
      const lb = start[b]!;
      if (la === 0 || lb === 0) continue;
      const place = (index[b]! - index[a]!) / order;
      const blend = ((4 * la * lb) / (1 - place * place)) * (1 + (alpha * start[c]!) ** 2);
      const shift = (warp(place) * blend) / 2;
      moved[a] = moved[a]! - shift;
      moved[b] = moved[b]! + shift;
    }
    r[k] = 2 * moved[1]! - 1;
    s[k] = 2 * moved[2]! - 1;
  });
  return { r, s };
}

/** Edge from a to b, and the corner c opposite. */
const EDGES = [
  [0, 1, 2],
  [1, 2, 0],
  [2, 0, 1],
] as const;

/** Integer barycentric triples in node order: corners, edges 0→1, 1→2, 2→0, inside. */
function latticeOf(order: number): [number, number, number][] {
  const p = order;
  const nodes: [number, number, number][] = [
    [p, 0, 0],
    [0, p, 0],
    [0, 0, p],
  ];
  for (let i = 1; i < p; i++) nodes.push([p - i, i, 0]);
  for (let i = 1; i < p; i++) nodes.push([0, p - i, i]);
  for (let i = 1; i < p; i++) nodes.push([i, 0, p - i]);
  for (let a = 1; a < p; a++) for (let b = 1; a + b < p; b++) nodes.push([a, b, p - a - b]);
  return nodes;
}

/** W(x): interpolates, at the equispaced points of [-1, 1], the way to the Gauss-Lobatto point of the same number. */
function warpOf(order: number): (x: number) => number {
  const lobatto = gaussLobattoPoints(order);
  const equispaced = Float64Array.from(lobatto, (_, i) => (2 * i - order) / order);
  return (x) => {
    let sum = 0;
    for (let i = 0; i <= order; i++) {
      sum += (lobatto[i]! - equispaced[i]!) * lagrangeValue(equispaced, i, x);
    }
    return sum;
  };
}

/** Gauss rule on the square, collapsed onto the triangle: r = (1 + a)(1 - b)/2 - 1, s = b, Jacobian (1 - b)/2. */
function triangleRule(
  pointsEachWay: number,
  count: number,
  gradient: (r: number, s: number, intoR: Float64Array, intoS: Float64Array) => void,
): TriangleRule {
  const { points, weights } = gaussRule(pointsEachWay);
  const total = pointsEachWay * pointsEachWay;
  const rule = {
    r: new Float64Array(total),
    s: new Float64Array(total),
    weights: new Float64Array(total),
    gradR: new Float64Array(total * count),
    gradS: new Float64Array(total * count),
  };
  for (let q = 0; q < total; q++) {
    const i = Math.floor(q / pointsEachWay);
    const j = q % pointsEachWay;
    const b = points[j]!;
    rule.r[q] = ((1 + points[i]!) * (1 - b)) / 2 - 1;
    rule.s[q] = b;
    rule.weights[q] = (weights[i]! * weights[j]! * (1 - b)) / 2;
    const row = q * count;
    gradient(rule.r[q]!, b, rule.gradR.subarray(row, row + count), rule.gradS.subarray(row, row + count));
  }
  return rule;
}

/**
 * ∫ (f_i g_j + g_i f_j)/2 for f = g, ∫ (f_i g_j + g_i f_j) for two different derivatives. The diagonal is set so that every row sums
 * to zero: a constant carries no energy, to the last bit.
 */
function stiffnessPiece(rule: TriangleRule, f: Float64Array, g: Float64Array, count: number): Float64Array {
  const piece = new Float64Array(count * count);
  for (let q = 0; q < rule.weights.length; q++) {
    const weight = f === g ? rule.weights[q]! / 2 : rule.weights[q]!;
    const row = q * count;
    for (let i = 0; i < count; i++) {
      const fi = weight * f[row + i]!;
      const gi = weight * g[row + i]!;
      for (let j = 0; j < i; j++) {
        piece[i * count + j] = piece[i * count + j]! + fi * g[row + j]! + gi * f[row + j]!;
      }
    }
  }
  completeSymmetric(piece, count);
  return piece;
}

/**
 * Orthonormal polynomials on the triangle (Proriol, Koornwinder, Dubiner), by recurrences without the singular corner of collapsed
 * coordinates (R. C. Kirby, ACM Trans. Math. Software 37 (2010), article 5):
 *   mode(i, j) = √((2i + 1)(i + j + 1)/2) Q_i(r, s) P_j^(2i+1, 0)(s),
 *   (i + 1) Q_{i+1} = (2i + 1) f Q_i - i h Q_{i-1},   f = (1 + 2r + s)/2,  h = ((1 - s)/2)².
 */
class ModalBasis {
  readonly value: Float64Array;
  readonly byR: Float64Array;
  readonly byS: Float64Array;
  private readonly order: number;
  private readonly norms: Float64Array;

  constructor(order: number) {
    const count = ((order + 1) * (order + 2)) / 2;
    this.order = order;
    this.value = new Float64Array(count);
    this.byR = new Float64Array(count);
    this.byS = new Float64Array(count);
    this.norms = new Float64Array(count);
    let m = 0;
    for (let i = 0; i <= order; i++) {
      for (let j = 0; i + j <= order; j++) this.norms[m++] = Math.sqrt(((2 * i + 1) * (i + j + 1)) / 2);
    }
  }

  /** Fills `value`, `byR` and `byS` for the point (r, s). */
  evaluate(r: number, s: number): void {
    const f = (1 + 2 * r + s) / 2;
    const half = (1 - s) / 2;
    const h = half * half;
    let [q, qr, qs] = [1, 0, 0];
    let [before, beforeR, beforeS] = [0, 0, 0];
    let m = 0;
    for (let i = 0; i <= this.order; i++) {
      m = this.column(i, s, [q, qr, qs], m);
      const a = (2 * i + 1) / (i + 1);
      const b = i / (i + 1);
      const next = a * f * q - b * h * before;
      const nextR = a * (q + f * qr) - b * h * beforeR;
      const nextS = a * (q / 2 + f * qs) - b * (h * beforeS - half * before);
      [before, beforeR, beforeS] = [q, qr, qs];
      [q, qr, qs] = [next, nextR, nextS];
    }
  }

  /**
   * Modes (i, 0 … order - i) for given Q_i and its derivatives, written from place m on. With α = 2i + 1 (A. & S. 22.7.1):
   *   2(n+1)(n+α+1)(2n+α) P_{n+1} = (2n+α+1)((2n+α+2)(2n+α) s + α²) P_n - 2n(n+α)(2n+α+2) P_{n-1}.
   */
  private column(i: number, s: number, [q, qr, qs]: [number, number, number], m: number): number {
    const alpha = 2 * i + 1;
    let [p, slope] = [1, 0];
    let [before, slopeBefore] = [0, 0];
    let place = m;
    for (let n = 0; i + n <= this.order; n++) {
      const norm = this.norms[place]!;
      this.value[place] = norm * q * p;
      this.byR[place] = norm * qr * p;
      this.byS[place] = norm * (qs * p + q * slope);
      place++;
      const d = 2 * n + alpha;
      const left = 2 * (n + 1) * (n + alpha + 1) * d;
      const linear = ((d + 1) * (d + 2) * d) / left;
      const constant = ((d + 1) * alpha * alpha) / left;
      const back = (2 * n * (n + alpha) * (d + 2)) / left;
      const next = (linear * s + constant) * p - back * before;
      const nextSlope = linear * p + (linear * s + constant) * slope - back * slopeBefore;
      [before, slopeBefore] = [p, slope];
      [p, slope] = [next, nextSlope];
    }
    return place;
  }
}
