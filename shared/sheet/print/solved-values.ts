/** The value in the place of an insert in a sentence, from the solutions. */
import type { PointReading, SolvedSetup } from '../../setup/readings.ts';
import type { Setup } from '../../setup/setup.ts';
import type { Spot, Target } from '../inserts/bound.ts';
import {
  type Amount,
  acceptedRange,
  currentAmount,
  leastSquaresSlope,
  ratioAmount,
  readingAmount,
  resistanceAmount,
  slopeAmount,
  strengthAmount,
} from './values.ts';

/** By number of the block; a setup without a solution is missing. */
export type Solutions = ReadonlyMap<number, SolvedSetup>;

/** One amount, or the two ends of a range; null where the solution has no such value. */
export type Value = Amount | readonly [Amount, Amount] | null;

/** Null for what is no value in a sentence. */
export function solvedValue(target: Target, solutions: Solutions): Value {
  if (!('setup' in target) || target.kind === 'drawing') return null;
  const { setup } = target;
  const solved = solutions.get(setup.block);
  if (solved === undefined) return null;
  const { readings, samples } = solved;
  switch (target.kind) {
    case 'reading':
      return spotValue(spotReading(target.spot, solved), setup, target.form);
    case 'difference':
      return differenceAmount(spotReading(target.from, solved), spotReading(target.to, solved), setup);
    case 'along':
      return meterAmount(samples[target.sample], setup);
    case 'gradient':
      return gradientAmount(readings.rows[target.index]?.points ?? [], setup);
    case 'mean strength': {
      const slope = meanSlope(samples[target.from], samples[target.to], target.distance_mm);
      return slope === null ? null : slopeAmount(slope, setup);
    }
    case 'current': {
      const of = target.electrode === null ? readings : readings.electrodes[target.electrode];
      const current_A = of?.current_A ?? null;
      return current_A === null ? null : currentAmount(current_A, of?.current_bounds_A ?? null);
    }
    case 'resistance': {
      const { resistance_ohm, resistance_bounds_ohm } = readings;
      return resistance_ohm === null ? null : resistanceAmount(resistance_ohm, resistance_bounds_ohm);
    }
    case 'range': {
      const reading = spotReading(target.spot, solved);
      return reading === null ? null : acceptedRange(reading, setup);
    }
  }
}

/** What is read at a probe, or on the metal of an electrode. */
function spotReading(spot: Spot, { readings }: SolvedSetup): PointReading | null {
  if (spot.kind === 'probe') return readings.probes[spot.index] ?? null;
  const electrode = readings.electrodes[spot.index];
  if (electrode === undefined || electrode.potential_V === null) return null;
  const { box } = spot.electrode;
  return {
    x_mm: (box.x0 + box.x1) / 2,
    y_mm: (box.y0 + box.y1) / 2,
    potential_V: electrode.potential_V,
    reading_V: electrode.reading_V,
    strength_V_per_m: [0, 0],
    source_resistance_ohm: null,
    uncertainty_V: 0,
  };
}

type Form = (Target & { readonly kind: 'reading' })['form'];

function spotValue(reading: PointReading | null, setup: Setup, form: Form): Value {
  if (reading === null) return null;
  if (form === 'strength') return strengthAmount(reading, setup);
  if (reading.reading_V === null) return null;
  return form === 'of V0'
    ? ratioAmount(reading.reading_V, setup)
    : readingAmount(reading.reading_V, setup, reading.uncertainty_V ?? 0);
}

function meterAmount(reading: PointReading | undefined, setup: Setup): Value {
  const value_V = reading?.reading_V ?? null;
  return value_V === null ? null : readingAmount(value_V, setup, reading?.uncertainty_V ?? 0);
}

/** Magnitude of the p.d. between two places, as the difference of their readings. */
function differenceAmount(from: PointReading | null, to: PointReading | null, setup: Setup): Value {
  const a = from?.reading_V ?? null;
  const b = to?.reading_V ?? null;
  if (a === null || b === null) return null;
  return readingAmount(Math.abs(a - b), setup, (from?.uncertainty_V ?? 0) + (to?.uncertainty_V ?? 0));
}

/**
 * Gradient of the straight line of best fit: the slope of the least-squares line through all readings of the row against distance,
 * V/m, with its sign. The strength is its opposite.
 */
function gradientAmount(
  points: readonly (PointReading & { readonly distance_mm: number })[],
  setup: Setup,
): Value {
  const read = points.flatMap(({ distance_mm, reading_V }): (readonly [number, number])[] =>
    reading_V === null ? [] : [[distance_mm / 1000, reading_V]],
  );
  const slope = leastSquaresSlope(read);
  return slope === null ? null : slopeAmount(slope, setup);
}

/** |ΔV|/Δd between two places, V/m. */
function meanSlope(
  a: PointReading | undefined,
  b: PointReading | undefined,
  distance_mm: number,
): number | null {
  const from = a?.reading_V ?? null;
  const to = b?.reading_V ?? null;
  if (from === null || to === null || distance_mm === 0) return null;
  return Math.abs(to - from) / (Math.abs(distance_mm) / 1000);
}
