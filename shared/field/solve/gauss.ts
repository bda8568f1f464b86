/** Points, weights and polynomials on the interval [-1, 1]: Gauss quadrature, Gauss-Lobatto nodes, Lagrange bases. */
// Indices are bounded by construction throughout, hence `a[i]!`.
import { cos } from '../maths.ts';

export interface Quadrature {
  readonly points: Float64Array;
  readonly weights: Float64Array;
}

/** Values and derivatives of the Lagrange basis of some nodes at some points: entry (k, i) at k × nodes + i. */
export interface LagrangeTable {
  readonly nodes: number;
  readonly values: Float64Array;
  readonly derivatives: Float64Array;
}

/** Gauss-Legendre rule of `count` points, exact for polynomials of degree 2 count - 1. Abramowitz & Stegun 25.4.29. */
export function gaussRule(count: number): Quadrature {
  const points = new Float64Array(count);
  const weights = new Float64Array(count);
  for (let i = 0; 2 * i < count; i++) {
    const guess = -cos((Math.PI * (i + 0.75)) / (count + 0.5));
    const x = 2 * i + 1 === count ? 0 : newton(guess, (t) => legendre(count, t));
    const slope = legendre(count, x)[1];
    const weight = 2 / ((1 - x * x) * slope * slope);
    points[i] = x;
    points[count - 1 - i] = -x;
    weights[i] = weight;
    weights[count - 1 - i] = weight;
  }
  return { points, weights };
}

/** The `order + 1` Gauss-Lobatto points: the ends and the zeros of P'_order, exactly symmetric. A. & S. 25.4.32. */
export function gaussLobattoPoints(order: number): Float64Array {
  const points = new Float64Array(order + 1);
  for (let i = 0; 2 * i < order; i++) {
    const x = i === 0 ? -1 : newton(-cos((Math.PI * i) / order), (t) => slopeOfLegendre(order, t));
    points[i] = x;
    points[order - i] = -x;
  }
  return points;
}

/** Lagrange basis on `nodes`, tabulated at `points`. */
export function lagrangeTable(nodes: Float64Array, points: Float64Array): LagrangeTable {
  const n = nodes.length;
  const values = new Float64Array(points.length * n);
  const derivatives = new Float64Array(points.length * n);
  for (let k = 0; k < points.length; k++) {
    for (let i = 0; i < n; i++) {
      values[k * n + i] = lagrangeValue(nodes, i, points[k]!);
      derivatives[k * n + i] = lagrangeDerivative(nodes, i, points[k]!);
    }
  }
  return { nodes: n, values, derivatives };
}

/** l_i(x) = Π_{j ≠ i} (x - x_j)/(x_i - x_j). */
export function lagrangeValue(nodes: Float64Array, i: number, x: number): number {
  let product = 1;
  for (let j = 0; j < nodes.length; j++) {
    if (j !== i) product *= (x - nodes[j]!) / (nodes[i]! - nodes[j]!);
  }
  return product;
}

/** l_i'(x) = Σ_{m ≠ i} 1/(x_i - x_m) Π_{j ≠ i, m} (x - x_j)/(x_i - x_j). */
function lagrangeDerivative(nodes: Float64Array, i: number, x: number): number {
  let sum = 0;
  for (let m = 0; m < nodes.length; m++) {
    if (m === i) continue;
    let term = 1 / (nodes[i]! - nodes[m]!);
    for (let j = 0; j < nodes.length; j++) {
      if (j !== i && j !== m) term *= (x - nodes[j]!) / (nodes[i]! - nodes[j]!);
    }
    sum += term;
  }
  return sum;
}

/** P_n(x) and P_n'(x) for |x| < 1: (k+1) P_{k+1} = (2k+1) x P_k - k P_{k-1}, (x² - 1) P_n' = n (x P_n - P_{n-1}). */
function legendre(n: number, x: number): [number, number] {
  let previous = 1;
  let value = x;
  for (let k = 1; k < n; k++) {
    const next = ((2 * k + 1) * x * value - k * previous) / (k + 1);
    previous = value;
    value = next;
  }
  return [value, (n * (x * value - previous)) / (x * x - 1)];
}

/** P_n'(x) and P_n''(x), the latter from Legendre's equation (1 - x²) P'' = 2x P' - n(n+1) P. */
function slopeOfLegendre(n: number, x: number): [number, number] {
  const [value, slope] = legendre(n, x);
  return [slope, (2 * x * slope - n * (n + 1) * value) / (1 - x * x)];
}

/** Newton's iteration from a guess so close that it converges quadratically; ten steps are more than enough. */
function newton(guess: number, at: (x: number) => [number, number]): number {
  let x = guess;
  for (let step = 0; step < 10; step++) {
    const [value, slope] = at(x);
    x -= value / slope;
  }
  return x;
}
