/**
 * The tokenizer of prose quantities: every number of a run that stands for itself, with the unit behind it. Numbers in names, versions,
 * dates and ratios are none.
 */
import { raisedPower, type UnitReading, unitReading } from './unit-reading.ts';

export interface Value {
  /** Of number and unit in the run. */
  readonly from: number;
  readonly to: number;
  readonly number: WrittenNumber;
  /** What stands between number and unit: nothing, a space, a hyphen. */
  readonly gap: string;
  readonly unit: UnitReading | null;
}

export interface WrittenNumber {
  readonly from: number;
  /** Behind the power of ten. */
  readonly to: number;
  /** Digits with a decimal point and without groups: `0.75`. No sign. */
  readonly digits: string;
  readonly decimals: number;
  readonly comma: 'decimal' | 'groups' | null;
  /** Digits stand in groups with spaces between. */
  readonly spaced: boolean;
  readonly power: PowerOfTen | null;
}

export interface PowerOfTen {
  readonly from: number;
  /** As it should be: ` × 10⁻³`. */
  readonly text: string;
  readonly right: boolean;
  /** `1e-3`: without a unit it is the notation of programs. */
  readonly letter: boolean;
}

/** In order of place; a number that labels something (`Figure 5`) is left out. */
export function valuesIn(text: string): readonly Value[] {
  const values: Value[] = [];
  numberPattern.lastIndex = 0;
  for (let found = numberPattern.exec(text); found !== null; found = numberPattern.exec(text)) {
    const value = valueAt(text, found.index, found[0], values.at(-1));
    if (value === null) continue;
    values.push(value);
    numberPattern.lastIndex = Math.max(numberPattern.lastIndex, value.to);
  }
  return values;
}

/** Number and unit as they would read with the unit given. */
export function shown(text: string, value: Value, symbol: string): string {
  const number = text.slice(value.number.from, value.number.to);
  return symbol === '°' ? `${number}°` : `${number} ${symbol}`;
}

/**
 * Groups of three with spaces or commas, a decimal comma, a decimal point. Behind a letter only as in `10x16`.
 * A number that goes on (`1.2.3`, `10:30`, `2026-09-07`) is no quantity, and is left out or found to have no unit.
 */
const numberPattern =
  /(?:(?<![\p{L}\p{N}_.,:\\])|(?<=\d ?[xX]))(?:\d{1,3}(?:[ \u00a0\u202f\u2009]\d{3}){1,5}(?!\d)(?:\.\d+)?|\d{1,3}(?:,\d{3}){1,5}(?!\d)(?:\.\d+)?|\d+,\d+|\d+(?:\.\d+)?|\.\d+)(?![.,]?\d)/gu;

const labels =
  /(?:^|[^\p{L}])(?:fig(?:ure|\.)?|tables?|sections?|questions?|q\.?|parts?|steps?|pages?|p\.|chapter|year|class|group|room|lab|version|no\.?|appendix|equations?|eq\.|exercises?|tasks?|activity|grade|option)[ \u00a0]?$/iu;

function valueAt(text: string, from: number, written: string, before: Value | undefined): Value | null {
  if (from > 0 && /[-\u2013\u2010]/u.test(text.charAt(from - 1)) && /\p{L}/u.test(text.charAt(from - 2))) {
    // `RA-04` is a name, `0 V-1.5 V` a range.
    if (before?.unit?.to !== from - 1) return null;
  }
  if (/^\d+$/u.test(written) && labels.test(text.slice(Math.max(0, from - 14), from))) return null;
  const number = numberOf(text, from, written);
  const gap = gapAt(text, number.to);
  const unit = isJoinedName(text, number, gap) ? null : unitReading(text, number.to + gap.length);
  const fitting = unit !== null && fits(text, { number, gap, unit }) ? unit : null;
  return { from, to: fitting?.to ?? number.to, number, gap: fitting === null ? '' : gap, unit: fitting };
}

function numberOf(text: string, from: number, written: string): WrittenNumber {
  const end = from + written.length;
  const comma = !written.includes(',')
    ? null
    : /^[1-9]\d{0,2}(?:,\d{3})+(?:\.\d+)?$/u.test(written)
      ? 'groups'
      : 'decimal';
  const digits = (comma === 'decimal' ? written.replace(',', '.') : written.replace(/[^\d.]/gu, '')).replace(
    /^\./u,
    '0.',
  );
  const power = powerAt(text, end);
  return {
    from,
    to: power?.to ?? end,
    digits,
    decimals: digits.split('.')[1]?.length ?? 0,
    comma,
    spaced: /[^\d.,]/u.test(written),
    power: power?.power ?? null,
  };
}

const timesTen =
  /([ \u00a0]?)([*xX×·⋅])([ \u00a0]?)10(\^\{?[-\u2212\u2013+]?\d{1,3}\}?|[⁻⁺]?[⁰¹²³⁴⁵⁶⁷⁸⁹]{1,3})(?![\d^])/uy;
const letterE = /[eE]([-\u2212+]\d{1,2})(?![\p{L}\p{N}.])/uy;

function powerAt(text: string, from: number): { readonly power: PowerOfTen; readonly to: number } | null {
  timesTen.lastIndex = from;
  const times = timesTen.exec(text);
  if (times !== null) {
    const [whole, left, sign, space, power = ''] = times;
    const right = sign === '×' && left !== '' && space !== '' && /^[⁻⁺⁰-⁹¹²³]/u.test(power);
    return {
      power: { from, text: ` × 10${raisedPower(power)}`, right, letter: false },
      to: from + whole.length,
    };
  }
  letterE.lastIndex = from;
  const e = letterE.exec(text);
  if (e === null) return null;
  const [whole, power = ''] = e;
  return {
    power: { from, text: ` × 10${raisedPower(power)}`, right: false, letter: true },
    to: from + whole.length,
  };
}

function gapAt(text: string, at: number): string {
  const sign = text.charAt(at);
  if (/[ \u00a0\u202f\u2009\n-]/u.test(sign)) return sign;
  return '';
}

/** `3A`, `20s`, `12V` behind a word of a class: with one letter joined to it, a whole number may be a name. */
function isJoinedName(text: string, { to, digits }: WrittenNumber, gap: string): boolean {
  if (gap !== '' || digits.includes('.')) return false;
  return /^(?:[ACFGJKNWsgh])(?![\p{L}\p{N}/⁻])/u.test(text.slice(to, to + 2));
}

type Candidate = Pick<Value, 'number' | 'gap'> & { readonly unit: UnitReading };

/** Where a word is a unit only in the right company. */
function fits(text: string, { number, gap, unit }: Candidate): boolean {
  const written = text.slice(unit.from, unit.to);
  if (gap === '-') return hyphenated(written, unit);
  const after = text.slice(unit.to, unit.to + 12);
  if (gap === '' && written.length === 1 && /^[ \u00a0](?:class|set|group|pupils|students)/u.test(after))
    return false;
  if (unit.slips[0]?.kind === 'prefix alone') return !/^[ \u00a0-](?:run|race|word|people|step)/u.test(after);
  // A lone `v` may stand for versus or velocity: "3 v 4", "Figure 5 v x", "2 v = …".
  if (written === 'v') return !/^[.]?[ \u00a0]?[\p{N}=(]|^\.\S|^[ \u00a0][\p{L}](?!\p{L})/u.test(after);
  if (gap === '\n' && unit.slips.length > 0) return false;
  // "12 A level pupils", "2 C batteries": a capital that names what follows.
  if (/^[AC]$/u.test(written))
    return !/^[ \u00a0-]+(?:levels?|cells?|batter|classes|grades?|sized?)/iu.test(after);
  // "1 in 2 h" is a time, "2 H" nothing; decades: "the 1970 s".
  return !(written === 's' && number.digits.length === 4);
}

function hyphenated(written: string, unit: UnitReading): boolean {
  return unit.named || /^(?:[µμmk]?V|[µμm]A|[kM]?Ω|[mc]?m|[kM]?Hz|W)$/u.test(written);
}
