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
  const rough = about ? Math.max(roughPart * Math.abs(low), 2 * half, roundHalf(quantity)) : half;
  const plainZero = number !== null && number.digits === '0';
  const allowed = (plainZero ? nought : rough) + plus + open;
  return value >= low - allowed && value <= high + allowed;
}

/** "About 300" is good to half of its hundred. */
function roundHalf({ number, factor }: Quantity): number {
  const noughts = /^[1-9]\d*?(0*)$/u.exec(number?.digits ?? '')?.[1]?.length ?? 0;
  return 0.5 * Number(`1e${noughts}`) * (noughts > 0 ? factor : 0);
}

/** How far the nearest of the values lies beside what is stated. */
function beside({ low, high }: Quantity, { values }: Known): number {
  const off = (value: number): number => (value < low ? value - low : value > high ? value - high : 0);
  return values.map(off).reduce((best, one) => (Math.abs(one) < Math.abs(best) ? one : best));
}

/** Decimals in the stated unit, or `more` than are stated, as far as the solved value stands. */
function decimalsOf({ factor, decimals: stated, number }: Quantity, known: Known, more: number): number {
  const { uncertainty, nought } = known;
  const [value = 0] = known.values.map((one) => Math.abs(one / factor));
  let decimals = Math.min(9, stated + more);
  // A plain zero says nothing of digits, and too few of them would spoil the value: so many that a tenth of it stands.
  const coarse = (): boolean =>
    number?.digits === '0'
      ? value < Number(`1e${1 - decimals}`)
      : Math.abs(Number(value.toFixed(decimals)) - value) > value / 10;
  while (decimals < 9 && value > nought / factor && coarse()) decimals++;
  while (decimals > 0 && uncertainty / factor > 0.5 * Number(`1e-${decimals}`)) decimals--;
  return decimals;
}

/** Whole numbers of more than three figures, as a text would say them. */
const threeFigures = (value: number): number =>
  Math.abs(value) >= 1000 ? Number(value.toPrecision(3)) : value;

export interface Saying {
  readonly code: StatedCode;
  readonly sentence: Sentence;
  readonly quantity: Quantity;
  readonly known: Known;
  /** "M reads", "The cell gives": goes before the solved value. */
  readonly subject: string;
  /** The value is as the block gives it, and is told with all its digits. */
  readonly given?: boolean;
}

/** One finding on the value, with the solved value in the stated form as a fix that is never applied unasked: the setup may be what is wrong. */
export function differing({ code, sentence, quantity, known, subject, given = false }: Saying): Finding {
  const { run, from } = sentence;
  const { factor, symbol, number } = quantity;
  const [exact = 0] = known.values;
  // As the meter shows it.
  const value = known.blur > 0 ? Math.round(exact / (2 * known.blur)) * 2 * known.blur : exact;
  const unit = symbol.replace(/ /gu, '\u00a0');
  const print = (size: number, decimals: number): string =>
    printNumber(decimals === 0 ? threeFigures(size / factor) : size / factor, { decimals });
  const own = given ? (String(exact / factor).split('.')[1]?.length ?? 0) : 0;
  const decimals = Math.max(decimalsOf(quantity, known, 0), own);
  // One digit more where the stated ones do not tell the two apart.
  const finer = Math.abs(beside(quantity, known)) / factor < 0.95 * Number(`1e-${decimals}`) ? 1 : 0;
  const shownDecimals = Math.max(decimalsOf(quantity, known, finer), own);
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
