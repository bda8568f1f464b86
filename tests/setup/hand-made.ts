/** Setups made by hand for the circuit alone: electrodes without shape, paper as a resistor network of known conductances. */
import type { Connection, Electrode, Setup } from '../../shared/setup/setup.ts';

const span = { from: 0, to: 0 };

export interface Lead {
  readonly name: string;
  readonly connection: Connection;
  readonly joinedTo?: string;
  readonly clip_ohm?: number;
  /** Conductor number; its place in the list unless told. */
  readonly conductor?: number;
}

export function electrodes(leads: readonly Lead[]): readonly Electrode[] {
  return leads.map(({ name, connection, joinedTo, clip_ohm, conductor }, i) => ({
    name,
    span,
    pieces: [],
    box: { x0: 0, y0: 0, x1: 0, y1: 0 },
    connection,
    joinedTo: joinedTo ?? null,
    partOf: null,
    clip_ohm: clip_ohm ?? 0,
    conductor: conductor ?? i,
  }));
}

export function setupOf(
  leads: readonly Lead[],
  supply: { readonly emf_V: number; readonly internal_ohm?: number },
): Setup {
  return {
    name: 'setup',
    block: 0,
    span,
    paper: { span, width_mm: 240, height_mm: 160, resistance_ohm: [5000, 5000] },
    supply: {
      span,
      source: 'cell',
      cells: 1,
      emf_V: supply.emf_V,
      internal_ohm: supply.internal_ohm ?? 0,
      limit_A: null,
      ac: false,
      chemistry: null,
      cellSize: null,
      reversed: false,
    },
    meter: null,
    copper_mm: null,
    electrodes: electrodes(leads),
    holes: [],
    slits: [],
    unsolved: [],
    probes: [],
    rows: [],
    lost: [],
    equipotentials: { span: null, values_V: [] },
    fieldLines: null,
    draw: { pupils: [], teachers: [], technicians: [] },
    findings: [],
    solvable: true,
  };
}

export const positive: Connection = { kind: 'positive' };
export const negative: Connection = { kind: 'negative' };
export const floating: Connection = { kind: 'floating' };
export const held = (potential_V: number): Connection => ({ kind: 'held', potential_V });

/** Conductance matrix of resistors between numbered terminals: [a, b, ohm]. */
export function paperOf(
  count: number,
  resistors: readonly (readonly [number, number, number])[],
): Float64Array {
  const g = new Float64Array(count * count);
  const add = (i: number, j: number, value: number): void => {
    g[i * count + j] = (g[i * count + j] ?? 0) + value;
  };
  for (const [a, b, ohm] of resistors) {
    add(a, a, 1 / ohm);
    add(b, b, 1 / ohm);
    add(a, b, -1 / ohm);
    add(b, a, -1 / ohm);
  }
  return g;
}
