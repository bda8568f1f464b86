/** Charge on the rim of a disc tip: how it spreads beside straight and round boundaries, and the potential it makes there. */
// Indices are bounded by construction throughout, hence `a[i]!`.
import type { Point } from '../geometry/outline.ts';
import { cos, log, sin } from '../maths.ts';
import { partialCholesky, solveLower, solveUpper } from '../solve/dense.ts';
import type { Tip } from './meshed-tip.ts';
import { type Mirror, PointSource, type Sigma, withImages } from './point-source.ts';

/** Points on the rim: 1.1 radii from a straight boundary the charge's waves fade like 0.64^k. */
const POINTS = 64;

export interface TipRim {
  readonly tip: Tip;
  readonly sigma: Sigma;
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Potential at point i for 1 A at point j, Ω, row-major: its own and that of its images. */
  readonly matrix: Float64Array;
  /** Potential at a place for 1 A at another, by the images alone, Ω. */
  images(at: Point, from: Point): number;
}

/** All else around a point current, in isotropic coordinates x/√σx and y/√σy: a harmonic function about (x, y), to second order. */
export interface Regular extends Point {
  readonly value: number;
  readonly gradX: number;
  readonly gradY: number;
  readonly bend: number;
}

export function rimOf(tip: Tip, sigma: Sigma, mirrors: readonly Mirror[]): TipRim {
  const angles = Array.from({ length: POINTS }, (_, i) => (2 * Math.PI * i) / POINTS);
  const x = Float64Array.from(angles, (angle) => tip.x + tip.radius * cos(angle));
  const y = Float64Array.from(angles, (angle) => tip.y + tip.radius * sin(angle));
  const images = (at: Point, from: Point): number => imagesOf(sigma, from, mirrors).value(at.x, at.y, 1);
  const matrix = ownPotential(tip.radius, sigma);
  if (mirrors.length > 0) {
    for (let j = 0; j < POINTS; j++) {
      const from = { x: x[j]!, y: y[j]! };
      const source = imagesOf(sigma, from, mirrors);
      // Images in circles leave a constant open that depends on the source: made symmetric about the tip's centre.
      const constant = images(from, tip) - source.value(tip.x, tip.y, 1);
      for (let i = 0; i < POINTS; i++) matrix[i * POINTS + j]! += source.value(x[i]!, y[i]!, 1) + constant;
    }
  }
  return { tip, sigma, x, y, matrix, images };
}

function imagesOf(sigma: Sigma, { x, y }: Point, mirrors: readonly Mirror[]): PointSource {
  return new PointSource(sigma, withImages(sigma, { x, y, amount: 1 }, mirrors) ?? []);
}

/**
 * In isotropic coordinates the rim is an ellipse of semi-axes A and B, on which the distance of two points is
 *   ρ² = 4 sin²((θ - θ')/2) (A² sin² m + B² cos² m),   m = (θ + θ')/2,
 * and -½ ∫ ln 4 sin²((θ - θ')/2) cos kθ' dθ' = (π/k) cos kθ, 0 for k = 0. Charges at the points are taken as a sum of such waves.
 */
function ownPotential(radius: number, sigma: Sigma): Float64Array {
  const { strength } = new PointSource(sigma, []);
  const [aa, bb] = [(radius * radius) / sigma[0], (radius * radius) / sigma[1]];
  const shape = Float64Array.from({ length: POINTS }, (_, turns) => {
    const middle = (Math.PI * turns) / POINTS;
    return log(aa * sin(middle) ** 2 + bb * cos(middle) ** 2) / 2;
  });
  const matrix = new Float64Array(POINTS * POINTS);
  for (let i = 0; i < POINTS; i++) {
    for (let j = 0; j < POINTS; j++) {
      const step = (i - j + POINTS) % POINTS;
      matrix[i * POINTS + j] = strength * (WAVES[step]! - shape[(i + j) % POINTS]!);
    }
  }
  return matrix;
}

/** Of points so many steps apart: Σ cos kθ / k, the last wave by half. */
const WAVES = Float64Array.from({ length: POINTS }, (_, step) => {
  let sum = cos(Math.PI * step) / POINTS;
  for (let k = 1; k < POINTS / 2; k++) sum += cos((2 * Math.PI * k * step) / POINTS) / k;
  return sum;
});

export interface Settled {
  /** Where a point current stands for the rim's charge: exactly so beside one straight boundary. */
  readonly centre: Point;
  /** Potential of the tip for 1 A, Ω. */
  readonly potential_ohm: number;
}

/**
 * The charge as it spreads between its images and all else. With w around a point current at c, what is neither own nor image is
 * h(x, x') = w(x) + w(x') - w(c), but for products of dipoles. Without w the potential is that of charge and images alone.
 */
export function settled(rim: TipRim, w: Regular | null): Settled {
  const { tip, sigma, x, y, matrix, images } = rim;
  const { charge, potential } = spread(w === null ? matrix : withRise(rim, w), sigma);
  let [cx, cy] = [tip.x, tip.y];
  for (let i = 0; i < POINTS; i++) {
    cx += charge[i]! * (x[i]! - tip.x);
    cy += charge[i]! * (y[i]! - tip.y);
  }
  const rest = w === null ? 0 : w.value + images(tip, w) - images(w, tip);
  return { centre: { x: cx, y: cy }, potential_ohm: potential + rest };
}

/** The matrix with w(x) + w(x') - 2 w(c) added. */
function withRise({ sigma: [sx, sy], x, y, matrix }: TipRim, w: Regular): Float64Array {
  const rise = Float64Array.from(x, (_, i) => {
    const [dx, dy] = [(x[i]! - w.x) / Math.sqrt(sx), (y[i]! - w.y) / Math.sqrt(sy)];
    return w.gradX * dx + w.gradY * dy + (w.bend * (dx * dx - dy * dy)) / 2;
  });
  const risen = matrix.slice();
  for (let i = 0; i < POINTS; i++) {
    for (let j = 0; j < POINTS; j++) risen[i * POINTS + j] = risen[i * POINTS + j]! + rise[i]! + rise[j]!;
  }
  return risen;
}

/** Charge of 1 in all that makes one potential on the rim. A constant in the matrix changes that potential alone. */
function spread(
  matrix: Float64Array,
  sigma: Sigma,
): { readonly charge: Float64Array; readonly potential: number } {
  // Enough of a constant for the matrix to be positive definite.
  let least = 0;
  for (let i = 0; i < matrix.length; i++) least = Math.min(least, matrix[i]!);
  const lift = new PointSource(sigma, []).strength - least;
  const factor = matrix.slice();
  for (let i = 0; i < factor.length; i++) factor[i]! += lift;
  const charge = new Float64Array(POINTS).fill(1);
  partialCholesky(factor, 0, POINTS, POINTS);
  solveLower(factor, POINTS, charge);
  solveUpper(factor, POINTS, charge);
  const sum = charge.reduce((total, part) => total + part, 0);
  return { charge: charge.map((part) => part / sum), potential: 1 / sum - lift };
}
