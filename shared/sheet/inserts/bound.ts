/** Inserts with their names found in the setups of the sheet: what printing asks the solutions for. Knows no solution. */
import type { DrawingPart } from '../../block/tree.ts';
import type { Electrode, Probe, Row, Setup } from '../../setup/setup.ts';
import type { FigureParts, Insert, InsertHead } from '../sheet.ts';

/** A probe or an electrode of a setup. `index` counts in `setup.probes` or `setup.electrodes`. */
export type Spot =
  | { readonly kind: 'probe'; readonly index: number; readonly probe: Probe }
  | { readonly kind: 'electrode'; readonly index: number; readonly electrode: Electrode };

/** A row with the heading of its column: `as "…"`, its name, or its letter where two names are alike. */
export interface HeadedRow {
  readonly setup: Setup;
  /** In `setup.rows`. */
  readonly index: number;
  readonly row: Row;
  readonly heading: string;
}

/** Index in the list of places that `wantedSamples` asks of that setup, and so in `SolvedSetup.samples`. */
export type SampleIndex = number;

export type Target =
  | {
      readonly kind: 'reading';
      readonly setup: Setup;
      readonly spot: Spot;
      readonly form: 'value' | 'no unit' | 'of V0' | 'strength';
    }
  /** Reading at `from` less reading at `to`. */
  | { readonly kind: 'difference'; readonly setup: Setup; readonly from: Spot; readonly to: Spot }
  | { readonly kind: 'along'; readonly setup: Setup; readonly row: Row; readonly sample: SampleIndex }
  | { readonly kind: 'gradient'; readonly setup: Setup; readonly row: Row; readonly index: number }
  | {
      readonly kind: 'mean strength';
      readonly setup: Setup;
      readonly row: Row;
      /** Samples at the two places and the distance between them. */
      readonly from: SampleIndex;
      readonly to: SampleIndex;
      readonly distance_mm: number;
    }
  /** Of the supply where `electrode` is null; otherwise its index. */
  | { readonly kind: 'current'; readonly setup: Setup; readonly electrode: number | null }
  | { readonly kind: 'resistance'; readonly setup: Setup }
  | { readonly kind: 'range'; readonly setup: Setup; readonly spot: Spot }
  | { readonly kind: 'blank'; readonly unit: string | null; readonly length_mm: number | null }
  | (FigureParts & {
      readonly kind: 'readings';
      readonly rows: readonly HeadedRow[];
      readonly columns: readonly string[];
    })
  | (FigureParts & {
      readonly kind: 'drawing';
      readonly setup: Setup;
      readonly parts: readonly DrawingPart[] | null;
    })
  | (FigureParts & { readonly kind: 'later'; readonly head: InsertHead & { readonly kind: 'later' } });

export type BoundInsert =
  | { readonly insert: Insert; readonly target: Target }
  /** A visible box that says what is wrong. */
  | { readonly insert: Insert; readonly target: null; readonly trouble: string };
