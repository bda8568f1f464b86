/**
 * Resistor networks around the paper. The paper is an N-terminal network with the conductance matrix G (current into the paper at i
 * for 1 V at j, rows adding to zero); its terminals are the conductors, each tied to a node of the circuit. Nodes are joined by
 * resistors, and some are held at fixed potentials.
 */
import { factorise, multiply, solveWith } from './linear.ts';

export interface Resistor {
  readonly a: number;
  readonly b: number;
  readonly ohm: number;
}

export interface Network {
  readonly nodes: number;
  /** Node of each conductor. */
  readonly nodeOf: readonly number[];
  readonly resistors: readonly Resistor[];
  /** Fixed potential of a node, V; null where it is free. */
  readonly fixed_V: readonly (number | null)[];
}

/** What drives a network besides its fixed nodes. */
export interface Drive {
  /** Factor on the fixed potentials: 1 as they are, 0 all grounded. */
  readonly sources: 0 | 1;
  /** An ideal cell between each conductor's node and the paper, V. */
  readonly series_V?: Float64Array;
  /** Current put into each node from outside, A. */
  readonly into_A?: Float64Array;
}

export interface NetworkState {
  readonly node_V: Float64Array;
  /** Potential of the paper under each conductor, V. */
  readonly conductor_V: Float64Array;
  /** Current into the paper at each conductor, A. */
  readonly conductor_A: Float64Array;
}

export interface SolvableNetwork {
  readonly network: Network;
  readonly conductance_S: Float64Array;
  /** Nodes that no fixed node reaches over resistors or paper: their potential means nothing and counts as 0. */
  readonly adrift: readonly boolean[];
  solve(drive: Drive): NetworkState;
  /** Current that flows out of a node into resistors and paper, A. */
  outOf(node: number, state: NetworkState): number;
}

/**
 * Kirchhoff's current law at every free node: with paper potentials p = A v + s (A ties conductors to nodes, s the series cells)
 * and resistors L, Aᵀ G (A v + s) + L v = i.
 */
export function solvable(network: Network, conductance_S: Float64Array): SolvableNetwork {
  const { nodes, nodeOf, resistors } = network;
  const adrift = unreached(network, conductance_S);
  const admittance = nodeAdmittance(network, conductance_S);
  const free = Array.from({ length: nodes }, (_, n) => n).filter((n) => isFree(network, adrift, n));
  const reduced = new Float64Array(free.length * free.length);
  for (const [i, n] of free.entries()) {
    for (const [j, m] of free.entries()) reduced[i * free.length + j] = admittance[n * nodes + m] ?? 0;
  }
  const factors = factorise(reduced, free.length);
  const conductors = nodeOf.length;

  const solve = ({ sources, series_V, into_A }: Drive): NetworkState => {
    const node_V = Float64Array.from({ length: nodes }, (_, n) => sources * (network.fixed_V[n] ?? 0));
    const series = series_V ?? new Float64Array(conductors);
    const drawn = multiply(conductance_S, series);
    const held = multiply(admittance, node_V);
    const right = new Float64Array(nodes);
    for (let n = 0; n < nodes; n++) right[n] = (into_A?.[n] ?? 0) - (held[n] ?? 0);
    for (const [k, n] of nodeOf.entries()) right[n] = (right[n] ?? 0) - (drawn[k] ?? 0);
    const found = solveWith(
      factors,
      Float64Array.from(free, (n) => right[n] ?? 0),
    );
    for (const [i, n] of free.entries()) node_V[n] = found[i] ?? 0;
    const conductor_V = Float64Array.from(nodeOf, (n, k) => (node_V[n] ?? 0) + (series[k] ?? 0));
    return { node_V, conductor_V, conductor_A: multiply(conductance_S, conductor_V) };
  };

  const outOf = (node: number, { node_V, conductor_A }: NetworkState): number => {
    let sum = 0;
    for (const [k, n] of nodeOf.entries()) if (n === node) sum += conductor_A[k] ?? 0;
    for (const { a, b, ohm } of resistors) {
      const across = (node_V[a] ?? 0) - (node_V[b] ?? 0);
      if (a === node) sum += across / ohm;
      if (b === node) sum -= across / ohm;
    }
    return sum;
  };

  return { network, conductance_S, adrift, solve, outOf };
}

const isFree = ({ fixed_V }: Network, adrift: readonly boolean[], n: number): boolean =>
  (fixed_V[n] ?? null) === null && adrift[n] !== true;

/** Aᵀ G A + L, row-major. */
function nodeAdmittance({ nodes, nodeOf, resistors }: Network, conductance_S: Float64Array): Float64Array {
  const y = new Float64Array(nodes * nodes);
  const add = (n: number, m: number, value: number): void => {
    y[n * nodes + m] = (y[n * nodes + m] ?? 0) + value;
  };
  const conductors = nodeOf.length;
  for (const [k, n] of nodeOf.entries()) {
    for (const [l, m] of nodeOf.entries()) add(n, m, conductance_S[k * conductors + l] ?? 0);
  }
  for (const { a, b, ohm } of resistors) {
    add(a, a, 1 / ohm);
    add(b, b, 1 / ohm);
    add(a, b, -1 / ohm);
    add(b, a, -1 / ohm);
  }
  return y;
}

/** Couplings below this part of the smaller self-conductance are rounding, not paper. */
const noPaper = 1e-12;

function unreached({ nodes, nodeOf, resistors, fixed_V }: Network, g: Float64Array): readonly boolean[] {
  const conductors = nodeOf.length;
  const neighbours: number[][] = Array.from({ length: nodes }, () => []);
  const join = (n: number, m: number): void => {
    neighbours[n]?.push(m);
    neighbours[m]?.push(n);
  };
  for (const { a, b } of resistors) join(a, b);
  for (const [k, n] of nodeOf.entries()) {
    for (const [l, m] of nodeOf.entries()) {
      const self = Math.min(Math.abs(g[k * conductors + k] ?? 0), Math.abs(g[l * conductors + l] ?? 0));
      if (k < l && Math.abs(g[k * conductors + l] ?? 0) > noPaper * self) join(n, m);
    }
  }
  const reached = fixed_V.map((value) => value !== null);
  const open = reached.flatMap((is, n) => (is ? [n] : []));
  for (let n = open.pop(); n !== undefined; n = open.pop()) {
    for (const m of neighbours[n] ?? []) {
      if (reached[m] === true) continue;
      reached[m] = true;
      open.push(m);
    }
  }
  return reached.map((is) => !is);
}
