/**
 * Prints quantities: unit and prefix chosen by dimension, a true minus sign, a no-break space before the unit, and no digit more than
 * is asked for or than stands. Everything is decided on exact decimals, so that the same number prints the same everywhere.
 */
import { shifted } from './decimal.ts';
import type { Dimension } from './quantity.ts';
import { type Unit, unitOf } from './units.ts';

export interface PrintOptions {
  /** Significant digits, trailing zeros kept. */
  readonly digits?: number;
  /** Decimals in the unit that is printed, instead of `digits`. Without both, the shortest digits that give the number back. */
  readonly decimals?: number;
  /** A unit by its symbol, `cm`; otherwise chosen by size. */
  readonly unit?: string;
}

/** `value` in the working unit of the dimension, as text: `0.585 mA`, `−30°`, `2.5 kΩ`. */
export function printQuantity(value: number, dimension: Dimension, options: PrintOptions = {}): string {
  const unit = unitFor(value, dimension, options);
  return joined(printNumber(inPrinted(value, unit), options), unit.symbol);
}

/** The number alone, as in a table column headed with its unit. */
export function printNumber(value: number, options: PrintOptions = {}): string {
  if (!Number.isFinite(value)) return Number.isNaN(value) ? 'not a number' : value > 0 ? '∞' : '\u2212∞';
  const size = Math.abs(value);
  if (size >= 1e15) return powerOfTen(value);
  return signed(value, plain(size, options));
}

/** The unit, prefix chosen by size, in which a value of this size is printed. */
function unitFor(value: number, dimension: Dimension, options: PrintOptions = {}): Unit {
  const asked = options.unit === undefined ? null : unitOf(options.unit);
  if (asked !== null) return asked;
  const ladder = ladders[dimension];
  const smallest = ladder[0] ?? noUnit;
  if (value === 0 || !Number.isFinite(value)) return homeOf(dimension) ?? smallest;
  let chosen = smallest;
  for (const unit of ladder) {
    // Rounded first: 999.96 Ω to four digits is 1.000 kΩ.
    const rounded = Number(plain(Math.abs(inPrinted(value, unit)), options));
    if (rounded >= 1) chosen = unit;
  }
  return chosen;
}

export interface WithinOptions {
  /** At most so many significant digits, 6 unless told. */
  readonly digits?: number;
  /** At most so many decimals in the unit that is printed. */
  readonly decimals?: number;
  readonly unit?: string;
}

/**
 * Prints what is known to lie between two bounds with the digits that stand: those in which both bounds agree, cut or rounded. The
 * printed number is true to within one unit of its last digit. Null where not even the leading digit stands.
 * [2566.03, 2566.07] prints as 2566.0.
 */
export function printWithin(
  bounds: readonly [number, number],
  dimension: Dimension,
  options: WithinOptions = {},
): string | null {
  const [low, high] = bounds[0] <= bounds[1] ? bounds : [bounds[1], bounds[0]];
  if (!Number.isFinite(low) || !Number.isFinite(high)) return null;
  const size = Math.max(Math.abs(low), Math.abs(high));
  const unit = unitFor(size, dimension, options.unit === undefined ? {} : { unit: options.unit });
  const a = inPrinted(low, unit);
  const b = inPrinted(high, unit);
  if (Math.max(Math.abs(a), Math.abs(b)) >= 1e15) return null;
  const most = decimalsAllowed(Math.max(Math.abs(a), Math.abs(b)), options);
  for (let decimals = most; decimals >= 0; decimals--) {
    const common = agreeing(a, b, decimals);
    if (common === null) continue;
    // A lone zero between bounds apart says nothing, unless the number is zero as far as may be printed.
    if (Number(common) === 0 && low !== high && decimals < most) return null;
    return joined(signed(a + b, common), unit.symbol);
  }
  return null;
}

const noUnit: Unit = { symbol: '', dimension: 'number', exponent: 0, times: 1 };

/** Units a value may be printed in, rising. */
const ladders: Readonly<Record<Dimension, readonly Unit[]>> = {
  length: units('mm'),
  potential: units('V', 'kV'),
  resistance: units('mΩ', 'Ω', 'kΩ', 'MΩ', 'GΩ'),
  current: units('nA', 'µA', 'mA', 'A'),
  contact: units('Ω cm²'),
  angle: units('°'),
  strength: units('V/m'),
  time: units('min'),
  number: [noUnit],
};

function units(...symbols: readonly string[]): readonly Unit[] {
  return symbols.map((symbol) => unitOf(symbol)).filter((unit) => unit !== null);
}

/** The unit of a plain zero. */
function homeOf(dimension: Dimension): Unit | undefined {
  return ladders[dimension].find((unit) => unit.exponent === 0);
}

function inPrinted(value: number, unit: Unit): number {
  return shifted(value, -unit.exponent) / unit.times;
}

/** A number of no sign, as digits. */
function plain(size: number, options: PrintOptions): string {
  if (options.decimals !== undefined) return size.toFixed(clamp(options.decimals, 0, 20));
  if (options.digits === undefined) return unscientific(String(size));
  return unscientific(size.toPrecision(clamp(options.digits, 1, 20)));
}

/** `5.8e-7` and `1.2e+3` written out. */
function unscientific(text: string): string {
  const [mantissa = '', power] = text.split('e');
  if (power === undefined) return text;
  const [whole = '', fraction = ''] = mantissa.split('.');
  const move = Number(power);
  if (move < 0) return `0.${'0'.repeat(-move - 1)}${whole}${fraction}`;
  return whole + fraction.padEnd(move, '0').slice(0, move);
}

function powerOfTen(value: number): string {
  const [mantissa = '', power = ''] = Math.abs(value).toExponential(2).split('e+');
  const raised = [...power].map((digit) => '⁰¹²³⁴⁵⁶⁷⁸⁹'.charAt(Number(digit))).join('');
  return signed(value, `${mantissa}\u00a0×\u00a010${raised}`);
}

/** Digits with a true minus sign, never before a zero. */
function signed(value: number, digits: string): string {
  return value < 0 && /[1-9]/u.test(digits) ? `\u2212${digits}` : digits;
}

function joined(number: string, symbol: string): string {
  if (symbol === '') return number;
  return symbol === '°' ? `${number}°` : `${number}\u00a0${symbol.replace(/ /gu, '\u00a0')}`;
}

function clamp(value: number, low: number, high: number): number {
  return Math.max(low, Math.min(high, Math.round(value)));
}

function decimalsAllowed(size: number, options: WithinOptions): number {
  const leading = size === 0 ? 0 : Number(size.toExponential().split('e')[1]);
  const bySignificance = (options.digits ?? 6) - 1 - leading;
  return clamp(Math.min(bySignificance, options.decimals ?? bySignificance), 0, 20);
}

/** The digits, without sign, in which a and b agree when rounded, or else when cut, to so many decimals. */
function agreeing(a: number, b: number, decimals: number): string | null {
  const roundedA = a.toFixed(decimals);
  const roundedB = b.toFixed(decimals);
  if (Number(roundedA) === Number(roundedB)) return roundedA.replace('-', '');
  const cutA = cut(a, decimals);
  return a >= 0 === b >= 0 && cutA === cut(b, decimals) ? cutA : null;
}

/** |value| cut, not rounded, to so many decimals. */
function cut(value: number, decimals: number): string {
  const digits = unscientific(String(Math.abs(value)));
  const [whole = '', fraction = ''] = digits.split('.');
  return decimals === 0 ? whole : `${whole}.${fraction.padEnd(decimals, '0').slice(0, decimals)}`;
}
