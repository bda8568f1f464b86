/** Rules over two values that belong together: ranges, sides of a rectangle, one value in two units, uncertainties. */
import { significant } from './numbers.ts';
import { found, type Pair, type Passage, type RunRule, rewrite } from './rule.ts';
import { fix } from './run.ts';
import type { UnitReading } from './unit-reading.ts';
import type { Value } from './values.ts';

/** "0-1.5 V". A hyphen that could be a minus sign, with spaces round it, is asked about; a dash of the typesetter is a note. */
export const rangeDash: RunRule = (passage) =>
  passage.pairs.flatMap(({ first, second, between }) => {
    const { run } = passage;
    const { unit } = second;
    const dash = /^( ?)([-\u2010\u2013])\1$/u.exec(between);
    if (dash === null || unit === null || !rangeUnits(first, unit)) return [];
    if (Number(first.number.digits) >= Number(second.number.digits) && !differ(first, second)) return [];
    const before = run.text.slice(Math.max(0, first.from - 2), first.from);
    const after = run.text.slice(second.to, second.to + 2);
    // Part of a longer chain, or of a sum.
    if (/[-\u2013\u2212+×*/=]\s?$|:$/u.test(before) || /^\s?[-\u2013\u2212+×*/=:]/u.test(after)) return [];
    const insert = first.unit === null ? withSpace(unit) : '';
    const menu = `${run.text.slice(first.from, first.to)}${insert} to ${run.text.slice(second.from, second.to)}`;
    const place = { run, from: first.to, to: second.from };
    const typeset = dash[2] === '\u2013';
    return [
      found(
        'range-dash',
        { run, from: first.from, to: second.to },
        {
          ...(typeset ? { severity: 'note' as const } : {}),
          message: `A dash between values can be read as a minus sign: ${menu}.`,
          fixes: rewrite(place, `${insert} to `, menu, !typeset && dash[1] === ''),
        },
      ),
    ];
  });

/** Prefixes aside, both are of one kind. */
function rangeUnits(first: Value, unit: UnitReading): boolean {
  if (unit.named || unit.symbol === '%' || first.number.power !== null) return false;
  return first.unit === null || (first.unit.measure === unit.measure && !first.unit.named);
}

function differ(first: Value, second: Value): boolean {
  return first.unit !== null && first.unit.symbol !== second.unit?.symbol;
}

/** "10 x 16 cm". "2 × 1.5 V" counts cells, and "3 x 4 mm plugs" plugs. */
export const sidesUnit: RunRule = (passage) =>
  passage.pairs.flatMap(({ first, second, between }) => {
    const { run } = passage;
    const { unit } = second;
    const by = /^[ \u00a0]?([xX×*])[ \u00a0]?$/u.exec(between);
    if (by === null || unit?.measure !== 'length' || unit.named) return [];
    if (first.unit === null ? counts(run.text, first, second) : first.unit.measure !== 'length') return [];
    if (first.unit !== null && by[1] === '×') return [];
    const insert = first.unit === null ? ` ${unit.symbol}` : '';
    const menu = `${run.text.slice(first.from, first.to)}${insert} × ${run.text.slice(second.from, second.to)}`;
    const place = { run, from: first.to, to: second.from };
    return [
      found(
        'sides-unit',
        { run, from: first.from, to: second.to },
        {
          message: `Each side has its unit, and × stands between them: ${menu}.`,
          fixes: rewrite(place, `${insert} × `, menu, first.unit !== null),
        },
      ),
    ];
  });

/** A small whole number before things of that size. */
function counts(text: string, first: Value, second: Value): boolean {
  if (first.number.digits.includes('.') || Number(first.number.digits) > 24) return false;
  const next = /^[ \u00a0]([\p{L}-]+)/u.exec(text.slice(second.to, second.to + 24))?.[1];
  if (next === undefined) return false;
  return /s$|^(?:plug|lead|socket|wire|cable|hole|drill|screw|bolt|nail|pin|banana|crocodile|ruler|rule)/iu.test(
    next,
  );
}

/** "1 V 500 mV". Times and angles are told so by custom. */
export const oneUnit: RunRule = (passage) =>
  passage.pairs.flatMap(({ first, second, between }) => {
    const { run } = passage;
    const joined = oneNumber(first, second);
    if (!/^[ \u00a0]$/u.test(between) || joined === null || first.unit === null) return [];
    const text = `${joined} ${first.unit.symbol}`;
    const place = { run, from: first.from, to: second.to };
    return [
      found('one-unit', place, {
        message: `A value has one unit: ${text}.`,
        fixes: rewrite(place, text, text, false),
      }),
    ];
  });

const powers: Readonly<Record<string, number>> = { n: -9, µ: -6, m: -3, c: -2, '': 0, k: 3, M: 6 };

function oneNumber(first: Value, second: Value): string | null {
  const [a, b] = [unitParts(first.unit), unitParts(second.unit)];
  if (a === null || b === null || a.base !== b.base) return null;
  const places = a.power - b.power;
  const { digits } = second.number;
  if (places <= 0 || !/^\d+$/u.test(first.number.digits) || !/^\d+(?:\.\d+)?$/u.test(digits)) return null;
  const [whole = '', fraction = ''] = digits.split('.');
  return whole.length > places ? null : `${first.number.digits}.${whole.padStart(places, '0')}${fraction}`;
}

function unitParts(unit: UnitReading | null): { readonly base: string; readonly power: number } | null {
  const [, prefix = '', base] = /^([nµmckM]?)(V|A|Ω|m)$/u.exec(unit?.symbol ?? '') ?? [];
  const power = powers[prefix];
  return base === undefined || power === undefined || unit?.named === true ? null : { base, power };
}

/** "100±1 mm", "0.75 V ± 0.01". */
export const plusMinus: RunRule = (passage) =>
  passage.pairs.flatMap(({ first, second, between }) => {
    const { run } = passage;
    if (!isUncertainty(between) || digitsDiffer(passage, { first, second, between })) return [];
    const form = plusMinusForm(run.text, first, second);
    if (form === null) return [];
    const { unit, tail } = form;
    const a = number(run.text, first);
    const b = number(run.text, second);
    const text = `(${a} ± ${b}) ${unit.symbol}`;
    // The zero before a decimal point would go to the same place as the bracket.
    const certain = (second.gap !== '' || second.unit === null) && !a.startsWith('.');
    const inner = { run, from: first.number.to, to: second.from };
    const changes = [
      { run, from: first.from, to: first.from, text: '(' },
      { ...inner, text: ' ± ' },
      { run, from: second.number.to, to: second.number.to, text: tail },
    ];
    return [
      found(
        'plus-minus',
        { run, from: first.from, to: second.to },
        {
          message: `The unit holds for value and uncertainty alike: ${text}.`,
          fixes: fix(`Write ${text}`, changes, certain),
        },
      ),
    ];
  });

/** Which value has the unit, and what goes behind the second number; null where all is well. */
function plusMinusForm(
  text: string,
  first: Value,
  second: Value,
): { readonly unit: UnitReading; readonly tail: string } | null {
  const bracketed = text.charAt(first.from - 1) === '(';
  if (bracketed || (first.unit === null) === (second.unit === null)) return null;
  if (second.unit !== null) {
    if (second.unit.symbol === '%' || second.unit.named) return null;
    return { unit: second.unit, tail: second.gap === '' && second.unit.symbol !== '°' ? ') ' : ')' };
  }
  // "0.75 V ± 5 of the last digit": something follows that could be a unit of its own.
  const goesOn = /^[ \u00a0]?[\p{L}%°(]/u.test(text.slice(second.to, second.to + 2));
  return first.unit === null || first.unit.named || goesOn
    ? null
    : { unit: first.unit, tail: `) ${text.slice(first.unit.from, first.unit.to)}` };
}

/** "0.75 ± 0.013 V". Tolerances are not uncertainties: "100 mm ± 0.5 mm". */
export const uncertaintyDigits: RunRule = (passage) =>
  passage.pairs.flatMap((pair) => {
    if (!digitsDiffer(passage, pair)) return [];
    const { run } = passage;
    const { first, second } = pair;
    const unit = second.unit ?? first.unit;
    const bracketed = isBracketed(run.text, pair);
    const decimals = Math.min(first.number.decimals, second.number.decimals);
    const [a, b] = [first, second].map(({ number: { digits } }) => Number(digits).toFixed(decimals));
    const text = bracketed ? `${a} ± ${b}` : `(${a} ± ${b}) ${unit?.symbol}`;
    const place = { run, from: first.from, to: second.to };
    const known = bracketed || (unit !== null && run.text.charAt(first.from - 1) !== '(');
    return [
      found('uncertainty-digits', place, {
        message: `The last digits of a value and its uncertainty line up: ${text}.`,
        fixes: known && Number(b) !== 0 ? rewrite(place, text, text, false) : [],
      }),
    ];
  });

/** The uncertainty has more decimals than the value, or of two or more figures fewer. */
function digitsDiffer({ run }: Passage, { first, second, between }: Pair): boolean {
  if (!isUncertainty(between)) return false;
  if (first.unit === null && second.unit === null && !isBracketed(run.text, { first, second })) return false;
  if (first.unit !== null && second.unit !== null) return false;
  if (second.unit?.symbol === '%' || first.number.comma !== null || second.number.comma !== null)
    return false;
  const before = run.text.slice(Math.max(0, first.from - 30), first.from);
  if (/accept|allow|within|toleran/iu.test(before)) return false;
  const [value, uncertainty] = [first.number, second.number];
  if (uncertainty.decimals > value.decimals) return significant(uncertainty.digits) > 1;
  return uncertainty.decimals < value.decimals && uncertainty.decimals > 0;
}

/** "(0.75 ± 0.01) V": the unit behind the bracket holds for both. */
function isBracketed(text: string, { first, second }: Pick<Pair, 'first' | 'second'>): boolean {
  const bare = first.unit === null && second.unit === null;
  return (
    bare &&
    text.charAt(first.from - 1) === '(' &&
    /^\)[ \u00a0]?[\p{L}Ω°]/u.test(text.slice(second.to, second.to + 3))
  );
}

function isUncertainty(between: string): boolean {
  return /^[ \u00a0]?(?:±|\+\/[-\u2212])[ \u00a0]?$/u.test(between);
}

function number(text: string, { number: { from, to } }: Value): string {
  return text.slice(from, to);
}

function withSpace(unit: UnitReading): string {
  return unit.symbol === '°' ? '°' : ` ${unit.symbol}`;
}
