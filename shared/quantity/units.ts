/** The table of units: symbols, the spellings that are read for them, and how each scales to the working unit of its dimension. */
import type { Dimension } from './quantity.ts';

export interface Unit {
  /** As it is printed: `kΩ`, `mm`, `°`. */
  readonly symbol: string;
  readonly dimension: Dimension;
  /** One of this unit is `times` × 10^`exponent` working units. */
  readonly exponent: number;
  readonly times: number;
}

export interface UnitMatch {
  readonly unit: Unit;
  /** Offset behind the last character of the unit. */
  readonly to: number;
}

/** The unit written at `from` (no leading space), or null. Wrong case does not match: see `likelyUnits`. */
export function unitAt(text: string, from: number): UnitMatch | null {
  const force = matchAt(newtonPerCoulomb, text, from);
  if (force !== null) return { unit: strengthUnit('N/C', 0), to: from + force[0].length };
  const atom = atomAt(text, from);
  if (atom === null) return null;
  return compoundAt(text, atom) ?? atom;
}

/** The unit of exactly this spelling, or null. */
export function unitOf(spelling: string): Unit | null {
  const match = unitAt(spelling, 0);
  return match !== null && match.to === spelling.length ? match.unit : null;
}

/** Units that differ from the word by capitals or a plural s only, the likeliest first; `wanted` null allows every dimension. */
export function likelyUnits(word: string, wanted: Dimension | null): readonly Unit[] {
  const folded = word.toLowerCase().replace(/\u2126|ω/gu, 'ω');
  const found = [...(byFolded.get(folded) ?? []), ...(byFolded.get(folded.replace(/s$/u, '')) ?? [])];
  const fitting = found.filter((unit) => wanted === null || unit.dimension === wanted);
  const distinct = fitting.filter((unit, i) => fitting.findIndex((u) => u.symbol === unit.symbol) === i);
  return distinct.sort((a, b) => rank(a) - rank(b));
}

/** Units a quantity of this dimension is likely to be written in on a practical sheet, the likeliest first. */
export const usualUnits: Readonly<Record<Dimension, readonly string[]>> = {
  length: ['mm', 'cm', 'm'],
  potential: ['V', 'mV', 'kV'],
  resistance: ['kΩ', 'MΩ', 'Ω'],
  current: ['mA', 'µA', 'A'],
  contact: ['Ω cm²'],
  angle: ['°'],
  strength: ['V/m'],
  time: ['min'],
  number: [],
};

/** Symbol, spellings, power of ten. The long names join the names of units: `kilovolt`. */
const prefixes: readonly (readonly [string, readonly string[], string, number])[] = [
  ['G', ['G'], 'giga', 9],
  ['M', ['M'], 'mega', 6],
  ['k', ['k'], 'kilo', 3],
  ['', [''], '', 0],
  ['c', ['c'], 'centi', -2],
  ['m', ['m'], 'milli', -3],
  ['µ', ['µ', 'μ', 'u'], 'micro', -6],
  ['n', ['n'], 'nano', -9],
  ['p', ['p'], 'pico', -12],
];

interface BaseUnit {
  readonly symbol: string;
  readonly symbols: readonly string[];
  readonly names: readonly string[];
  readonly dimension: Dimension;
  readonly exponent: number;
}

const bases: readonly BaseUnit[] = [
  { symbol: 'V', symbols: ['V'], names: ['volt'], dimension: 'potential', exponent: 0 },
  {
    symbol: 'Ω',
    symbols: ['Ω', '\u2126', 'ohm', 'ohms', 'Ohm', 'Ohms'],
    names: ['ohm'],
    dimension: 'resistance',
    exponent: 0,
  },
  { symbol: 'A', symbols: ['A'], names: ['amp', 'ampere'], dimension: 'current', exponent: 0 },
  { symbol: 'm', symbols: ['m'], names: ['metre', 'meter'], dimension: 'length', exponent: 3 },
];

const others: readonly (readonly [Unit, readonly string[]])[] = [
  [
    { symbol: '°', dimension: 'angle', exponent: 0, times: 1 },
    ['°', 'º', 'deg', 'degs', 'degree', 'degrees'],
  ],
  [{ symbol: 'min', dimension: 'time', exponent: 0, times: 1 }, ['min', 'mins', 'minute', 'minutes']],
  [{ symbol: 'h', dimension: 'time', exponent: 0, times: 60 }, ['h', 'hour', 'hours']],
  [{ symbol: 's', dimension: 'time', exponent: 0, times: 1 / 60 }, ['s', 'second', 'seconds']],
];

const bySpelling = new Map<string, Unit>();
const byFolded = new Map<string, Unit[]>();
for (const base of bases) for (const prefix of prefixes) enterPrefixed(base, prefix);
for (const [unit, spellings] of others) for (const spelling of spellings) enter(spelling, unit);
// English joins these two without the second vowel.
for (const [name, like] of [
  ['kilohm', 'kohm'],
  ['megohm', 'Mohm'],
] as const) {
  const unit = bySpelling.get(like);
  if (unit !== undefined) enterName(name, unit);
}

function enterPrefixed(base: BaseUnit, prefix: (typeof prefixes)[number]): void {
  const [symbol, spellings, long, exponent] = prefix;
  if (symbol === 'c' && base.symbol !== 'm') return;
  const unit: Unit = {
    symbol: symbol + base.symbol,
    dimension: base.dimension,
    exponent: base.exponent + exponent,
    times: 1,
  };
  for (const p of spellings) for (const s of base.symbols) enter(p + s, unit);
  for (const name of base.names) enterName(long + name, unit);
}

/** A name spelt out: plural, and with a capital as at the beginning of a sentence. */
function enterName(name: string, unit: Unit): void {
  for (const spelling of [name, name.charAt(0).toUpperCase() + name.slice(1)]) {
    enter(spelling, unit);
    enter(`${spelling}s`, unit);
  }
}

function enter(spelling: string, unit: Unit): void {
  bySpelling.set(spelling, unit);
  const folded = spelling.toLowerCase().replace(/\u2126|ω/gu, 'ω');
  const known = byFolded.get(folded);
  if (known === undefined) byFolded.set(folded, [unit]);
  else known.push(unit);
}

/** Small for units at home on a practical sheet. */
function rank(unit: Unit): number {
  const place = usualUnits[unit.dimension].indexOf(unit.symbol);
  return place < 0 ? 9 : place;
}

/** Longest run of letters, digits and marks, or the degree sign: what could be one unit. */
const atomPattern = /°|º|[\p{L}\p{M}\p{N}_]+/uy;
/** A unit that runs into "by": the `mm` of `10mmx120mm`. */
const unitThenBy = /^([\p{L}]{0,12}?)[xX](?=[\d.])/u;
/** A unit that runs into the square of a length: the `Ωcm` of `Ωcm2`. */
const areaPattern = /[\s\u00a0]?[·⋅*]?[\s\u00a0]?(mm|cm|m)(?:²|\^2|2)(?![\p{L}\p{N}])/uy;
const perLengthPattern =
  /(?:\s?\/\s?(mm|cm|m)|[\s\u00a0·⋅.](mm|cm|m)(?:⁻¹|\^?[-\u2212]1))(?![\p{L}\p{N}²^⁻])/uy;
const newtonPerCoulomb = /N(?:\s?\/\s?C|[\s\u00a0·⋅]C(?:⁻¹|\^?[-\u2212]1))(?![\p{L}\p{N}])/uy;
const lengthExponent: Readonly<Record<string, number>> = { mm: -3, cm: -2, m: 0 };

function atomAt(text: string, from: number): UnitMatch | null {
  const run = matchAt(atomPattern, text, from)?.[0];
  if (run === undefined || run.length > 40) return null;
  const whole = bySpelling.get(run);
  if (whole !== undefined) return { unit: whole, to: from + run.length };
  const part = unitThenBy.exec(run)?.[1];
  const unit = part === undefined ? undefined : bySpelling.get(part);
  return part === undefined || unit === undefined ? null : { unit, to: from + part.length };
}

/** `V/m`, `Ω cm²`: what an atom grows into together with what follows it. */
function compoundAt(text: string, atom: UnitMatch): UnitMatch | null {
  const { unit, to } = atom;
  if (unit.dimension === 'resistance') {
    const area = matchAt(areaPattern, text, to);
    const side = area?.[1];
    if (area === null || side === undefined) return null;
    const exponent = unit.exponent + 6 + 2 * (lengthExponent[side] ?? 0);
    const symbol = `${unit.symbol} ${side}²`;
    return { unit: { symbol, dimension: 'contact', exponent, times: 1 }, to: to + area[0].length };
  }
  if (unit.dimension !== 'potential') return null;
  const per = matchAt(perLengthPattern, text, to);
  const length = per?.[1] ?? per?.[2];
  if (per === null || length === undefined) return null;
  const exponent = unit.exponent - (lengthExponent[length] ?? 0);
  return { unit: strengthUnit(`${unit.symbol}/${length}`, exponent), to: to + per[0].length };
}

function strengthUnit(symbol: string, exponent: number): Unit {
  return { symbol, dimension: 'strength', exponent, times: 1 };
}

function matchAt(pattern: RegExp, text: string, from: number): RegExpExecArray | null {
  pattern.lastIndex = from;
  return pattern.exec(text);
}
