/** Reads a number with its unit from a text, and says kindly what is wrong with one that cannot be taken as it stands. */
import type { Span } from '../text/span.ts';
import { scaled, shifted } from './decimal.ts';
import type { Dimension, Quantity } from './quantity.ts';
import { likelyUnits, type Unit, unitAt, unitOf, usualUnits } from './units.ts';

/** A number as written. */
export interface Digits {
  readonly span: Span;
  /** With an ASCII minus where it is negative, without spaces: `-12.5`. */
  readonly digits: string;
}

export type RefusalReason = 'inches' | 'comma' | 'power' | 'case' | 'missing' | 'unknown' | 'dimension';

/** Another way of writing what was refused. */
export interface Rewriting {
  readonly span: Span;
  readonly text: string;
  /** The quantity as it would then read, for the menu: `10 mm`. */
  readonly shown: string;
  /** True where nothing else can be meant. */
  readonly certain: boolean;
}

export interface Refusal {
  readonly reason: RefusalReason;
  readonly span: Span;
  readonly message: string;
  /** The likeliest first. */
  readonly rewritings: readonly Rewriting[];
}

export interface ReadQuantity {
  readonly quantity: Quantity;
  readonly unit: Unit;
  /** Of number and unit. */
  readonly span: Span;
  readonly unitSpan: Span;
}

export type QuantityReading =
  | ({ readonly kind: 'read' } & ReadQuantity)
  | { readonly kind: 'refused'; readonly refusal: Refusal; readonly span: Span }
  /** There is no number at this place. */
  | { readonly kind: 'none' };

/** The number at `from`, spaces before it allowed; both minus signs; null where there is none. */
export function numberAt(text: string, from: number): Digits | null {
  numberPattern.lastIndex = from;
  const match = numberPattern.exec(text);
  const [whole, space = '', sign = '', digits = ''] = match ?? [];
  if (whole === undefined) return null;
  const minus = sign === '-' || sign === '\u2212' ? '-' : '';
  return { span: { from: from + space.length, to: from + whole.length }, digits: minus + digits };
}

/** The unit that follows at `from`, spaces before it allowed. */
export function unitAfter(text: string, from: number): { readonly unit: Unit; readonly span: Span } | null {
  const start = skipSpace(text, from);
  const match = unitAt(text, start);
  return match === null ? null : { unit: match.unit, span: { from: start, to: match.to } };
}

export function inUnit(digits: Digits, unit: Unit): Quantity {
  return { value: scaled(digits.digits, unit.exponent) * unit.times, dimension: unit.dimension };
}

/** The quantity at `from`, of the dimension wanted. */
export function readQuantity(text: string, from: number, wanted: Dimension): QuantityReading {
  const number = numberAt(text, from);
  if (number === null) return { kind: 'none' };
  const special = decimalComma(text, number, wanted) ?? powerOfTen(text, number);
  if (special !== null) return special;
  const after = unitAfter(text, number.span.to);
  if (after === null) return refuseUnit(text, number, wanted);
  const span = { from: number.span.from, to: after.span.to };
  if (after.unit.dimension !== wanted) return refuseDimension(text, number, after, wanted);
  const quantity = inUnit(number, after.unit);
  return { kind: 'read', quantity, unit: after.unit, span, unitSpan: after.span };
}

/** A whole text as one quantity: `0 mm`, `−1.5 V`; anything beside it is refused. */
export function parseQuantity(text: string, wanted: Dimension): QuantityReading {
  const reading = readQuantity(text, 0, wanted);
  if (reading.kind !== 'read') return reading;
  const end = skipSpace(text, reading.span.to);
  if (end === text.length) return reading;
  const span = { from: end, to: text.length };
  const message = `What does “${text.slice(end).trim()}” mean after ${text.slice(reading.span.from, reading.span.to)}?`;
  return {
    kind: 'refused',
    span: reading.span,
    refusal: { reason: 'unknown', span, message, rewritings: [] },
  };
}

/** Word for a dimension in a message: "a length". */
export const dimensionWords: Readonly<Record<Dimension, string>> = {
  length: 'a length',
  potential: 'a potential',
  resistance: 'a resistance',
  current: 'a current',
  contact: 'a contact resistance',
  angle: 'an angle',
  strength: 'a field strength',
  time: 'a time',
  number: 'a plain number',
};

const numberPattern = /([\s\u00a0]*)([+\-\u2212]?)[^\S\n]{0,1}(\d+(?:\.\d+)?|\.\d+)/uy;
const commaPattern = /,(\d+)/uy;
const powerPattern = /[eE]([+\-\u2212]?\d{1,4})(?![\p{L}\p{N}])/uy;
const inchPattern = /[\s\u00a0]*(inches|inch|ins?(?![\p{L}])|"|″|''|′′|”)/iuy;
const wordPattern = /[\s\u00a0]*([\p{L}°º][\p{L}\p{M}\p{N}_]*)/uy;

function skipSpace(text: string, from: number): number {
  let at = from;
  while (at < text.length && /\s/u.test(text.charAt(at))) at++;
  return at;
}

function decimalComma(text: string, number: Digits, wanted: Dimension): QuantityReading | null {
  commaPattern.lastIndex = number.span.to;
  const fraction = commaPattern.exec(text)?.[1];
  if (fraction === undefined || number.digits.includes('.')) return null;
  const span = { from: number.span.from, to: number.span.to + 1 + fraction.length };
  const unit = unitAfter(text, span.to);
  const shownUnit = unit === null ? (usualUnits[wanted][0] ?? '') : unit.unit.symbol;
  const point = `${number.digits}.${fraction}`;
  const certain = fraction.length !== 3;
  const rewritings = [{ span, text: point, shown: withUnit(point, shownUnit), certain }];
  if (fraction.length === 3) {
    const thousands = number.digits + fraction;
    rewritings.push({ span, text: thousands, shown: withUnit(thousands, shownUnit), certain });
  }
  const message =
    'This is a decimal comma. The decimal sign is a point: a comma separates the parts of a line.';
  const whole = { from: span.from, to: unit === null ? span.to : unit.span.to };
  return { kind: 'refused', span: whole, refusal: { reason: 'comma', span, message, rewritings } };
}

/** `1e3 mm`: written out where that is a number of reasonable length. */
function powerOfTen(text: string, number: Digits): QuantityReading | null {
  powerPattern.lastIndex = number.span.to;
  const power = powerPattern.exec(text)?.[1];
  if (power === undefined) return null;
  const written = { from: number.span.from, to: powerPattern.lastIndex };
  const unit = unitAfter(text, written.to);
  const span = { from: written.from, to: unit === null ? written.to : unit.span.to };
  const value = scaled(number.digits, Number(power.replace('\u2212', '-')));
  const digits = Math.abs(value) < 1e9 && Math.abs(value) >= 1e-6 ? String(value) : null;
  const shown = digits === null ? '' : withUnit(digits, unit?.unit.symbol ?? '');
  const message = 'Numbers are written out here, without powers of ten.';
  const rewritings = digits === null ? [] : [{ span: written, text: digits, shown, certain: true }];
  return { kind: 'refused', span, refusal: { reason: 'power', span: written, message, rewritings } };
}

function refuseUnit(text: string, number: Digits, wanted: Dimension): QuantityReading {
  const inch = inches(text, number);
  if (inch !== null) return inch;
  wordPattern.lastIndex = number.span.to;
  const match = wordPattern.exec(text);
  const word = match?.[1];
  if (word !== undefined) {
    const to = wordPattern.lastIndex;
    const span = { from: to - word.length, to };
    const likely = likelyUnits(word, wanted);
    if (likely.length > 0) return wrongCase(number, { word, span }, likely);
    // Joined to the number, or a unit of another kind in wrong capitals: meant as a unit all the same.
    const meant = span.from === number.span.to || likelyUnits(word, null).length > 0;
    if (meant) return unknownUnit(number, { word, span }, wanted);
  }
  const at = { from: number.span.to, to: number.span.to };
  const rewritings = usualUnits[wanted].map((symbol) => ({
    span: at,
    text: symbol === '°' ? '°' : ` ${symbol}`,
    shown: withUnit(number.digits, symbol),
    certain: false,
  }));
  const message = `${minus(number.digits)} of what? Here stands ${dimensionWords[wanted]}, with its unit: ${listed(rewritings)}.`;
  return {
    kind: 'refused',
    span: number.span,
    refusal: { reason: 'missing', span: number.span, message, rewritings },
  };
}

interface WrittenUnit {
  readonly word: string;
  readonly span: Span;
}

/** Of units that differ by capitals only, those that keep the first letter and those at home on a practical sheet. */
function wrongCase(number: Digits, written: WrittenUnit, likely: readonly Unit[]): QuantityReading {
  const first = written.word.charAt(0);
  const meant = likely.filter(
    (unit) => unit.symbol.startsWith(first) || usualUnits[unit.dimension].includes(unit.symbol),
  );
  const offered = meant.length > 0 ? meant : likely;
  const rewritings = offered.map((unit) => ({
    span: written.span,
    text: unit.symbol,
    shown: withUnit(number.digits, unit.symbol),
    certain: offered.length === 1 && (likely.length === 1 || unit.symbol.startsWith(first)),
  }));
  const message = `Capitals count in units, and there is no “${written.word}”: ${listed(rewritings)}?`;
  const span = { from: number.span.from, to: written.span.to };
  return { kind: 'refused', span, refusal: { reason: 'case', span: written.span, message, rewritings } };
}

function unknownUnit(number: Digits, written: WrittenUnit, wanted: Dimension): QuantityReading {
  const rewritings = usualUnits[wanted].map((symbol) => ({
    span: { from: number.span.to, to: written.span.to },
    text: symbol === '°' ? symbol : ` ${symbol}`,
    shown: withUnit(number.digits, symbol),
    certain: false,
  }));
  const message = `“${written.word}” is not a unit that is known here. Here stands ${dimensionWords[wanted]}: ${listed(rewritings)}.`;
  const span = { from: number.span.from, to: written.span.to };
  return { kind: 'refused', span, refusal: { reason: 'unknown', span: written.span, message, rewritings } };
}

/** One inch is 25.4 mm exactly (international yard and pound agreement, 1959). */
function inches(text: string, number: Digits): QuantityReading | null {
  inchPattern.lastIndex = number.span.to;
  const match = inchPattern.exec(text);
  if (match === null) return null;
  const span = { from: number.span.from, to: inchPattern.lastIndex };
  // `in 10 steps` is no inch.
  if (
    /^[\s\u00a0]+in$/iu.test(match[0]) &&
    /^[\s\u00a0]*\d+[\s\u00a0]+(equal[\s]+)?step/iu.test(text.slice(span.to, span.to + 40))
  ) {
    return null;
  }
  const millimetres = String(Number((shifted(Number(number.digits), 1) * 2.54).toFixed(4)));
  const shown = withUnit(millimetres, 'mm');
  const message = `Lengths are in millimetres here, not in inches: ${shown}?`;
  return {
    kind: 'refused',
    span,
    refusal: { reason: 'inches', span, message, rewritings: [{ span, text: shown, shown, certain: false }] },
  };
}

function refuseDimension(
  text: string,
  number: Digits,
  after: { readonly unit: Unit; readonly span: Span },
  wanted: Dimension,
): QuantityReading {
  const span = { from: number.span.from, to: after.span.to };
  const written = text.slice(span.from, span.to);
  const rewritings = usualUnits[wanted]
    .filter((symbol) => unitOf(symbol) !== null)
    .map((symbol) => ({
      span: { from: number.span.to, to: after.span.to },
      text: symbol === '°' ? symbol : ` ${symbol}`,
      shown: withUnit(number.digits, symbol),
      certain: false,
    }));
  const message = `${written} is ${dimensionWords[after.unit.dimension]}. Here stands ${dimensionWords[wanted]}: ${listed(rewritings)}.`;
  return { kind: 'refused', span, refusal: { reason: 'dimension', span, message, rewritings } };
}

function withUnit(digits: string, symbol: string): string {
  return symbol === '°' ? `${digits}°` : `${digits} ${symbol}`.trim();
}

function minus(digits: string): string {
  return digits.replace('-', '\u2212');
}

function listed(rewritings: readonly Rewriting[]): string {
  return rewritings.map((r) => minus(r.shown)).join(' or ');
}
