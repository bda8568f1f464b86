/**
 * Values of solved setups as they are printed: no digit that the meter does not show, none that the uncertainty leaves open.
 */
import { hypot } from '../../field/maths.ts';
import { type PrintOptions, printNumber, printWithin } from '../../quantity/print.ts';
import { unitOf } from '../../quantity/units.ts';
import type { PointReading } from '../../setup/readings.ts';
import type { Setup } from '../../setup/setup.ts';
import { readingStep, shownReading, toStep } from '../../setup/shown-reading.ts';
import { measures } from './blanks.ts';

/** A number and its unit, apart, so that a column may print the number alone. `unit` is empty for a pure number. */
export interface Amount {
  readonly number: string;
  readonly unit: string;
}

/** The same digits in another unit of the same dimension; null where the unit is none of these: `0.75` V is `750` mV. */
export function amountIn({ number, unit }: Amount, other: string): Amount | null {
  const from = unitOf(unit);
  const to = unitOf(other);
  if (from === null || to === null || from.dimension !== to.dimension || from.times !== to.times) return null;
  return { number: pointMoved(number, from.exponent - to.exponent), unit: to.symbol };
}

/** What the meter shows, to the nearest of its steps. */
export function readingAmount(value_V: number, setup: Setup, uncertainty_V: number): Amount {
  return { number: shownReading(value_V, setup, uncertainty_V), unit: measures.potential.unit };
}

/** Reading over EMF, with as many decimals as one step of the meter allows. */
export function ratioAmount(value_V: number, setup: Setup): Amount | null {
  const emf = setup.supply?.emf_V ?? 0;
  if (emf === 0) return null;
  const step = readingStep(setup) / emf;
  let decimals = 1;
  while (decimals < 6 && Number(`1e-${decimals + 1}`) >= step) decimals++;
  return { number: printNumber(value_V / emf, { decimals }), unit: measures.ratio.unit };
}

/** Magnitude of the field at a place, three significant digits. */
export function strengthAmount(reading: PointReading, setup: Setup): Amount | null {
  if (reading.strength_V_per_m === null) return null;
  const [x, y] = reading.strength_V_per_m;
  return slopeAmount(hypot(x, y), setup);
}

/**
 * V/m to three significant digits, but none below a thousandth of the field that the supply would make along the paper's diagonal:
 * the field in a hollow electrode prints as 0 V/m, not as what rounding left of it.
 */
export function slopeAmount(value: number, setup: Setup): Amount {
  const paper = setup.paper;
  const diagonal_m = paper === null ? 1 : hypot(paper.width_mm, paper.height_mm) / 1000;
  const floor = (1e-3 * Math.abs(setup.supply?.emf_V ?? 1)) / diagonal_m;
  const options: PrintOptions = { digits: 3 };
  return {
    number: Math.abs(value) < floor ? '0' : printNumber(value, options),
    unit: measures.strength.unit,
  };
}

/** A current within its bounds, mA, at most three significant digits; null where not one digit stands. */
export function currentAmount(value_A: number, bounds_A: readonly [number, number] | null): Amount | null {
  return withinAmount(bounds_A ?? [value_A, value_A], 'current', measures.current.unit);
}

/** A resistance within its bounds, kΩ, at most three significant digits. */
export function resistanceAmount(value_ohm: number, bounds: readonly [number, number] | null): Amount | null {
  return withinAmount(bounds ?? [value_ohm, value_ohm], 'resistance', measures.resistance.unit);
}

/**
 * Readings to accept when marking, V: the true one give or take one step of the meter and 1 mm of misplacement along the field,
 * rounded up to whole steps. Between bars with 15 V/m this gives ±0.03 V about 0.75 V (common practice, no source).
 */
export function acceptedRange(reading: PointReading, setup: Setup): readonly [Amount, Amount] | null {
  const { reading_V, strength_V_per_m } = reading;
  if (reading_V === null) return null;
  const step = readingStep(setup);
  const slope = strength_V_per_m === null ? 0 : hypot(strength_V_per_m[0], strength_V_per_m[1]);
  const placement_V = slope * 1e-3;
  const half = (1 + Math.ceil(placement_V / step - 1e-6)) * step;
  const uncertainty = reading.uncertainty_V ?? 0;
  return [
    readingAmount(toStep(reading_V, step) - half, setup, uncertainty),
    readingAmount(toStep(reading_V, step) + half, setup, uncertainty),
  ];
}

/** Slope of the least-squares straight line through (x, y), in units of y by x; null for fewer than two different x. */
export function leastSquaresSlope(points: readonly (readonly [number, number])[]): number | null {
  const n = points.length;
  const meanX = points.reduce((sum, [x]) => sum + x, 0) / n;
  const meanY = points.reduce((sum, [, y]) => sum + y, 0) / n;
  let xx = 0;
  let xy = 0;
  for (const [x, y] of points) {
    xx += (x - meanX) * (x - meanX);
    xy += (x - meanX) * (y - meanY);
  }
  return xx > 0 ? xy / xx : null;
}

/** A written number times 10^places, digit for digit. */
function pointMoved(number: string, places: number): string {
  const sign = /^\D*/u.exec(number)?.[0] ?? '';
  const [whole = '', fraction = ''] = number.slice(sign.length).split('.');
  const before = whole.length + places;
  const digits = '0'.repeat(Math.max(0, 1 - before)) + whole + fraction;
  const point = Math.max(1, before);
  const left = digits
    .slice(0, point)
    .padEnd(point, '0')
    .replace(/^0+(?=\d)/u, '');
  const right = digits.slice(point);
  return sign + left + (right === '' ? '' : `.${right}`);
}

function withinAmount(
  bounds: readonly [number, number],
  dimension: 'current' | 'resistance',
  unit: string,
): Amount | null {
  const printed = printWithin(bounds, dimension, { digits: 3, unit });
  if (printed === null) return null;
  return { number: printed.slice(0, printed.lastIndexOf('\u00a0')), unit };
}
