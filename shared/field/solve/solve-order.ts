/** Both sides of the bound at one order on one mesh. */
import type { FieldRest } from '../field.ts';
import { CHORD_ALLOWANCE } from '../mesh/fan-radius.ts';
import type { Discretisation, MeshFrame } from './discretisation.ts';
import { type Dual, solveDual } from './dual.ts';
import type { FanStore } from './fan.ts';
import type { Workspace } from './multifrontal.ts';
import { type Primal, solvePrimal } from './primal.ts';
import type { Stages } from './stages.ts';

export interface Bounded {
  readonly primal: Primal;
  readonly dual: Dual | null;
  /** Conductance matrices, S, widened by an allowance; without the stream function the lower one is zero. */
  readonly upper_S: Float64Array;
  readonly lower_S: Float64Array;
  /** (upper - lower)/upper of the largest conductance; Infinity without the stream function. */
  readonly gap: number;
}

export interface Tools {
  readonly fans: FanStore;
  readonly workspace: Workspace;
}

/**
 * Relative allowance for rounding by which both bounds are widened. Factorisations of some 10⁴ unknowns keep conductances to a few
 * parts in 10¹³, rounded fan shapes to one part in 10¹².
 */
const ROUNDING = 1e-11;

/** Relative allowance of a discretisation: for rounding, and for corners whose fan takes the first piece of an arc as straight. */
export function allowanceOf({ topology }: MeshFrame): number {
  return topology.fansOnArcs ? ROUNDING + CHORD_ALLOWANCE : ROUNDING;
}

/** Null on a numerical breakdown. Rests between the potential and the stream function. */
export function* solvingOrder(
  base: Discretisation,
  conductors: number,
  dual: boolean,
  tools: Tools,
): Stages<Bounded | null, FieldRest> {
  const primal = solvePrimal(base, conductors, tools);
  if (primal === null) return null;
  const allowance = allowanceOf(base);
  const upper_S = primal.conductance.map((value) => value * (1 + allowance));
  if (!dual) return { primal, dual: null, upper_S, lower_S: new Float64Array(upper_S.length), gap: Infinity };
  yield { rough: null, unknowns: primal.unknowns };
  const stream = solveDual(base, conductors, tools);
  if (stream === null) return null;
  const lower_S = stream.conductance.map((value) => value * (1 - allowance));
  return { primal, dual: stream, upper_S, lower_S, gap: gapOf(upper_S, lower_S, conductors) };
}

/**
 * The difference of the two matrices is positive semidefinite, so its largest entry lies on the diagonal. Should rounding ever exceed
 * its allowance and bring lower above upper, the size of the crossing is told, not hidden.
 */
function gapOf(upper: Float64Array, lower: Float64Array, n: number): number {
  let largest = 0;
  let width = 0;
  for (let i = 0; i < n; i++) {
    const own = upper[i * n + i] ?? 0;
    largest = Math.max(largest, own);
    width = Math.max(width, Math.abs(own - (lower[i * n + i] ?? 0)));
  }
  return largest === 0 ? 0 : width / largest;
}
