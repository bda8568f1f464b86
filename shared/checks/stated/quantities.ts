/** What a text says of a size: values of prose with their signs, ranges, inequalities and uncertainties, in working units. */

import { unitOf } from '../../quantity/units.ts';
import type { Measure } from '../prose/lexicon.ts';
import { type UnitReading, unitReading } from '../prose/unit-reading.ts';
import { type Value, valuesIn, type WrittenNumber } from '../prose/values.ts';

export interface Quantity {
  /** In the text, with the words that belong to it: `about`, `between … and`. */
  readonly from: number;
  readonly to: number;
  /** From the first number to the last unit. */
  readonly valueFrom: number;
  readonly measure: Measure;
  /** Symbol of its unit as it should be. */
  readonly symbol: string;
  /** One of its unit in the working unit of its dimension. */
  readonly factor: number;
  readonly form: 'value' | 'range' | 'more' | 'less';
  /** In working units; alike but for a range. */
  readonly low: number;
  readonly high: number;
  /** Half a unit of the last digit that counts. */
  readonly half: number;
  /** As written. */
  readonly decimals: number;
  /** Said to be rough. */
  readonly about: boolean;
  /** Uncertainty that the text gives, or 0. */
  readonly plus: number;
  /** The only number of a plain value, as written. */
  readonly number: WrittenNumber | null;
}

const roughly =
  /(?:^|[^\p{L}\p{N}])((?:about|around|roughly|approximately|approx\.?|nearly|almost|close to|near to|circa|some|just (?:over|under|above|below)|~|≈)[ \u00a0\n]?)$/iu;
const more =
  /(?:^|[^\p{L}\p{N}])((?:(?:more|greater|larger|higher) than|over|above|at least|no(?:t)? less than|exceeds|beyond|>|≥|⩾)[ \u00a0\n]?)$/iu;
const less =
  /(?:^|[^\p{L}\p{N}])((?:(?:less|smaller|lower) than|under|below|at most|up to|no(?:t)? more than|<|≤|⩽)[ \u00a0\n]?)$/iu;

/** In order of place; a value without a unit is of measure `other`, and so is one with a power of ten. */
export function quantitiesIn(text: string): readonly Quantity[] {
  const values = valuesIn(text);
  const found: Quantity[] = [];
  for (let i = 0; i < values.length; i++) {
    const first = values[i];
    if (first === undefined) continue;
    const second = values[i + 1];
    const pair = second === undefined ? null : (range(text, first, second) ?? plusMinus(text, first, second));
    if (pair !== null) i += 1;
    found.push(pair ?? single(text, first));
  }
  return found;
}

interface Scale {
  readonly measure: Measure;
  readonly symbol: string;
  readonly factor: number;
}

const unknown: Scale = { measure: 'other', symbol: '', factor: 1 };

function scaleOf(unit: UnitReading | null): Scale {
  if (unit === null) return unknown;
  const { measure, symbol } = unit;
  const known = unitOf(symbol.replace(/ per square$/u, ''));
  return known === null ? unknown : { measure, symbol, factor: Number(`1e${known.exponent}`) * known.times };
}

/** Powers of ten are left to themselves. */
const scaleWith = (unit: UnitReading | null, ...numbers: readonly WrittenNumber[]): Scale =>
  numbers.some(({ power }) => power !== null) ? unknown : scaleOf(unit);

/** Noughts at the end of three and more whole digits say nothing, two digits left aside: `1500` is good to 50, `750` to 5. */
const halfDigit = ({ decimals, digits }: WrittenNumber): number => {
  const noughts = decimals === 0 && digits.length > 2 ? (/0*$/u.exec(digits.slice(2))?.[0].length ?? 0) : 0;
  return 0.5 * Number(`1e${noughts - decimals}`);
};

function single(text: string, value: Value): Quantity {
  const { number, unit } = value;
  const { from: valueFrom, sign } = signed(text, value.from);
  const { lead, word } = leadOf(text, valueFrom);
  const scale = scaleWith(unit, number);
  const size = sign * Number(number.digits) * scale.factor;
  return {
    from: valueFrom - lead,
    to: value.to,
    valueFrom,
    ...scale,
    form: word === 'more' || word === 'less' ? word : 'value',
    low: size,
    high: size,
    half: halfDigit(number) * scale.factor,
    decimals: number.decimals,
    about: word === 'about',
    plus: 0,
    number: word === 'more' || word === 'less' ? null : number,
  };
}

/** A minus sign that is no dash between words or values. */
function signed(text: string, from: number): { readonly from: number; readonly sign: number } {
  const before = text.slice(Math.max(0, from - 2), from);
  const minus = /(?:^|[\s(=≈\u00a0])[-\u2212]$/u.test(before);
  return minus ? { from: from - 1, sign: -1 } : { from, sign: 1 };
}

function leadOf(
  text: string,
  from: number,
): { readonly lead: number; readonly word: 'about' | 'more' | 'less' | null } {
  const before = text.slice(Math.max(0, from - 24), from);
  for (const [word, pattern] of [
    ['about', roughly],
    ['more', more],
    ['less', less],
  ] as const) {
    const lead = pattern.exec(before)?.[1]?.length;
    if (lead !== undefined) return { lead, word };
  }
  return { lead: 0, word: null };
}

/** "0.7 V to 0.8 V", "0.70–0.80 V", "between 0.7 and 0.8 V", "from 0 V to 1.5 V". */
function range(text: string, first: Value, second: Value): Quantity | null {
  const between = text.slice(first.to, second.from);
  const before = /(?:^|[^\p{L}])(between|from)[ \u00a0\n]$/iu.exec(
    text.slice(Math.max(0, first.from - 9), first.from),
  )?.[1];
  const joins =
    before?.toLowerCase() === 'between'
      ? /^ ?[\s\u00a0](?:and|to)[\s\u00a0]$/u
      : /^(?: ?[\u2013\u2010-] ?|[\s\u00a0]to[\s\u00a0])$/u;
  if (!joins.test(between) || second.unit === null) return null;
  if (first.unit !== null && first.unit.measure !== second.unit.measure) return null;
  const scale = scaleWith(second.unit, first.number, second.number);
  const start = scaleOf(first.unit ?? second.unit);
  const { from: valueFrom, sign } = signed(text, first.from);
  const a = sign * Number(first.number.digits) * start.factor;
  const b = Number(second.number.digits) * scale.factor;
  return {
    from: valueFrom - (before === undefined ? 0 : before.length + 1),
    to: second.to,
    valueFrom,
    ...scale,
    form: 'range',
    low: Math.min(a, b),
    high: Math.max(a, b),
    half: Math.max(halfDigit(first.number) * start.factor, halfDigit(second.number) * scale.factor),
    decimals: Math.max(first.number.decimals, second.number.decimals),
    about: false,
    plus: 0,
    number: null,
  };
}

/** "(0.75 ± 0.03) V", "0.75 V ± 0.03 V", "0.75 V ± 4 %". */
function plusMinus(text: string, first: Value, second: Value): Quantity | null {
  if (!/^[ \u00a0]?(?:±|\+\/[-\u2212])[ \u00a0]?$/u.test(text.slice(first.to, second.from))) return null;
  const bracket =
    text.charAt(signed(text, first.from).from - 1) === '(' &&
    second.unit === null &&
    text.charAt(second.to) === ')';
  const gap = bracket ? (/^[ \u00a0]?/u.exec(text.slice(second.to + 1))?.[0].length ?? 0) : 0;
  const outer = bracket ? unitReading(text, second.to + 1 + gap) : null;
  const unit = first.unit ?? outer ?? second.unit;
  const base = single(text, first);
  const scale = scaleWith(unit, first.number, second.number);
  const relative = second.unit?.measure === 'percent';
  const size = Number(first.number.digits) * scale.factor;
  const plus = relative
    ? (Math.abs(size) * Number(second.number.digits)) / 100
    : Number(second.number.digits) * (second.unit === null ? scale : scaleOf(second.unit)).factor;
  const sign = base.low < 0 ? -1 : 1;
  return {
    ...base,
    from: bracket ? base.from - 1 : base.from,
    to: outer?.to ?? second.to,
    ...scale,
    low: sign * size,
    high: sign * size,
    half: halfDigit(first.number) * scale.factor,
    plus,
  };
}
