/**
 * The solution of a setup as plain data, fit for JSON and for a message between threads. Keys carry their units and are those of
 * `papervolt readings --json`. A key that does not apply is null.
 */

import type { TracedLine } from '../field/sample/traced-line.ts';

export interface SetupReadings {
  readonly name: string;
  readonly resistance_ohm: number | null;
  readonly resistance_bounds_ohm: readonly [number, number] | null;
  readonly current_A: number | null;
  readonly current_bounds_A: readonly [number, number] | null;
  readonly electrodes: readonly ElectrodeReading[];
  readonly probes: readonly ProbeReading[];
  readonly rows: readonly RowReading[];
}

export interface ElectrodeReading {
  readonly name: string;
  readonly potential_V: number | null;
  /** What the meter shows with its red lead on the metal. */
  readonly reading_V: number | null;
  /** From the electrode into the paper. */
  readonly current_A: number | null;
  readonly current_bounds_A: readonly [number, number] | null;
}

/** What is found at one place of the paper. */
export interface PointReading {
  readonly x_mm: number;
  readonly y_mm: number;
  /** Of the paper, against the supply's negative terminal. */
  readonly potential_V: number | null;
  /** What the meter shows. */
  readonly reading_V: number | null;
  readonly strength_V_per_m: readonly [number, number] | null;
  readonly source_resistance_ohm: number | null;
  /** Half width of the interval, or an estimate of the error. */
  readonly uncertainty_V: number | null;
}
export interface ProbeReading extends PointReading {
  readonly name: string;
}
export interface RowReading {
  readonly name: string;
  readonly points: readonly (PointReading & { readonly distance_mm: number })[];
}

export interface EquipotentialLines {
  readonly value_V: number;
  readonly lines: readonly TracedLine[];
}
export interface SetupTraces {
  readonly equipotentials: readonly EquipotentialLines[];
  /** Each runs from high to low potential; `half` is the index of the point nearest the half-way potential. */
  readonly fieldLines: readonly (TracedLine & { readonly half: number })[];
  /** Current that one field line stands for; null without a sheet resistance. */
  readonly lineCurrent_A: number | null;
}

/** The paper along the line between the facing edges of two electrodes, without a meter, from end to end in equal steps. */
export interface GapReading {
  /** Names of the electrodes. */
  readonly from: string;
  readonly to: string;
  readonly length_mm: number;
  readonly points: readonly GapPoint[];
}
export interface GapPoint {
  /** From the edge of `from`. */
  readonly distance_mm: number;
  readonly x_mm: number;
  readonly y_mm: number;
  /** All null on other metal, in holes, and where nothing fixes the potential. */
  readonly potential_V: number | null;
  readonly strength_V_per_m: readonly [number, number] | null;
  readonly uncertainty_V: number | null;
}

/** A solved setup, all plain data. */
export interface SolvedSetup {
  readonly readings: SetupReadings;
  readonly traces: SetupTraces;
  /** Readings at further places asked for, in the order of asking. */
  readonly samples: readonly PointReading[];
  /** Between metal of different terminals. */
  readonly gaps: readonly GapReading[];
  /** Work done, for tables and tests. */
  readonly work: { readonly unknowns: number; readonly order: number; readonly gap: number };
}
