/** Solved values in words, with the digits that the sheet itself prints and no others. */
import { printQuantity, printWithin } from '../quantity/print.ts';
import type { ElectrodeReading, PointReading, SolvedSetup } from '../setup/readings.ts';
import type { Setup } from '../setup/setup.ts';
import {
  type Amount,
  currentAmount,
  readingAmount,
  resistanceAmount,
  strengthAmount,
} from '../sheet/print/values.ts';

export const amountText = ({ number, unit }: Amount): string =>
  unit === '' ? number : `${number}\u00a0${unit}`;

const textOf = (amount: Amount | null): string | null => (amount === null ? null : amountText(amount));

export function strengthText(reading: PointReading, setup: Setup): string | null {
  return textOf(strengthAmount(reading, setup));
}

/** Seen by the meter from its tip to its black lead. */
export function sourceText({ source_resistance_ohm }: PointReading): string | null {
  return source_resistance_ohm === null
    ? null
    : printQuantity(source_resistance_ohm, 'resistance', { digits: 3 });
}

export function potentialText({ potential_V }: ElectrodeReading, setup: Setup): string | null {
  return potential_V === null ? null : amountText(readingAmount(potential_V, setup, 0));
}

/** From an electrode into the paper, with its sign. */
export function currentText({ current_A, current_bounds_A }: ElectrodeReading): string | null {
  if (current_A === null) return null;
  return printWithin(current_bounds_A ?? [current_A, current_A], 'current', { digits: 3, unit: 'mA' });
}

/** `0.585 mA, 2.57 kΩ`: what the supply gives and what the paper resists; null where neither is known. */
export function totalsText({ readings }: SolvedSetup): string | null {
  const { current_A, current_bounds_A, resistance_ohm, resistance_bounds_ohm } = readings;
  const told = [
    current_A === null ? null : textOf(currentAmount(current_A, current_bounds_A)),
    resistance_ohm === null ? null : textOf(resistanceAmount(resistance_ohm, resistance_bounds_ohm)),
  ].filter((text) => text !== null);
  return told.length === 0 ? null : told.join(', ');
}
