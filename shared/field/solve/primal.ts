/**
 * The potential: div(σ grad V) = 0, V constant on each conductor, no current through insulating edges. Its energy Σ G_ij V_i V_j
 * lies above that of the true potential (Dirichlet's principle), so the conductances found here bound the true ones from above.
 */
// Indices are bounded by construction throughout, hence `a[i]!`.
import { INSULATING } from '../problem.ts';
import { type Assembly, assemble, type Conditions } from './assemble.ts';
import type { PrimalSystem } from './discrete.ts';
import type { Discretisation } from './discretisation.ts';
import { triangleMatrix } from './element.ts';
import type { FanStore } from './fan.ts';
import { backward, type Factor, factorBytes, factorise, forward, type Workspace } from './multifrontal.ts';
import { scalarOf } from './solution.ts';
import { nextEdge, type Topology } from './topology.ts';
import { UnionFind } from './union-find.ts';

export interface Primal {
  readonly system: PrimalSystem;
  /** Conductance matrix, S, row-major, conductors × conductors. */
  readonly conductance: Float64Array;
  readonly unknowns: number;
  readonly untouched: readonly number[];
  /** About what it keeps in memory. */
  readonly bytes: number;
}

/** All entities of a conductor tied together, and one of them for each conductor, or -1. */
interface Contacts {
  readonly ties: UnionFind;
  readonly constant: Uint8Array;
  readonly entityOf: Int32Array;
}

/** Null if the matrix is not positive definite or a fan is degenerate. */
export function solvePrimal(
  base: Discretisation,
  conductors: number,
  tools: { readonly fans: FanStore; readonly workspace: Workspace },
): Primal | null {
  const { ties, constant, entityOf } = contactsOf(base.topology, conductors);
  const conditions: Conditions = {
    ties,
    constant,
    cuts: 0,
    lifts: new Map(),
    retained: Array.from(entityOf).filter((entity) => entity >= 0),
    held: (tag) => tag !== INSULATING,
  };
  const assembly = assemble(base, conditions, tools.fans);
  if (assembly === null) return null;
  const factor = factorise(assembly.plan, assembly.add, tools.workspace);
  if (factor === null) return null;
  const unknownOf = entityOf.map((entity) => (entity < 0 ? -1 : assembly.unknownOf(entity)));
  return {
    system: new SolvedPrimal({ base, assembly, factor, unknownOf }),
    conductance: conductanceOf(factor, unknownOf, base.sigmaMean),
    unknowns: assembly.plan.unknowns,
    untouched: Array.from(unknownOf.keys()).filter((k) => unknownOf[k]! < 0),
    bytes: factorBytes(factor),
  };
}

/** All vertices and edges on a conductor are tied to one of them. */
function contactsOf(topology: Topology, conductors: number): Contacts {
  const ties = new UnionFind(topology.entities);
  const constant = new Uint8Array(topology.entities);
  const entityOf = new Int32Array(conductors).fill(-1);
  const touch = (conductor: number, entity: number): void => {
    constant[entity] = 1;
    if (entityOf[conductor]! < 0) entityOf[conductor] = entity;
    else ties.tie(entityOf[conductor]!, entity);
  };
  for (const e of topology.boundary) {
    const tag = topology.tag(e);
    if (tag === INSULATING) continue;
    for (const entity of [topology.start[e]!, topology.start[nextEdge(e)]!, topology.edge[e]!])
      touch(tag, entity);
  }
  topology.mesh.fans.forEach((fan, f) => {
    const rim = topology.rimVertices[f]!;
    if (fan.tag0 !== INSULATING) touch(fan.tag0, rim[0]!);
    if (fan.tag1 !== INSULATING) touch(fan.tag1, rim[rim.length - 1]!);
  });
  return { ties, constant, entityOf };
}

/**
 * G from the Schur complement on the conductors' unknowns. The diagonal is set from the rest of the row: equal potentials drive no
 * current.
 */
function conductanceOf(factor: Factor, unknownOf: Int32Array, sigmaMean: number): Float64Array {
  const { root, plan } = factor;
  const n = unknownOf.length;
  const conductance = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      if (i === j || unknownOf[i]! < 0 || unknownOf[j]! < 0) continue;
      const row = unknownOf[i]! - (plan.unknowns - plan.retained);
      const column = unknownOf[j]! - (plan.unknowns - plan.retained);
      const value = sigmaMean * root[row * plan.retained + column]!;
      conductance[i * n + j] = value;
      conductance[i * n + i]! -= value;
    }
  }
  return conductance;
}

interface Parts {
  readonly base: Discretisation;
  readonly assembly: Assembly;
  readonly factor: Factor;
  /** Unknown of each conductor, or -1. */
  readonly unknownOf: Int32Array;
}

class SolvedPrimal implements PrimalSystem {
  readonly space: PrimalSystem['space'];
  readonly conductors: number;
  readonly sigma: PrimalSystem['sigma'];
  private readonly parts: Parts;

  constructor(parts: Parts) {
    const { space, sigma, sigmaMean } = parts.base;
    this.parts = parts;
    this.space = space;
    this.conductors = parts.unknownOf.length;
    this.sigma = [sigma[0] * sigmaMean, 0, sigma[1] * sigmaMean];
  }

  newLoad(): Float64Array {
    return new Float64Array(this.parts.assembly.plan.unknowns);
  }

  addToTriangle(load: Float64Array, t: number, values: Float64Array): void {
    const { nodes } = this.parts.assembly;
    for (let i = 0; i < values.length; i++) {
      const unknown = nodes[t * values.length + i]!;
      if (unknown >= 0) load[unknown]! += values[i]!;
    }
  }

  stiffness(t: number): Float64Array {
    const { stiffness, reference, sigmaMean } = this.parts.base;
    const matrix = triangleMatrix(stiffness, reference, t).slice();
    for (let i = 0; i < matrix.length; i++) matrix[i]! *= sigmaMean;
    return matrix;
  }

  /** With all conductors held at 0 V, what is left of the load on their unknowns is what flows into them. */
  solveGrounded(load: Float64Array, t: number): ReturnType<PrimalSystem['solveGrounded']> {
    const { factor, unknownOf, base, assembly } = this.parts;
    const x = load.slice();
    forward(factor, x);
    const into_A = Float64Array.from(unknownOf, (unknown) => (unknown < 0 ? 0 : x[unknown]!));
    for (let i = 0; i < x.length; i++) x[i]! /= base.sigmaMean;
    x.fill(0, x.length - factor.plan.retained);
    const { count } = base.reference;
    const nodes = assembly.nodes.subarray(t * count, (t + 1) * count);
    backward(factor, x, nodes);
    return { nodal: Float64Array.from(nodes, (unknown) => (unknown < 0 ? NaN : x[unknown]!)), into_A };
  }

  potential(conductors_V: Float64Array): ReturnType<PrimalSystem['potential']> {
    const { factor, unknownOf } = this.parts;
    const x = new Float64Array(factor.plan.unknowns);
    unknownOf.forEach((unknown, k) => {
      if (unknown >= 0) x[unknown] = conductors_V[k]!;
    });
    backward(factor, x);
    return this.scalar(x);
  }

  private scalar(unknowns: Float64Array): ReturnType<PrimalSystem['potential']> {
    return scalarOf({ space: this.space, assembly: this.parts.assembly, unknowns, elsewhere: Number.NaN });
  }
}
