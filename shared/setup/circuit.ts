/** The circuit around the paper: supply with internal resistance, clips, joined and held electrodes, as a network of nodes. */
import type { Network, Resistor } from './network.ts';
import type { Electrode, Setup } from './setup.ts';

export interface Circuit {
  readonly network: Network;
  /** Nodes of the supply's terminals; `plus` is behind the internal resistance. Null without a supply. */
  readonly supply: { readonly plus: number; readonly emf: number } | null;
  /** The supply's negative terminal, the zero of potential. */
  readonly zero: number;
  /** Node of the metal of an electrode. */
  readonly nodeOf: (name: string) => number | null;
}

/**
 * Potentials count from the supply's negative terminal. A lead without resistance makes its two ends one node; an electrode that is
 * held is an ideal source against the zero.
 */
export function circuitOf(setup: Setup): Circuit {
  const wires = new Wires();
  const zero = wires.point(0);
  const metal = metalPoints(setup.electrodes, wires);
  const { supply } = setup;
  const emf = wires.point(supply?.emf_V ?? null);
  const plus = supply === null ? emf : wires.lead(emf, wires.point(null), supply.internal_ohm);
  for (const electrode of setup.electrodes) {
    const at = metal.get(electrode.name);
    const { connection, clip_ohm } = electrode;
    if (at === undefined || electrode.partOf !== null || connection === null) continue;
    const joined = electrode.joinedTo === null ? undefined : metal.get(electrode.joinedTo);
    if (joined !== undefined) wires.lead(joined, at, clip_ohm);
    else if (connection.kind === 'negative') wires.lead(zero, at, clip_ohm);
    else if (connection.kind === 'positive') wires.lead(plus, at, clip_ohm);
    else if (connection.kind === 'held') wires.lead(wires.point(connection.potential_V), at, clip_ohm);
  }
  const { network, node } = wires.network(conductorPoints(setup.electrodes, metal));
  return {
    network,
    supply: supply === null ? null : { plus: node(plus), emf: node(emf) },
    zero: node(zero),
    nodeOf: (name) => {
      const at = metal.get(name);
      return at === undefined ? null : node(at);
    },
  };
}

/** The paper alone between all positive metal at 1 V and all negative metal at 0 V, clips and supply left out; null where one of them is missing or an electrode is held. */
export function bareNetwork(setup: Setup): { readonly network: Network; readonly positive: number } | null {
  const wires = new Wires();
  const zero = wires.point(0);
  const one = wires.point(1);
  const metal = metalPoints(setup.electrodes, wires);
  const found = new Set<string>();
  for (const { name, connection, joinedTo, conductor, partOf } of setup.electrodes) {
    const at = metal.get(name);
    if (at === undefined || connection === null) continue;
    if (connection.kind === 'held') return null;
    if (conductor !== null) found.add(connection.kind);
    const joined = joinedTo === null || partOf !== null ? undefined : metal.get(joinedTo);
    if (joined !== undefined) wires.lead(joined, at, 0);
    else if (connection.kind === 'negative') wires.lead(zero, at, 0);
    else if (connection.kind === 'positive') wires.lead(one, at, 0);
  }
  if (!found.has('positive') || !found.has('negative')) return null;
  const { network, node } = wires.network(conductorPoints(setup.electrodes, metal));
  return { network, positive: node(one) };
}

/** One point a conductor; an electrode beside the paper has its own, a spike or prong that of what it stands on. */
function metalPoints(electrodes: readonly Electrode[], wires: Wires): ReadonlyMap<string, number> {
  const ofConductor = new Map<number, number>();
  const points = new Map<string, number>();
  for (const { name, conductor } of electrodes) {
    const point = (conductor === null ? undefined : ofConductor.get(conductor)) ?? wires.point(null);
    if (conductor !== null) ofConductor.set(conductor, point);
    points.set(name, point);
  }
  for (const { name, partOf } of electrodes) {
    const [own, base] = [points.get(name), partOf === null ? undefined : points.get(partOf)];
    if (own !== undefined && base !== undefined) wires.lead(base, own, 0);
  }
  return points;
}

function conductorPoints(
  electrodes: readonly Electrode[],
  metal: ReadonlyMap<string, number>,
): readonly number[] {
  const points: number[] = [];
  for (const { name, conductor } of electrodes) {
    const point = metal.get(name);
    if (conductor !== null && point !== undefined) points[conductor] = point;
  }
  return points;
}

/** Points joined by leads; those without resistance between them become one node. */
class Wires {
  private readonly fixed: (number | null)[] = [];
  private readonly same: number[] = [];
  private readonly resistors: Resistor[] = [];

  point(fixed_V: number | null): number {
    this.fixed.push(fixed_V);
    this.same.push(this.same.length);
    return this.same.length - 1;
  }

  /** Returns the far end. */
  lead(from: number, to: number, ohm: number): number {
    if (ohm > 0) this.resistors.push({ a: from, b: to, ohm });
    else {
      const [a, b] = [this.root(from), this.root(to)];
      this.same[Math.max(a, b)] = Math.min(a, b);
    }
    return to;
  }

  network(conductors: readonly number[]): {
    readonly network: Network;
    readonly node: (point: number) => number;
  } {
    const roots = this.same.map((_, point) => this.root(point));
    const distinct = [...new Set(roots)];
    const node = (point: number): number => distinct.indexOf(roots[point] ?? 0);
    const fixed_V = distinct.map(
      (root) => this.fixed.find((value, point) => value !== null && roots[point] === root) ?? null,
    );
    const resistors = this.resistors
      .map(({ a, b, ohm }) => ({ a: node(a), b: node(b), ohm }))
      .filter(({ a, b }) => a !== b);
    return { network: { nodes: distinct.length, nodeOf: conductors.map(node), resistors, fixed_V }, node };
  }

  private root(point: number): number {
    let at = point;
    for (let next = this.same[at]; next !== undefined && next !== at; next = this.same[at]) at = next;
    return at;
  }
}
