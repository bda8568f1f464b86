/** From a domain to bounded conductances: meshes it, raises the order until the bounds are as close as asked, then refines the mesh. */
// Indices are bounded by construction throughout, hence `a[i]!`.
import type { Field, FieldOutcome, FieldRest, FieldTrouble, SolveOptions } from '../field.ts';
import { log } from '../maths.ts';
import type { Mesh } from '../mesh/mesh.ts';
import { meshDomain } from '../mesh/mesh-domain.ts';
import { type Domain, INSULATING } from '../problem.ts';
import {
  type Discretisation,
  discretise,
  frameOf,
  type MeshFrame,
  predictUnknowns,
} from './discretisation.ts';
import { type FanStore, fanStore } from './fan.ts';
import { Workspace } from './multifrontal.ts';
import { allowanceOf, type Bounded, solvingOrder, type Tools } from './solve-order.ts';
import { drained, type Stages } from './stages.ts';

export interface SolveSettings extends SolveOptions {
  /** Solves once, at this order from 1 to 12; else orders are tried in turn. */
  readonly order?: number;
  /** False leaves the stream function and with it the lower bounds aside, and solves once (order 4 unless given). */
  readonly dual?: boolean;
  /** Largest radius of a fan, mm; as large as there is room for if not given. */
  readonly fan_mm?: number;
  /** Store of fans to use instead of the common one. */
  readonly fans?: FanStore;
}

export function solveDomain(domain: Domain, settings: SolveSettings): FieldOutcome {
  return drained(solvingDomain(domain, settings));
}

/** The same in stages: mesh, then potential and stream function of each order. */
export function* solvingDomain(domain: Domain, settings: SolveSettings): Stages<FieldOutcome, FieldRest> {
  const short = meetingOf(domain);
  return short === null ? yield* new Search(domain, settings).run() : { ok: false, trouble: short };
}

/** Two conductors that meet in one point, if there are any: their conductance would be infinite. Edges meet only in their ends. */
function meetingOf({ loops }: Domain): FieldTrouble | null {
  const owners = new Map<string, number>();
  for (const { edges } of loops) {
    for (const [i, { tag }] of edges.entries()) {
      if (tag === INSULATING) continue;
      for (const { x, y } of [edges[i]!, edges[(i + 1) % edges.length]!]) {
        const known = owners.get(`${x} ${y}`);
        if (known !== undefined && known !== tag)
          return { kind: 'short', a: known, b: tag, gap_mm: 0, at: { x, y } };
        owners.set(`${x} ${y}`, tag);
      }
    }
  }
  return null;
}

/** The order to begin with, the lowest to fall back to where that is out of reach, and the highest. */
const FIRST_ORDER = 4;
const LOWEST_ORDER = 2;
const HIGHEST_ORDER = 10;
/** On a finer mesh low orders would only repeat what is known. */
const REFINED_ORDER = 8;
/** Decades that the gap gains with each order where fans resolve the singularities; rather less than what is usual. */
const DECADES_PER_ORDER = 1.3;
/** Meshes tried, each twice as fine as the last. */
const ROUNDS = 3;
/** 32 megabytes: the fans of a usual sheet at order 4 fit some fifty times over. */
const commonFans = fanStore(2 ** 22);

interface Best {
  readonly base: Discretisation;
  readonly bounded: Bounded;
}

class Search {
  private readonly domain: Domain;
  private readonly settings: SolveSettings;
  private readonly tools: Tools;
  private best: Best | null = null;
  /** Why nothing better came out; kept as the answer if nothing came out at all. */
  private trouble: FieldTrouble = { kind: 'no-paper' };

  constructor(domain: Domain, settings: SolveSettings) {
    this.domain = domain;
    this.settings = settings;
    this.tools = { fans: settings.fans ?? commonFans, workspace: new Workspace() };
  }

  *run(): Stages<FieldOutcome, FieldRest> {
    let size_mm: number | undefined;
    for (let round = 0; round < ROUNDS; round++) {
      const mesh = this.mesh(size_mm);
      const frame = this.frame(mesh);
      if (frame === null || (yield* this.climb(frame)) === 'done') break;
      size_mm = longestEdge(mesh) / 2;
    }
    if (this.best === null) return { ok: false, trouble: this.trouble };
    return { ok: true, field: fieldOf(this.domain, this.best) };
  }

  private mesh(size_mm: number | undefined): Mesh {
    const maxVertices = Math.max(1000, this.settings.maxUnknowns);
    const { fan_mm = Infinity } = this.settings;
    return meshDomain(this.domain, { maxVertices, fan_mm, ...(size_mm === undefined ? {} : { size_mm }) });
  }

  private frame(mesh: Mesh): MeshFrame | null {
    if (mesh.corners.length === 0) return null;
    const frame = frameOf(mesh);
    if (frame === null) this.trouble = { kind: 'no-metal', conductor: 0 };
    return frame;
  }

  /** Raises the order on one mesh as far as wish, limit and method go; 'finer' where only a finer mesh could do better. */
  private *climb(frame: MeshFrame): Stages<'done' | 'finer', FieldRest> {
    // No refinement brings the bounds closer than twice their allowance.
    const goal = Math.max(this.settings.gap, 4 * allowanceOf(frame));
    let order = this.firstOrder(frame);
    for (;;) {
      const unknowns = predictUnknowns(frame, order);
      if (unknowns > this.settings.maxUnknowns) {
        this.trouble = { kind: 'too-large', unknowns };
        return 'done';
      }
      yield { rough: this.best === null ? null : fieldOf(this.domain, this.best), unknowns };
      const gap = yield* this.attempt(frame, order);
      if (gap === null) return 'finer';
      if (this.settings.order !== undefined || this.settings.dual === false || gap <= goal) return 'done';
      if (order === HIGHEST_ORDER) return 'finer';
      const wanted = order + Math.max(1, Math.ceil(log(gap / goal) / log(10) / DECADES_PER_ORDER));
      const next = this.highestWithin(frame, Math.min(wanted, HIGHEST_ORDER));
      if (next <= order) return 'done';
      order = next;
    }
  }

  private firstOrder(frame: MeshFrame): number {
    if (this.settings.order !== undefined) return this.settings.order;
    if (this.best !== null) return REFINED_ORDER;
    return this.highestWithin(frame, FIRST_ORDER);
  }

  /** The highest order up to a wanted one that the work limit allows, 2 if none. */
  private highestWithin(frame: MeshFrame, wanted: number): number {
    let order = wanted;
    while (order > LOWEST_ORDER && predictUnknowns(frame, order) > this.settings.maxUnknowns) order--;
    return order;
  }

  /** One order: the gap it reaches, or null on a numerical breakdown. */
  private *attempt(frame: MeshFrame, order: number): Stages<number | null, FieldRest> {
    const base = discretise(frame, order, this.domain.sheet_ohm);
    const broken = base.stiffness.broken[0];
    if (broken !== undefined) {
      const corner = frame.topology.mesh.corners[3 * broken]!;
      const [x, y] = [frame.topology.mesh.x[corner]!, frame.topology.mesh.y[corner]!];
      this.trouble = { kind: 'numerical', detail: `a triangle near (${x}, ${y}) mm has no area` };
      return null;
    }
    const bounded = yield* solvingOrder(
      base,
      this.domain.conductors,
      this.settings.dual !== false,
      this.tools,
    );
    if (bounded === null) {
      this.trouble = { kind: 'numerical', detail: `the matrix of order ${order} is not positive definite` };
      return null;
    }
    if (this.best === null || bounded.gap < this.best.bounded.gap) this.best = { base, bounded };
    return bounded.gap;
  }
}

function longestEdge(mesh: Mesh): number {
  let longest = 0;
  for (let e = 0; e < mesh.corners.length; e++) {
    const a = mesh.corners[e]!;
    const b = mesh.corners[e % 3 === 2 ? e - 2 : e + 1]!;
    longest = Math.max(longest, (mesh.x[a]! - mesh.x[b]!) ** 2 + (mesh.y[a]! - mesh.y[b]!) ** 2);
  }
  return Math.sqrt(longest);
}

function fieldOf(domain: Domain, { base, bounded }: Best): Field {
  const { primal, dual } = bounded;
  return {
    domain,
    upper_S: bounded.upper_S,
    lower_S: bounded.lower_S,
    order: base.reference.order,
    unknowns: primal.unknowns,
    gap: bounded.gap,
    untouched: primal.untouched,
    bytes: primal.bytes + (dual?.bytes ?? 0),
    primal: primal.system,
    stream: (conductors_V) => (dual === null ? null : dual.stream(conductors_V)),
  };
}
