/** Values as they stand in a drawing. */
import { printQuantity } from '../quantity/print.ts';

const MOST_DECIMALS = 6;

export function volts(value_V: number, decimals?: number): string {
  return printQuantity(value_V, 'potential', { unit: 'V', decimals: decimals ?? decimalsOf([value_V]) });
}

/** Fewest decimals with which all values are written exactly, as far as noise of the last digits allows. */
export function decimalsOf(values: readonly number[]): number {
  for (let decimals = 0; decimals < MOST_DECIMALS; decimals++) {
    const unit = 1e9 / 10 ** decimals;
    if (values.every((value) => Math.abs(Math.round(value * 1e9) % unit) < 0.5)) return decimals;
  }
  return MOST_DECIMALS;
}

/** Lengths to a hundredth of a millimetre, no trailing zeros: `100 mm`, `12.5 mm`. */
export function millimetres(value_mm: number): string {
  return printQuantity(Math.round(value_mm * 100) / 100, 'length', { unit: 'mm' });
}

/** The number of `millimetres` alone. */
export const bareMillimetres = (value_mm: number): string => millimetres(value_mm).replace('\u00a0mm', '');
