/**
 * Currents of the circuit with their bounds. The engine brackets the conductance matrix, G_lower ≤ G ≤ G_upper in the sense of
 * energies. Seen from ideal cells as ports, a network's admittance Y rises with G in the same sense, so that for sources s
 *
 *     |I_k − ½ (Y_upper s + Y_lower s)_k| ≤ ½ √(ΔY_kk · sᵀ ΔY s),   ΔY = Y_upper − Y_lower.
 *
 * Ports are the sources themselves and a cell of 0 V between each conductor and its node.
 */
import { bareNetwork, type Circuit } from './circuit.ts';
import { type NetworkState, type SolvableNetwork, solvable } from './network.ts';
import type { Setup } from './setup.ts';

export type Interval = readonly [number, number];

export interface Conductances {
  readonly upper_S: Float64Array;
  /** Null where only the upper side is known. */
  readonly lower_S: Float64Array | null;
}

/** The matrix to compute with: the middle of the bracket. */
export function middle({ upper_S, lower_S }: Conductances): Float64Array {
  return lower_S === null ? upper_S : upper_S.map((value, i) => (value + (lower_S[i] ?? value)) / 2);
}

export interface CircuitState {
  readonly solved: SolvableNetwork;
  readonly state: NetworkState;
  /** Drawn from the supply; null without one. */
  readonly supply_A: number | null;
  readonly supplyBounds_A: Interval | null;
  readonly conductorBounds_A: readonly (Interval | null)[];
  /** How far the potential of each conductor moves between the two sides, V. */
  readonly conductorSpread_V: Float64Array;
}

export function solveCircuit(circuit: Circuit, conductances: Conductances): CircuitState {
  const solved = solvable(circuit.network, middle(conductances));
  const state = solved.solve({ sources: 1 });
  const count = state.conductor_V.length;
  const base = { solved, state, supply_A: drawn(circuit, solved, state) };
  if (conductances.lower_S === null) {
    return {
      ...base,
      supplyBounds_A: null,
      conductorBounds_A: Array.from({ length: count }, () => null),
      conductorSpread_V: new Float64Array(count),
    };
  }
  const upper = sideOf(circuit, conductances.upper_S);
  const lower = sideOf(circuit, conductances.lower_S);
  const power = Math.max(0, upper.power_W - lower.power_W);
  // Sums of currents carry rounding of their largest part.
  const allowance = rounding * greatest(conductances.upper_S) * greatest(state.node_V);
  const bracket = (high: number, low: number, self: number): Interval => {
    const half = Math.sqrt(Math.max(0, self) * power) / 2 + allowance;
    return [(high + low) / 2 - half, (high + low) / 2 + half];
  };
  const at = (values: Float64Array, k: number): number => values[k] ?? 0;
  return {
    ...base,
    supplyBounds_A:
      upper.supply_A === null || lower.supply_A === null
        ? null
        : bracket(upper.supply_A, lower.supply_A, upper.supplySelf_S - lower.supplySelf_S),
    conductorBounds_A: Array.from({ length: count }, (_, k) =>
      bracket(
        at(upper.state.conductor_A, k),
        at(lower.state.conductor_A, k),
        at(upper.self_S, k) - at(lower.self_S, k),
      ),
    ),
    conductorSpread_V: upper.state.conductor_V.map((value, k) =>
      Math.abs(value - at(lower.state.conductor_V, k)),
    ),
  };
}

/** Relative to the largest entry; sums below it are zero. */
const rounding = 1e-13;

const greatest = (values: Float64Array): number =>
  values.reduce((most, value) => Math.max(most, Math.abs(value)), 0);

interface Side {
  readonly state: NetworkState;
  readonly supply_A: number | null;
  /** sᵀ Y s: what all sources deliver. */
  readonly power_W: number;
  /** Y_kk of each conductor's own port, and of the supply. */
  readonly self_S: Float64Array;
  readonly supplySelf_S: number;
}

function sideOf(circuit: Circuit, conductance_S: Float64Array): Side {
  const solved = solvable(circuit.network, conductance_S);
  const state = solved.solve({ sources: 1 });
  const { fixed_V } = circuit.network;
  let power_W = 0;
  for (const [n, value] of fixed_V.entries()) if (value !== null) power_W += value * solved.outOf(n, state);
  const self_S = new Float64Array(state.conductor_V.length);
  for (const k of self_S.keys()) {
    const series_V = new Float64Array(self_S.length);
    series_V[k] = 1;
    self_S[k] = solved.solve({ sources: 0, series_V }).conductor_A[k] ?? 0;
  }
  return {
    state,
    supply_A: drawn(circuit, solved, state),
    power_W,
    self_S,
    supplySelf_S: supplySelf(circuit, conductance_S),
  };
}

/** What leaves the supply, counted behind its internal resistance so that nothing cancels. */
function drawn(circuit: Circuit, solved: SolvableNetwork, state: NetworkState): number | null {
  if (circuit.supply === null) return null;
  const { plus, emf } = circuit.supply;
  if (plus === emf) return solved.outOf(emf, state);
  const through = circuit.network.resistors.find(({ a, b }) => a === emf && b === plus);
  const inside =
    through === undefined ? 0 : ((state.node_V[plus] ?? 0) - (state.node_V[emf] ?? 0)) / through.ohm;
  return solved.outOf(plus, state) - inside;
}

/** Current drawn for 1 V of the supply alone. */
function supplySelf(circuit: Circuit, conductance_S: Float64Array): number {
  if (circuit.supply === null) return 0;
  const { emf } = circuit.supply;
  const fixed_V = circuit.network.fixed_V.map((value, n) => (value === null ? null : n === emf ? 1 : 0));
  const alone = solvable({ ...circuit.network, fixed_V }, conductance_S);
  return alone.outOf(emf, alone.solve({ sources: 1 }));
}

export interface Resistance {
  readonly value_ohm: number;
  readonly bounds_ohm: Interval | null;
}

/** Between positive and negative metal, without clips and supply; null where it has no meaning. */
export function paperResistance(setup: Setup, conductances: Conductances): Resistance | null {
  const bare = bareNetwork(setup);
  if (bare === null) return null;
  const conductance = (matrix: Float64Array): number => {
    const solved = solvable(bare.network, matrix);
    return solved.outOf(bare.positive, solved.solve({ sources: 1 }));
  };
  const value = conductance(middle(conductances));
  if (!(value > rounding * greatest(conductances.upper_S))) return null;
  const { upper_S, lower_S } = conductances;
  return {
    value_ohm: 1 / value,
    bounds_ohm: lower_S === null ? null : [1 / conductance(upper_S), 1 / conductance(lower_S)],
  };
}
