/** Quantities in messages and fixes: rounded, with plain spaces. */
import { printQuantity } from '../quantity/print.ts';
import type { Dimension } from '../quantity/quantity.ts';

/** To four significant digits, trailing zeros left out: `11.11 mm`, `2.5 kΩ`. */
export function shown(value: number, dimension: Dimension): string {
  return plain(printQuantity(Number(value.toPrecision(4)), dimension));
}

/** As a line of a block: every digit that counts, the minus sign as typed. */
export function written(value: number, dimension: Dimension): string {
  return plain(printQuantity(Number(value.toPrecision(12)), dimension)).replace('\u2212', '-');
}

const plain = (text: string): string => text.replace(/\u00a0/gu, ' ');
