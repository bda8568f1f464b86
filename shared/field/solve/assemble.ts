/**
 * One problem on a discretised mesh: its unknowns, numbered in order of elimination, and the elements' stiffness on them. Potential
 * and stream function differ only in the conditions.
 */
// Indices are bounded by construction throughout, hence `a[i]!`.
import type { Discretisation } from './discretisation.ts';
import { triangleMatrix } from './element.ts';
import { type FanElement, type FanStore, fanElement, fanShape } from './fan.ts';
import { type FrontPlan, planFronts, type UnknownGroups } from './front-plan.ts';
import type { Front } from './multifrontal.ts';
import { nextEdge, type Topology } from './topology.ts';
import type { UnionFind } from './union-find.ts';

export interface Conditions {
  /** Entities (vertices and edges) on which the unknown is one constant are tied, and marked. */
  readonly ties: UnionFind;
  readonly constant: Uint8Array;
  /** Entities whose unknowns stay to the root; cut unknowns always do. */
  readonly retained: readonly number[];
  /** Number of cut unknowns, and the jumps that they make in the elements along each cut. */
  readonly cuts: number;
  readonly lifts: ReadonlyMap<number, readonly Lift[]>;
  /** Whether the unknown is constant along a boundary of this tag. */
  held(tag: number): boolean;
}

/** Values at the element's nodes that one unit of a cut unknown adds. */
export interface Lift {
  readonly cut: number;
  readonly values: Float64Array;
}

export interface Assembly {
  readonly plan: FrontPlan;
  /** Unknown at each node of triangle t, from t × count; -1 on paper that no conductor touches. */
  readonly nodes: Int32Array;
  /** Unknown at each rim node of a fan. */
  readonly rimNodes: readonly Int32Array[];
  readonly fans: readonly FanElement[];
  readonly lifts: ReadonlyMap<number, readonly Lift[]>;
  /** Unknown of an entity's group, -1 if no element holds it. */
  unknownOf(entity: number): number;
  unknownOfCut(cut: number): number;
  add(e: number, front: Front): void;
}

/** Null if a fan's shape is degenerate. */
export function assemble(base: Discretisation, conditions: Conditions, store: FanStore): Assembly | null {
  const fans = fanElements(base, conditions, store);
  if (fans === null) return null;
  const { entities, triangles } = base.topology;
  const plan = planFronts(unknownGroups(base, conditions), base.dissection);
  const root = (entity: number): number => conditions.ties.find(entity);
  const tables = new NodeTables(base, conditions, plan);
  const unknownOfCut = (cut: number): number => plan.first[entities + triangles + cut]!;
  const parts: Parts = { base, lifts: conditions.lifts, fans, ...tables.build(), unknownOfCut };
  return {
    plan,
    nodes: parts.nodes,
    rimNodes: parts.rimNodes,
    fans,
    lifts: conditions.lifts,
    unknownOfCut,
    unknownOf: (entity) => plan.first[root(entity)]!,
    add: (e, front) => addElement(parts, e, front),
  };
}

function fanElements(
  { topology, reference, space, sigma }: Discretisation,
  conditions: Conditions,
  store: FanStore,
): FanElement[] | null {
  const fans: FanElement[] = [];
  for (let f = 0; f < topology.mesh.fans.length; f++) {
    const fan = topology.mesh.fans[f]!;
    // Stretched by 1/√σ along each axis, the fan conducts alike in all directions.
    const rim = space.rims[f]!.map((value, i) => value / Math.sqrt(sigma[i % 2]!));
    const held = { held0: conditions.held(fan.tag0), held1: conditions.held(fan.tag1) };
    const element = fanElement(fanShape(reference.order, rim, held), store);
    if (element === null) return null;
    fans.push(element);
  }
  return fans;
}

/** Groups: one for each untied entity or tied set (named by its first entity), then one for each triangle's inside, then the cuts. */
function unknownGroups(base: Discretisation, conditions: Conditions): UnknownGroups {
  const { topology, reference } = base;
  const { entities, triangles, vertices } = topology;
  const order = reference.order;
  const size = new Int32Array(entities + triangles + conditions.cuts).fill(1);
  for (let entity = vertices; entity < entities; entity++) {
    if (conditions.constant[entity] === 0) size[entity] = order - 1;
  }
  size.fill(((order - 1) * (order - 2)) / 2, entities, entities + triangles);
  const retained = new Uint8Array(size.length);
  for (const entity of conditions.retained) retained[conditions.ties.find(entity)] = 1;
  retained.fill(1, entities + triangles);
  const list: number[] = [];
  const start = new Int32Array(topology.elements + 1);
  for (let e = 0; e < topology.elements; e++) {
    const groups = entitiesOf(topology, e).map((entity) => conditions.ties.find(entity));
    if (e < triangles) groups.push(entities + e);
    for (const lift of conditions.lifts.get(e) ?? []) groups.push(entities + triangles + lift.cut);
    // At orders 1 and 2 edges or insides have no unknown.
    for (const group of groups) if (size[group]! > 0) list.push(group);
    start[e + 1] = list.length;
  }
  return { size, retained, jumps: conditions.cuts, start, list: Int32Array.from(list) };
}

function entitiesOf(topology: Topology, e: number): number[] {
  const { start, edge, triangles, mesh, rimVertices } = topology;
  if (e < triangles) {
    const h = 3 * e;
    return [start[h]!, start[h + 1]!, start[h + 2]!, edge[h]!, edge[h + 1]!, edge[h + 2]!];
  }
  const fan = e - triangles;
  return [...rimVertices[fan]!, ...mesh.fans[fan]!.rim.map((h) => edge[h]!)];
}

/** Fills the tables from nodes to unknowns. */
class NodeTables {
  private readonly base: Discretisation;
  private readonly conditions: Conditions;
  private readonly plan: FrontPlan;

  constructor(base: Discretisation, conditions: Conditions, plan: FrontPlan) {
    this.base = base;
    this.conditions = conditions;
    this.plan = plan;
  }

  build(): { nodes: Int32Array; rimNodes: Int32Array[] } {
    const { topology, reference, active } = this.base;
    const { triangles, entities, mesh } = topology;
    const { count, order } = reference;
    const nodes = new Int32Array(triangles * count).fill(-1);
    for (let k = 0; k < active.length && active[k]! < triangles; k++) {
      const t = active[k]!;
      for (let j = 0; j < 3; j++) {
        nodes[t * count + j] = this.vertex(topology.start[3 * t + j]!);
        this.edgeInto(3 * t + j, topology.forward[3 * t + j] === 1, nodes, t * count + 3 + j * (order - 1));
      }
      const inside = this.plan.first[entities + t]!;
      for (let i = 3 * order; i < count; i++) nodes[t * count + i] = inside + i - 3 * order;
    }
    return { nodes, rimNodes: mesh.fans.map((_, f) => this.rim(f)) };
  }

  private vertex(vertex: number): number {
    return this.plan.first[this.conditions.ties.find(vertex)]!;
  }

  /** The order - 1 inner nodes of an edge, in its own sense or against it. */
  private edgeInto(halfEdge: number, forward: boolean, into: Int32Array, at: number): void {
    const inner = this.base.reference.order - 1;
    const entity = this.base.topology.edge[halfEdge]!;
    const first = this.plan.first[this.conditions.ties.find(entity)]!;
    const constant = this.conditions.constant[entity] === 1;
    for (let i = 0; i < inner; i++) {
      into[at + i] = first < 0 || constant ? first : first + (forward ? i : inner - 1 - i);
    }
  }

  /** Rim nodes from ray 0 to ray 1, against the sense of the triangles outside. */
  private rim(fan: number): Int32Array {
    const { topology, reference } = this.base;
    const { rim } = topology.mesh.fans[fan]!;
    const nodes = new Int32Array(rim.length * reference.order + 1);
    rim.forEach((halfEdge, place) => {
      const at = place * reference.order;
      nodes[at] = this.vertex(topology.start[nextEdge(halfEdge)]!);
      this.edgeInto(halfEdge, topology.forward[halfEdge] === 0, nodes, at + 1);
      nodes[at + reference.order] = this.vertex(topology.start[halfEdge]!);
    });
    return nodes;
  }
}

interface Parts {
  readonly base: Discretisation;
  readonly nodes: Int32Array;
  readonly rimNodes: readonly Int32Array[];
  readonly fans: readonly FanElement[];
  readonly lifts: ReadonlyMap<number, readonly Lift[]>;
  readonly unknownOfCut: (cut: number) => number;
}

function addElement(parts: Parts, e: number, front: Front): void {
  const { base, nodes, rimNodes, fans } = parts;
  const { count } = base.reference;
  const lifts = parts.lifts.get(e);
  const isTriangle = e < base.topology.triangles;
  if (isTriangle && lifts === undefined && !base.stiffness.curved.has(e)) {
    addStraight(base, e, nodes, front);
    return;
  }
  const fan = e - base.topology.triangles;
  const matrix = isTriangle ? triangleMatrix(base.stiffness, base.reference, e) : fans[fan]!.stiffness;
  const unknowns = isTriangle ? nodes.subarray(e * count, (e + 1) * count) : rimNodes[fan]!;
  addMatrix(matrix, unknowns, front);
  if (lifts !== undefined) addLifts(matrix, unknowns, { lifts, unknownOfCut: parts.unknownOfCut }, front);
}

/** A straight triangle: three numbers times the three reference pieces, straight into the front. */
function addStraight(base: Discretisation, t: number, nodes: Int32Array, front: Front): void {
  const { count, rr, rs, ss } = base.reference;
  const wrr = base.stiffness.weights[3 * t]!;
  const wrs = base.stiffness.weights[3 * t + 1]!;
  const wss = base.stiffness.weights[3 * t + 2]!;
  const { rows } = front;
  for (let i = 0; i < count; i++) rows[i] = front.place[nodes[t * count + i]!]!;
  for (let i = 0, k = 0; i < count; i++, k += count) {
    for (let j = 0; j < i; j++) {
      addPair(front, rows[i]!, rows[j]!, wrr * rr[k + j]! + wrs * rs[k + j]! + wss * ss[k + j]!);
    }
    addSquare(front, rows[i]!, wrr * rr[k + i]! + wrs * rs[k + i]! + wss * ss[k + i]!);
  }
}

function addMatrix(matrix: Float64Array, unknowns: Int32Array, front: Front): void {
  const count = unknowns.length;
  for (let i = 0; i < count; i++) {
    const row = front.place[unknowns[i]!]!;
    for (let j = 0; j < i; j++) addPair(front, row, front.place[unknowns[j]!]!, matrix[i * count + j]!);
    addSquare(front, row, matrix[i * count + i]!);
  }
}

/** Cut unknowns: nodal values are u + Σ_a c_a l_a, so the energy gains 2 c_a l_aᵀ K u + Σ_ab c_a c_b l_aᵀ K l_b. */
function addLifts(
  matrix: Float64Array,
  unknowns: Int32Array,
  { lifts, unknownOfCut }: { lifts: readonly Lift[]; unknownOfCut: (cut: number) => number },
  front: Front,
): void {
  const count = unknowns.length;
  lifts.forEach((lift, a) => {
    const row = front.place[unknownOfCut(lift.cut)]!;
    const load = new Float64Array(count);
    for (let i = 0; i < count; i++) {
      for (let j = 0; j < count; j++) load[i]! += matrix[i * count + j]! * lift.values[j]!;
      addPair(front, row, front.place[unknowns[i]!]!, load[i]!);
    }
    for (let b = 0; b <= a; b++) {
      let energy = 0;
      for (let i = 0; i < count; i++) energy += lifts[b]!.values[i]! * load[i]!;
      if (b === a) addSquare(front, row, energy);
      else addPair(front, row, front.place[unknownOfCut(lifts[b]!.cut)]!, energy);
    }
  });
}

/** An entry and its mirror image. Where both nodes share one unknown, the two meet on the diagonal. */
function addPair({ numbers, at, size }: Front, row: number, column: number, value: number): void {
  if (row > column) numbers[at + row * size + column]! += value;
  else if (row < column) numbers[at + column * size + row]! += value;
  else numbers[at + row * size + row]! += 2 * value;
}

function addSquare({ numbers, at, size }: Front, row: number, value: number): void {
  numbers[at + row * size + row]! += value;
}
