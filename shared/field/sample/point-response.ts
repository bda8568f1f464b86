/**
 * How the paper answers at a point: the potential there for any potentials of the conductors, and the resistance that a meter's probe
 * tip sees. Both from right-hand sides on the factorised system, or where the tip has too close a neighbour from a mesh with the tip.
 */
// Indices are bounded by construction throughout, hence `a[i]!`.
import type { Field } from '../field.ts';
import type { PrimalSystem } from '../solve/discrete.ts';
import { solveDomain } from '../solve/solve-domain.ts';
import { meshedTip, type Tip, type TipResponse } from './meshed-tip.ts';
import { smoothResponse } from './smooth-response.ts';
import { isClearOfCorners, toolsOf } from './tip-patch.ts';

export interface PointResponse {
  /** Potential at the point, V, for 1 V on each conductor in turn and 0 V on the others; they sum to 1. */
  readonly weights: Float64Array;
  /** Rise, V, of an ideal disc tip that feeds 1 A into the paper, all conductors at 0 V; Ω. */
  readonly self_ohm: number;
  /** By the weights: more accurate than the potential sampled at the point; the difference of the two is an estimate of its error. */
  potentialOf(conductors_V: Float64Array): number;
}

/** Where the tip is meshed: the energy's error at order 5 is some 1e-6, and no bound is needed. */
const MESHED = { gap: 0, maxUnknowns: 60_000, order: 5, dual: false };

/**
 * The answer at a point (mm) to a tip of the given radius. Null off the bare paper, at a corner of the paper, and where the paper has
 * no conductor.
 */
export function pointResponse(
  field: Field,
  x: number,
  y: number,
  tipRadius_mm: number,
): PointResponse | null {
  if (toolsOf(field.primal).locate(x, y) === null) return null;
  const tip = { x, y, radius: tipRadius_mm };
  const smooth = smoothResponse(field.primal, tip) ?? besideFans(field, tip);
  // Not a number on paper without a conductor: nothing fixes its potential.
  if (smooth !== null && Number.isNaN(smooth.self_ohm)) return null;
  const response = smooth ?? meshedTip(field.domain, tip, (domain) => solveDomain(domain, MESHED));
  return response === null ? null : { ...response, potentialOf: (v) => weighted(response.weights, v) };
}

/** A tip in a fan, but clear of its vertex: the same on a mesh with small fans, solved once for all such places. */
function besideFans({ primal, domain }: Field, tip: Tip): TipResponse | null {
  if (!isClearOfCorners(primal.space.mesh, tip)) return null;
  let fine = withSmallFans.get(primal);
  if (fine?.radius !== tip.radius) {
    const outcome = solveDomain(domain, { ...MESHED, fan_mm: FAN_RADII * tip.radius });
    fine = { radius: tip.radius, primal: outcome.ok ? outcome.field.primal : null };
    withSmallFans.set(primal, fine);
  }
  return fine.primal === null ? null : smoothResponse(fine.primal, tip);
}

/** Radius of a small fan, in radii of the tip: well within the clearance of tips from corners. */
const FAN_RADII = 4;

const withSmallFans = new WeakMap<
  PrimalSystem,
  { readonly radius: number; readonly primal: PrimalSystem | null }
>();

function weighted(weights: Float64Array, conductors_V: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < weights.length; k++) sum += weights[k]! * conductors_V[k]!;
  return sum;
}
