/** The engine's answer. Bounds hold for the geometry as represented, widened by one part in 10¹¹ for rounding, and by one in 10⁹ where arcs end in a corner. */
import type { Domain } from './problem.ts';
import type { PrimalSystem, Scalar } from './solve/discrete.ts';

export interface SolveOptions {
  /** Relative width of the conductance bounds to reach: (upper - lower) / upper of the largest conductance. */
  readonly gap: number;
  /** Work limit: no refinement beyond this many unknowns. */
  readonly maxUnknowns: number;
}

/** Why a problem has no solution. Each names conductors by number. */
export type FieldTrouble =
  | {
      readonly kind: 'short';
      readonly a: number;
      readonly b: number;
      readonly gap_mm: number;
      readonly at: { x: number; y: number };
    }
  | { readonly kind: 'no-metal'; readonly conductor: number }
  | { readonly kind: 'no-paper' }
  | { readonly kind: 'too-large'; readonly unknowns: number }
  | { readonly kind: 'numerical'; readonly detail: string };

export interface Field {
  readonly domain: Domain;
  /** Conductance matrices, S, row-major: current into the paper at i for 1 V at j. Energies: upper from V, lower from the stream function. */
  readonly upper_S: Float64Array;
  readonly lower_S: Float64Array;
  readonly order: number;
  readonly unknowns: number;
  /** Reached relative width; Infinity where only the upper side was solved. */
  readonly gap: number;
  /** Conductors that no bare paper touches. */
  readonly untouched: readonly number[];
  /** About what it keeps in memory. */
  readonly bytes: number;
  readonly primal: PrimalSystem;
  /** The stream function for given conductor potentials, A; null where it does not exist. */
  stream(conductors_V: Float64Array): Scalar | null;
}

export type FieldOutcome =
  | { readonly ok: true; readonly field: Field }
  | { readonly ok: false; readonly trouble: FieldTrouble };

/** A solve between two of its stages. */
export interface FieldRest {
  /** The best field so far, where a better one is about to be begun; null elsewhere. */
  readonly rough: Field | null;
  /** How many unknowns what comes next has, or slightly more. */
  readonly unknowns: number;
}
