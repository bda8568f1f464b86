/**
 * The stream function: J = (∂ψ/∂y, -∂ψ/∂x), so that ψ falls by I along any path that a current I crosses from right to left. ψ is
 * constant along insulating edges and free along metal. Every such ψ conserves current, and Thomson's principle
 *   Σ G_ij V_i V_j ≥ 2 Σ V_k I_k(ψ) - ∫ ∇ψ·(σ/det σ)∇ψ
 * makes the conductances found here lower bounds: with Q the stiffness and I_k(ψ) = b_k·ψ, G = Bᵀ Q⁻¹ B.
 */
// Indices are bounded by construction throughout, hence `a[i]!`.
import { INSULATING } from '../problem.ts';
import { type Assembly, assemble, type Conditions } from './assemble.ts';
import { type Cuts, cutsOf } from './cuts.ts';
import { partialCholesky, solveLower, solveUpper } from './dense.ts';
import type { Scalar } from './discrete.ts';
import type { Discretisation } from './discretisation.ts';
import type { FanStore } from './fan.ts';
import { backward, type Factor, factorBytes, factorise, type Workspace } from './multifrontal.ts';
import { scalarOf } from './solution.ts';
import { nextEdge, type Topology, triangleOf } from './topology.ts';
import { UnionFind } from './union-find.ts';

export interface Dual {
  /** Conductance matrix, S, row-major, conductors × conductors. */
  readonly conductance: Float64Array;
  /** The stream function for given conductor potentials, A. Zero where no current can flow. */
  stream(conductors_V: Float64Array): Scalar;
  /** About what it keeps in memory. */
  readonly bytes: number;
}

/** Null if the matrix is not positive definite or a fan is degenerate. */
export function solveDual(
  base: Discretisation,
  conductors: number,
  tools: { readonly fans: FanStore; readonly workspace: Workspace },
): Dual | null {
  const { topology, space } = base;
  const cuts = cutsOf(topology, space);
  const { ties, constant } = insulatedTies(topology);
  const currents = currentsOf(topology, cuts, ties, conductors);
  const pins = pinsOf(base, ties, currents);
  const conditions: Conditions = {
    ties,
    constant,
    cuts: cuts.count,
    lifts: cuts.lifts,
    retained: [...new Set([...currents.entities, ...pins])],
    held: (tag) => tag === INSULATING,
  };
  const assembly = assemble(base, conditions, tools.fans);
  if (assembly === null) return null;
  const factor = factorise(assembly.plan, assembly.add, tools.workspace);
  if (factor === null) return null;
  const free = freeUnknowns(assembly, currents, pins, cuts.count);
  const root = condensedRoot(factor, free);
  if (!partialCholesky(root, 0, free.length, free.length)) return null;
  const loads = currents.rows.map((row) => loadOf(row, assembly, free));
  const solved: SolvedRoot = { base, assembly, factor, free, root, loads };
  return {
    conductance: conductanceOf(solved),
    stream: (conductors_V) => streamOf(solved, conductors_V),
    bytes: factorBytes(factor),
  };
}

/** ψ is one constant along every uninterrupted insulating stretch, corners with fans included. */
function insulatedTies(topology: Topology): { ties: UnionFind; constant: Uint8Array } {
  const ties = new UnionFind(topology.entities);
  const constant = new Uint8Array(topology.entities);
  for (const e of topology.boundary) {
    if (topology.tag(e) !== INSULATING) continue;
    constant[topology.edge[e]!] = 1;
    ties.tie(topology.start[e]!, topology.start[nextEdge(e)]!);
    ties.tie(topology.start[e]!, topology.edge[e]!);
  }
  topology.mesh.fans.forEach((fan, f) => {
    const rim = topology.rimVertices[f]!;
    if (fan.tag0 === INSULATING && fan.tag1 === INSULATING) ties.tie(rim[0]!, rim[rim.length - 1]!);
  });
  return { ties, constant };
}

/** Currents into the paper as linear functions of ψ: coefficients by tied entity and by cut. */
interface Currents {
  readonly rows: readonly CurrentRow[];
  /** All tied entities on which some current depends. */
  readonly entities: ReadonlySet<number>;
}

interface CurrentRow {
  readonly byEntity: ReadonlyMap<number, number>;
  readonly byCut: ReadonlyMap<number, number>;
}

/** I_k = Σ (ψ at start - ψ at end) over the edges of conductor k, the paper being on their left. Coefficients are whole numbers. */
function currentsOf(topology: Topology, cuts: Cuts, ties: UnionFind, conductors: number): Currents {
  const byEntity = Array.from({ length: conductors }, () => new Map<number, number>());
  const byCut = Array.from({ length: conductors }, () => new Map<number, number>());
  const between = (conductor: number, start: number, end: number): void => {
    accumulate(byEntity[conductor]!, ties.find(start), 1);
    accumulate(byEntity[conductor]!, ties.find(end), -1);
  };
  for (const e of topology.boundary) {
    const conductor = topology.tag(e);
    if (conductor === INSULATING) continue;
    between(conductor, topology.start[e]!, topology.start[nextEdge(e)]!);
    for (const { cut, values } of cuts.lifts.get(triangleOf(e)) ?? []) {
      accumulate(byCut[conductor]!, cut, Math.round(values[e % 3]! - values[(e + 1) % 3]!));
    }
  }
  // The boundary runs along ray 1 to a fan's vertex and away along ray 0.
  topology.mesh.fans.forEach((fan, f) => {
    const rim = topology.rimVertices[f]!;
    const conductor = fan.tag0 !== INSULATING ? fan.tag0 : fan.tag1;
    if (conductor !== INSULATING) between(conductor, rim[rim.length - 1]!, rim[0]!);
  });
  const rows = byEntity.map((row, k) => ({ byEntity: row, byCut: byCut[k]! }));
  return { rows, entities: new Set(byEntity.flatMap((row) => [...row.keys()])) };
}

function accumulate(row: Map<number, number>, key: number, amount: number): void {
  const sum = (row.get(key) ?? 0) + amount;
  if (sum === 0) row.delete(key);
  else row.set(key, sum);
}

/** ψ is fixed at one vertex of each piece of paper, if possible one that is retained anyway. */
function pinsOf({ topology, active }: Discretisation, ties: UnionFind, currents: Currents): Set<number> {
  const pinOfPiece = new Map<number, number>();
  for (const t of active) {
    if (t >= topology.triangles) break;
    for (let e = 3 * t; e < 3 * t + 3; e++) {
      const entity = ties.find(topology.start[e]!);
      const known = pinOfPiece.get(topology.piece[t]!);
      if (known === undefined || (!currents.entities.has(known) && currents.entities.has(entity))) {
        pinOfPiece.set(topology.piece[t]!, entity);
      }
    }
  }
  return new Set(pinOfPiece.values());
}

/** Retained unknowns without the pins, in order. */
function freeUnknowns(assembly: Assembly, currents: Currents, pins: Set<number>, cuts: number): Int32Array {
  const free: number[] = [];
  for (const entity of currents.entities) if (!pins.has(entity)) free.push(assembly.unknownOf(entity));
  for (let cut = 0; cut < cuts; cut++) free.push(assembly.unknownOfCut(cut));
  return Int32Array.from(free).sort();
}

function condensedRoot({ plan, root }: Factor, free: Int32Array): Float64Array {
  const n = free.length;
  const offset = plan.unknowns - plan.retained;
  const matrix = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      matrix[i * n + j] = root[(free[i]! - offset) * plan.retained + free[j]! - offset]!;
    }
  }
  return matrix;
}

function loadOf(row: CurrentRow, assembly: Assembly, free: Int32Array): Float64Array {
  const coefficients = new Map<number, number>();
  for (const [entity, value] of row.byEntity) coefficients.set(assembly.unknownOf(entity), value);
  for (const [cut, value] of row.byCut) coefficients.set(assembly.unknownOfCut(cut), value);
  return Float64Array.from(free, (unknown) => coefficients.get(unknown) ?? 0);
}

interface SolvedRoot {
  readonly base: Discretisation;
  readonly assembly: Assembly;
  readonly factor: Factor;
  /** Free retained unknowns, and the Cholesky factor of the stiffness on them. */
  readonly free: Int32Array;
  readonly root: Float64Array;
  /** Current of each conductor on the free unknowns. */
  readonly loads: readonly Float64Array[];
}

/** G_ij = (L⁻¹ b_i)·(L⁻¹ b_j); σ/det σ is the normalised conductivity over its mean, so Q⁻¹ carries the mean as a factor. */
function conductanceOf({ base, free, root, loads }: SolvedRoot): Float64Array {
  const n = loads.length;
  const halves = loads.map((load) => {
    const half = Float64Array.from(load);
    solveLower(root, free.length, half);
    return half;
  });
  const conductance = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < i; j++) {
      let product = 0;
      for (let k = 0; k < free.length; k++) product += halves[i]![k]! * halves[j]![k]!;
      const value = base.sigmaMean * product;
      conductance[i * n + j] = value;
      conductance[j * n + i] = value;
      conductance[i * n + i]! -= value;
      conductance[j * n + j]! -= value;
    }
  }
  return conductance;
}

function streamOf(
  { base, assembly, factor, free, root, loads }: SolvedRoot,
  conductors_V: Float64Array,
): Scalar {
  const values = new Float64Array(free.length);
  loads.forEach((load, k) => {
    for (let i = 0; i < values.length; i++) values[i]! += base.sigmaMean * conductors_V[k]! * load[i]!;
  });
  solveLower(root, free.length, values);
  solveUpper(root, free.length, values);
  const unknowns = new Float64Array(factor.plan.unknowns);
  for (let i = 0; i < values.length; i++) unknowns[free[i]!] = values[i]!;
  backward(factor, unknowns);
  return scalarOf({ space: base.space, assembly, unknowns, elsewhere: 0 });
}
