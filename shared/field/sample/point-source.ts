/** Point currents in an unbounded sheet with grain, and their images in straight and round boundaries. */
import { log } from '../maths.ts';

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

export type Sigma = readonly [xx: number, xy: number, yy: number];

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
    const [xx, xy, yy] = sigma;
    this.sigma = sigma;
    this.charges = charges;
    this.rootDeterminant = Math.sqrt(xx * yy - xy * xy);
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

  /** Current density at (x, y), A/mm for 1 A, the first `skip` charges left out. */
  density(x: number, y: number, skip = 0): readonly [number, number] {
    let [jx, jy] = [0, 0];
    const unit = 1 / (2 * Math.PI * this.rootDeterminant);
    for (let i = skip; i < this.charges.length; i++) {
      const charge = this.charges[i];
      if (!charge) continue;
      const [dx, dy] = [x - charge.x, y - charge.y];
      const share = (unit * charge.amount) / rhoSquare(this.sigma, dx, dy);
      jx += share * dx;
      jy += share * dy;
    }
    return [jx, jy];
  }
}

function rhoSquare([xx, xy, yy]: Sigma, dx: number, dy: number): number {
  return (yy * dx * dx - 2 * xy * dx * dy + xx * dy * dy) / (xx * yy - xy * xy);
}

/** Mean semi-axis, in isotropic coordinates σ^-1/2 x, of a disc of radius 1. */
export function isotropicRadius([xx, xy, yy]: Sigma): number {
  const mean = (xx + yy) / 2;
  const spread = Math.sqrt(Math.max(0, mean * mean - (xx * yy - xy * xy)));
  return (1 / Math.sqrt(mean + spread) + 1 / Math.sqrt(mean - spread)) / 2;
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

function perpendicular([xx, xy, yy]: Sigma, a: Mirror, b: Mirror): boolean {
  if (a.along === null || b.along === null) return false;
  const [ax, ay] = a.along;
  const [bx, by] = b.along;
  const product = yy * ax * bx - xy * (ax * by + ay * bx) + xx * ay * by;
  const size = Math.sqrt(
    (yy * ax * ax - 2 * xy * ax * ay + xx * ay * ay) * (yy * bx * bx - 2 * xy * bx * by + xx * by * by),
  );
  return Math.abs(product) < 1e-9 * size;
}

/**
 * In a straight line: the reflection d' = -d + 2 e (eᵀσ⁻¹d)/(eᵀσ⁻¹e). In a circle of radius R: the inverse point, R²/r from the
 * centre; seen from outside an insulating one, an equal opposite charge at the centre keeps the flux out of it.
 */
function imagesIn(sigma: Sigma, charge: Charge, mirror: Mirror): Charge[] | null {
  const [xx, xy, yy] = sigma;
  const amount = mirror.metal ? -charge.amount : charge.amount;
  const [dx, dy] = [charge.x - mirror.x, charge.y - mirror.y];
  if (mirror.along !== null) {
    const [ex, ey] = mirror.along;
    const product = yy * ex * dx - xy * (ex * dy + ey * dx) + xx * ey * dy;
    const scale = (2 * product) / (yy * ex * ex - 2 * xy * ex * ey + xx * ey * ey);
    return [{ x: mirror.x - dx + scale * ex, y: mirror.y - dy + scale * ey, amount }];
  }
  const square = dx * dx + dy * dy;
  if (Math.abs(xx - yy) + Math.abs(xy) > 1e-12 * xx || square === 0) return null;
  const scale = (mirror.radius * mirror.radius) / square;
  const inverse = { x: mirror.x + scale * dx, y: mirror.y + scale * dy, amount };
  const outside = square > mirror.radius * mirror.radius;
  return outside && !mirror.metal ? [inverse, { x: mirror.x, y: mirror.y, amount: -amount }] : [inverse];
}
