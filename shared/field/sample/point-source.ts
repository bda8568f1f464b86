/** Point currents in an unbounded sheet with grain, and their images in straight and round boundaries. */
import type { Point } from '../geometry/outline.ts';
import { atan2, log } from '../maths.ts';

export interface Charge {
  readonly x: number;
  readonly y: number;
  /** Current against that of the source itself. */
  readonly amount: number;
}

/** A boundary as a mirror: metal turns the sign of the image, an insulating edge keeps it. */
export interface Mirror {
  readonly metal: boolean;
  /** A straight boundary through (x, y) along (ex, ey), or a circle about (x, y). */
  readonly x: number;
  readonly y: number;
  readonly along: readonly [ex: number, ey: number] | null;
  readonly radius: number;
}

/** Conductivity along x and along y, S per square. Isotropic coordinates are x/√σx, y/√σy. */
export type Sigma = readonly [x: number, y: number];

/**
 * s(x) = -Σ q_i ln ρ_i / (2π √det σ), ρ² = dᵀ σ⁻¹ d with d = x - x_i. Its current density is σ∇s = -Σ q_i d / (ρ_i² 2π √det σ).
 */
export class PointSource {
  /** 1/(2π √det σ), Ω. */
  readonly strength: number;
  readonly rootDeterminant: number;
  /** The source itself, then its images. */
  readonly charges: readonly Charge[];
  private readonly sigma: Sigma;

  constructor(sigma: Sigma, charges: readonly Charge[]) {
    this.sigma = sigma;
    this.charges = charges;
    this.rootDeterminant = Math.sqrt(sigma[0] * sigma[1]);
    this.strength = 1 / (2 * Math.PI * this.rootDeterminant);
  }

  /** s at (x, y), the first `skip` charges left out. */
  value(x: number, y: number, skip = 0): number {
    let sum = 0;
    for (let i = skip; i < this.charges.length; i++) {
      const charge = this.charges[i];
      if (charge) sum += charge.amount * log(rhoSquare(this.sigma, x - charge.x, y - charge.y));
    }
    return (-this.strength * sum) / 2;
  }

  /** Current density at (x, y), A/mm for 1 A. */
  density(x: number, y: number): readonly [number, number] {
    let [jx, jy] = [0, 0];
    const unit = 1 / (2 * Math.PI * this.rootDeterminant);
    for (const charge of this.charges) {
      const [dx, dy] = [x - charge.x, y - charge.y];
      const share = (unit * charge.amount) / rhoSquare(this.sigma, dx, dy);
      jx += share * dx;
      jy += share * dy;
    }
    return [jx, jy];
  }

  /** Current from left to right through the straight line from a to b, A for 1 A: by the angles under which the charges see it. */
  through(a: Point, b: Point): number {
    const [rx, ry] = [Math.sqrt(this.sigma[0]), Math.sqrt(this.sigma[1])];
    let sum = 0;
    for (const { x, y, amount } of this.charges) {
      sum += amount * angleBetween((a.x - x) / rx, (a.y - y) / ry, (b.x - x) / rx, (b.y - y) / ry);
    }
    return sum / (2 * Math.PI);
  }
}

/** Angle at (0, 0) from (ax, ay) to (bx, by), anticlockwise positive, at most half a turn. */
function angleBetween(ax: number, ay: number, bx: number, by: number): number {
  return atan2(ax * by - ay * bx, ax * bx + ay * by);
}

function rhoSquare([sx, sy]: Sigma, dx: number, dy: number): number {
  return (dx * dx) / sx + (dy * dy) / sy;
}

/**
 * The charge with an image in every mirror, and for two mirrors at right angles in isotropic coordinates, as at a corner of the paper,
 * the image of the image. Further images lie farther away. Null for circles on paper with grain.
 */
export function withImages(sigma: Sigma, charge: Charge, mirrors: readonly Mirror[]): Charge[] | null {
  const charges = [charge];
  for (let i = 0; i < mirrors.length; i++) {
    const mirror = mirrors[i];
    if (mirror === undefined) continue;
    const images = imagesIn(sigma, charge, mirror);
    if (images === null) return null;
    charges.push(...images);
    for (const other of mirrors.slice(0, i)) {
      if (!perpendicular(sigma, mirror, other)) continue;
      for (const image of images) charges.push(...(imagesIn(sigma, image, other) ?? []));
    }
  }
  return charges;
}

/** Two straight mirrors at right angles in isotropic coordinates. */
export function perpendicular([sx, sy]: Sigma, a: Mirror, b: Mirror): boolean {
  if (a.along === null || b.along === null) return false;
  const [ax, ay] = a.along;
  const [bx, by] = b.along;
  const product = (ax * bx) / sx + (ay * by) / sy;
  const size = Math.sqrt(((ax * ax) / sx + (ay * ay) / sy) * ((bx * bx) / sx + (by * by) / sy));
  return Math.abs(product) < 1e-9 * size;
}

/** Square of the distance from a circle's centre, in its radii, that counts as none. */
const CENTRE = 1e-12;

/**
 * In a straight line: the reflection d' = -d + 2 e (eᵀσ⁻¹d)/(eᵀσ⁻¹e). In a circle of radius R: the inverse point, R²/r from the
 * centre, which for the centre itself is out of the world; seen from outside an insulating one, an equal opposite charge at the centre keeps the flux out of it.
 */
function imagesIn(sigma: Sigma, charge: Charge, mirror: Mirror): Charge[] | null {
  const [sx, sy] = sigma;
  const amount = mirror.metal ? -charge.amount : charge.amount;
  const [dx, dy] = [charge.x - mirror.x, charge.y - mirror.y];
  if (mirror.along !== null) {
    const [ex, ey] = mirror.along;
    const product = (ex * dx) / sx + (ey * dy) / sy;
    const scale = (2 * product) / ((ex * ex) / sx + (ey * ey) / sy);
    return [{ x: mirror.x - dx + scale * ex, y: mirror.y - dy + scale * ey, amount }];
  }
  const square = dx * dx + dy * dy;
  if (Math.abs(sx - sy) > 1e-12 * sx) return null;
  if (square < CENTRE * mirror.radius * mirror.radius) return [];
  const scale = (mirror.radius * mirror.radius) / square;
  const inverse = { x: mirror.x + scale * dx, y: mirror.y + scale * dy, amount };
  const outside = square > mirror.radius * mirror.radius;
  return outside && !mirror.metal ? [inverse, { x: mirror.x, y: mirror.y, amount: -amount }] : [inverse];
}
