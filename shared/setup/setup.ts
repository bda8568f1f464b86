/**
 * The meaning of a block: names bound, `like` carried out, values in working units (mm, V, Ω, A), pieces placed on the paper.
 * Independent of any solution.
 */
import type { Audience, Chemistry, DrawingPart, Shape, SupplySource } from '../block/tree.ts';
import type { Bounds } from '../field/geometry/curve.ts';
import type { Outline, Point, Segment } from '../field/geometry/outline.ts';
import type { Piece as FieldPiece } from '../field/problem.ts';
import type { Finding } from '../findings/finding.ts';
import type { Span } from '../text/span.ts';

export interface Paper {
  readonly span: Span;
  readonly width_mm: number;
  readonly height_mm: number;
  /** Ω per square along x and y; null where the block does not say. */
  readonly resistance_ohm: readonly [number, number] | null;
}

export interface Supply {
  readonly span: Span;
  readonly source: SupplySource;
  readonly cells: number;
  /** Of the whole supply. */
  readonly emf_V: number;
  readonly internal_ohm: number;
  readonly limit_A: number | null;
  readonly ac: boolean;
  readonly chemistry: Chemistry | null;
  readonly cellSize: string | null;
  /** Leads swapped by `reverse supply`; the connections of the electrodes say so already. */
  readonly reversed: boolean;
}

export interface Meter {
  readonly span: Span;
  readonly resistance_ohm: number;
  readonly resolution_V: number | null;
  readonly range_V: number | null;
  readonly tip_mm: number;
  /** Electrode the black lead stands on; null: the supply's negative terminal. */
  readonly blackLead: string | null;
}

/** How an electrode is connected. `joined` is resolved: joined electrodes share the terminal of the one they lead to. */
export type Connection =
  | { readonly kind: 'positive' | 'negative' | 'floating' }
  | { readonly kind: 'held'; readonly potential_V: number };

export interface Piece {
  readonly shape: Shape;
  readonly span: Span;
  /** As placed, before cutting off at the paper's edge. */
  readonly geometry: FieldPiece;
}

export interface Electrode {
  readonly name: string;
  /** Of the name in the line that first gives it. */
  readonly span: Span;
  readonly pieces: readonly Piece[];
  /** Around all pieces, before cutting off; spikes and prongs that stand on it and openings in a wall do not change it. */
  readonly box: Bounds;
  /** Null where the terminal is missing: left out of the solve. With `reverse supply` positive and negative are already swapped. */
  readonly connection: Connection | null;
  /** Name in `joined to NAME`, for drawing the lead. */
  readonly joinedTo: string | null;
  /** The electrode on which this spike or prong stands; it has no lead of its own. */
  readonly partOf: string | null;
  readonly clip_ohm: number;
  /** Number of the conductor it is part of (touching electrodes are one); null where it is left out of the solve. */
  readonly conductor: number | null;
}

export interface Probe {
  readonly name: string;
  readonly span: Span;
  readonly at: Point;
  /** Electrode it stands on, if any. */
  readonly on: string | null;
}

export interface RowPoint {
  readonly distance_mm: number;
  readonly at: Point;
}
export interface Row {
  readonly name: string;
  readonly span: Span;
  readonly start: Point;
  /** Null for a row with a direction and places only. */
  readonly end: Point | null;
  /** Unit vector along the row. */
  readonly direction: Point;
  readonly points: readonly RowPoint[];
  /** Distance from the row's first point back to the centre it starts from (`row E from centre of D …`, `from D`); the r of a row is distance plus this. */
  readonly startRadius_mm: number;
}

export interface Hole {
  readonly span: Span;
  readonly outline: Outline;
}

/** Physics that is described but not yet solved: painted patches, contact resistance, lifted metal. */
export interface Unsolved {
  readonly kind: 'contact' | 'lifted' | 'painted';
  readonly span: Span;
  readonly outline: Outline | null;
}

export interface Equipotentials {
  readonly span: Span | null;
  /** Ascending, V. */
  readonly values_V: readonly number[];
}

export interface Setup {
  /** `setup` for a block without a name. */
  readonly name: string;
  /** Number of the block in the sheet, from 0. */
  readonly block: number;
  readonly span: Span;
  readonly paper: Paper | null;
  readonly supply: Supply | null;
  readonly meter: Meter | null;
  readonly copper_mm: number | null;
  readonly electrodes: readonly Electrode[];
  readonly holes: readonly Hole[];
  readonly slits: readonly (Segment & { readonly span: Span })[];
  readonly unsolved: readonly Unsolved[];
  readonly probes: readonly Probe[];
  readonly rows: readonly Row[];
  /** Names that lines of the block give but that are nowhere above: a finding at the line says why, and need not be said again elsewhere. */
  readonly lost: readonly string[];
  readonly equipotentials: Equipotentials;
  /**
   * How many field lines leave the metal that feeds current into the paper: as a rule that joined to the supply's positive terminal.
   * Floating metal sends on the lines that it takes in, which are drawn besides. Null: as many as look well.
   */
  readonly fieldLines: number | null;
  /** Parts of the block's own drawing. */
  readonly draw: Readonly<Record<Audience, readonly DrawingPart[]>>;
  /** Findings of the meaning, spans in the file. */
  readonly findings: readonly Finding[];
  /** True when it can be handed to the engine: paper known, two fixed potentials, at least two conductors, no short circuit, nothing unsolved. */
  readonly solvable: boolean;
}
