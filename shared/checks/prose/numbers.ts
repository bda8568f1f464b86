/** Rules over the digits of a quantity. */
import { found, type Passage, type RunRule, rewrite, type Setting } from './rule.ts';
import type { Value } from './values.ts';

/** Also where a cell holds nothing but the number. */
export const leadingZero: RunRule = ({ run, values }) =>
  values.flatMap(({ from, to, number, unit }) => {
    const alone = run.kind === 'cell' && run.text.trim() === run.text.slice(from, to);
    if (run.text.charAt(from) !== '.' || (unit === null && !alone)) return [];
    const menu = `0${run.text.slice(from, to)}`;
    return [
      found(
        'leading-zero',
        { run, from, to: number.to },
        {
          message: `A zero stands before the decimal point: ${menu}.`,
          fixes: rewrite({ run, from, to: from }, '0', menu, true),
        },
      ),
    ];
  });

export const textComma: RunRule = (passage) =>
  withComma(passage, 'decimal').map((value) => {
    const { run } = passage;
    const point = value.number.digits;
    const menu = point + run.text.slice(digitsEnd(value), value.to);
    // "1,5 V" could be a list that lacks its space; "0,75 V" could not.
    const certain = point.startsWith('0');
    const place = { run, from: value.from, to: digitsEnd(value) };
    return found('text-comma', place, {
      message: `The decimal sign of an English text is a point: ${menu}.`,
      fixes: rewrite(place, point, menu, certain),
    });
  });

export const thousandsComma: RunRule = (passage) =>
  withComma(passage, 'groups').map((value) => {
    const { run } = passage;
    const rest = run.text.slice(digitsEnd(value), value.to);
    const whole = grouped(value.number.digits, passage.setting);
    const written = run.text.slice(value.from, digitsEnd(value));
    const place = { run, from: value.from, to: digitsEnd(value) };
    const fixes = [...rewrite(place, whole, whole + rest, false)];
    if (/^\d+,\d+$/u.test(written)) {
      const point = written.replace(',', '.');
      fixes.push(...rewrite(place, point, point + rest, false));
    }
    return found('thousands-comma', place, {
      message: `A comma can be read as a decimal sign: ${whole + rest}.`,
      fixes,
    });
  });

export const digitGroups: RunRule = ({ run, values, setting }) =>
  values.flatMap((value) => {
    const { from, to, number, unit } = value;
    const whole = /^\d{4,}/u.exec(number.digits)?.[0];
    if (unit === null || number.comma !== null || whole === undefined) return [];
    const said = whole.length === 4;
    if (said ? setting.style['four-digits'] !== (number.spaced ? 'together' : 'grouped') : number.spaced)
      return [];
    const text = grouped(whole, setting);
    const end = from + whole.length + (number.spaced ? 1 : 0);
    const menu = text + run.text.slice(end, to);
    const place = { run, from, to: end };
    const message = said
      ? `The house style of four digits is ${menu}.`
      : `Many digits are easier to read in groups of three: ${menu}.`;
    const fixes = rewrite(place, text, menu, false);
    return [found('digit-groups', place, { message, fixes, ...(said && { severity: 'warning' }) })];
  });

export const timesSign: RunRule = ({ run, values }) =>
  values.flatMap(({ from, to, number, unit }) => {
    const { power } = number;
    if (power === null || power.right || (unit === null && power.letter)) return [];
    const menu = run.text.slice(from, power.from) + power.text + run.text.slice(number.to, to);
    const place = { run, from: power.from, to: number.to };
    return [
      found(
        'times-sign',
        { run, from, to: number.to },
        {
          message: `Numbers are multiplied with ×, and the power is raised: ${menu}.`,
          fixes: rewrite(place, power.text, menu, true),
        },
      ),
    ];
  });

/** Six figures come from a calculator, not from a bench; five if the text says of how few the data are. */
export const figuresMany: RunRule = ({ run, values }) =>
  values.flatMap((value) => {
    const { from, to, number, unit } = value;
    const measured =
      unit !== null && /^(?:potential|current|resistance|length|strength)$/u.test(unit.measure);
    const figures = significant(number.digits);
    if (!measured || number.decimals === 0 || number.power !== null || figures < 5) return [];
    const said = saidFigures(run.text.slice(to, to + 60));
    if (said === null && figures < 6) return [];
    const rounded = Number(number.digits).toPrecision(said ?? 3);
    if (/e/u.test(rounded)) return [];
    const place = { run, from, to: digitsEnd(value) };
    const menu = rounded + run.text.slice(digitsEnd(value), to);
    return [
      found(
        'figures-many',
        { run, from, to },
        {
          message: `${figures} significant figures are more than readings can give. ${menu}?`,
          fixes: rewrite(place, rounded, menu, false),
        },
      ),
    ];
  });

/** Commas count where a unit says that the number is a quantity. */
function withComma({ run, values }: Passage, comma: 'decimal' | 'groups'): readonly Value[] {
  return values.filter(
    ({ number, unit }) =>
      unit !== null && number.comma === comma && !/^0\d/u.test(run.text.slice(number.from)),
  );
}

/** Behind the digits, before a power of ten. */
function digitsEnd({ number }: Value): number {
  return number.power?.from ?? number.to;
}

/** 12 500, but 1500: four digits stay together, unless the house style has them in groups. */
function grouped(digits: string, { style }: Setting): string {
  const [whole = '', fraction] = digits.split('.');
  const least = style['four-digits'] === 'grouped' ? 4 : 5;
  const spaced = whole.length < least ? whole : whole.replace(/\B(?=(?:\d{3})+$)/gu, ' ');
  return fraction === undefined ? spaced : `${spaced}.${fraction}`;
}

export function significant(digits: string): number {
  return digits.replace('.', '').replace(/^0+/u, '').length;
}

function saidFigures(after: string): number | null {
  const said = /^[^.;\n]{0,30}?([1-4]) (?:s\.?f\.?|sig(?:nificant)?\.? fig)/iu.exec(after)?.[1];
  return said === undefined ? null : Number(said);
}
