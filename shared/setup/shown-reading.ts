/** What a reading prints as: no digit that the meter does not show, none that the uncertainty leaves open. One rule for texts, tables and drawings. */
import { printNumber } from '../quantity/print.ts';
import type { Setup } from './setup.ts';

/**
 * The smallest step of a reading, V: the meter's resolution. Where the block does not say it, that of a hand-held meter of 2000 counts on
 * the range that holds the supply: 1 mV up to 2 V, 10 mV up to 20 V, 0.1 V up to 200 V, else 1 V (common practice, no source).
 */
export function readingStep(setup: Setup): number {
  const told = setup.meter?.resolution_V ?? null;
  if (told !== null && told > 0) return told;
  const emf = setup.supply?.emf_V ?? 0;
  return [0.001, 0.01, 0.1].find((step) => emf <= step * 2000) ?? 1;
}

/** Decimals of a column or of one reading: those of the step, fewer where the largest uncertainty exceeds half a unit of the last one. */
export function readingDecimals(step_V: number, uncertainty_V: number): number {
  let decimals = decimalsOf(step_V);
  while (decimals > 0 && uncertainty_V > 0.5 * Number(`1e-${decimals}`)) decimals--;
  return decimals;
}

/** Value to the nearest whole number of steps. */
export const toStep = (value: number, step: number): number => Math.round(value / step) * step;

/** The number, in V, that the meter shows. */
export function shownReading(value_V: number, setup: Setup, uncertainty_V: number): string {
  const step = readingStep(setup);
  return printNumber(toStep(value_V, step), { decimals: readingDecimals(step, uncertainty_V) });
}

/** Decimals in the shortest writing of a number: 2 for 0.01, 3 for 0.005, 0 for 10. */
function decimalsOf(value: number): number {
  const [mantissa = '', power = '0'] = String(value).split('e');
  const written = mantissa.split('.')[1]?.length ?? 0;
  return Math.max(0, Math.min(9, written - Number(power)));
}
