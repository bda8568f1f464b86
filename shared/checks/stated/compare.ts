/**
 * Holds a stated quantity against solved values. It may lie off by half a unit of its last digit, by the uncertainty that the text
 * gives, by what the solution leaves open, and by half of what the meter can show; what is said to be rough by 5 %, or one unit of the
 * last digit.
 */

import { type Finding, finding } from '../../findings/finding.ts';
import type { StatedCode } from '../../findings/stated-codes.ts';
import { printNumber } from '../../quantity/print.ts';
import { fix, spanOf } from '../prose/run.ts';
import type { Quantity } from './quantities.ts';
import type { Sentence } from './sentences.ts';

export interface Known {
  /** Any of them may be meant. */
  readonly values: readonly number[];
  readonly uncertainty: number;
  /** Finer than this nothing need be said: what a meter cannot show. */
  readonly blur: number;
  /** What a plain zero may hide. */
  readonly nought: number;
}

/** Rough words allow this part of the stated size. */
const roughPart = 0.05;

/** Borders of ranges are round numbers that nobody reads. */
const borderPart = 0.01;

export function agrees(quantity: Quantity, { values, uncertainty, blur, nought }: Known): boolean {
  const open = uncertainty + blur + 1e-9 * Math.max(...values.map(Math.abs));
  return values.some((value) => holds(quantity, value, open, nought));
}

function holds(quantity: Quantity, value: number, open: number, nought: number): boolean {
  const { form, low, high, half, about, plus, number } = quantity;
  if (form !== 'value') {
    const above = value >= low - Math.min(half, borderPart * Math.abs(low)) - open;
    const below = value <= high + Math.min(half, borderPart * Math.abs(high)) + open;
    return (form === 'less' || above) && (form === 'more' || below);
  }
  const rough = about ? Math.max(roughPart * Math.abs(low), 2 * half) : half;
  const plainZero = number !== null && number.digits === '0';
  const allowed = (plainZero ? nought : rough) + plus + open;
  return value >= low - allowed && value <= high + allowed;
}

/** How far the nearest of the values lies beside what is stated. */
function beside({ low, high }: Quantity, { values }: Known): number {
  const off = (value: number): number => (value < low ? value - low : value > high ? value - high : 0);
  return values.map(off).reduce((best, one) => (Math.abs(one) < Math.abs(best) ? one : best));
}

/** Decimals in the stated unit, or `more` than are stated, as far as the solved value stands. */
function decimalsOf({ factor, decimals: stated, number }: Quantity, known: Known, more: number): number {
  const { uncertainty } = known;
  let decimals = Math.min(9, stated + more);
  // A plain zero says nothing of digits: two of them are given instead.
  const [value = 0] = known.values;
  if (number?.digits === '0')
    while (decimals < 9 && Math.abs(value / factor) < Number(`1e${1 - decimals}`)) decimals++;
  while (decimals > 0 && uncertainty / factor > 0.5 * Number(`1e-${decimals}`)) decimals--;
  return decimals;
}

export interface Saying {
  readonly code: StatedCode;
  readonly sentence: Sentence;
  readonly quantity: Quantity;
  readonly known: Known;
  /** "M reads", "The cell gives": goes before the solved value. */
  readonly subject: string;
}

/** One finding on the value, with the solved value in the stated form as a fix that is never applied unasked: the setup may be what is wrong. */
export function differing({ code, sentence, quantity, known, subject }: Saying): Finding {
  const { run, from } = sentence;
  const { factor, symbol, number } = quantity;
  const [exact = 0] = known.values;
  // As the meter shows it.
  const value = known.blur > 0 ? Math.round(exact / (2 * known.blur)) * 2 * known.blur : exact;
  const unit = symbol.replace(/ /gu, '\u00a0');
  const print = (size: number, decimals: number): string => printNumber(size / factor, { decimals });
  const decimals = decimalsOf(quantity, known, 0);
  // One digit more where the stated ones do not tell the two apart.
  const finer = Math.abs(beside(quantity, known)) / factor < 0.95 * Number(`1e-${decimals}`) ? 1 : 0;
  const shownDecimals = decimalsOf(quantity, known, finer);
  const off = beside(quantity, known);
  const gap = print(Math.abs(off), shownDecimals);
  const by = Number(gap) === 0 ? '' : `, ${gap}\u00a0${unit} ${off < 0 ? 'less' : 'more'} than the text says`;
  const mended = print(value, decimals);
  const place = { run, from: from + quantity.valueFrom, to: from + quantity.to };
  const changes =
    number === null ? [] : [{ run, from: from + quantity.valueFrom, to: from + number.to, text: mended }];
  return finding(code, {
    span: spanOf(run, place.from, place.to),
    message: `${subject} ${print(value, shownDecimals)}\u00a0${unit} by the setup${by}.`,
    fixes: fix(`Write ${mended}\u00a0${unit}`, changes, false),
  });
}
