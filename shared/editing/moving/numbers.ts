/** Lengths and coordinates as written, moved by whole mm: the unit and the decimals that stand there are kept. */
import type { Coordinates, Value } from '../../block/tree.ts';
import type { TextEdit } from '../../findings/finding.ts';
import { shifted } from '../../quantity/decimal.ts';
import { numberAt, unitAfter } from '../../quantity/read.ts';
import type { Span } from '../../text/span.ts';

/** A coordinate that was not written as a number before: to 0.01 mm. */
export const newCoordinate = (mm: number): number => Math.round(mm * 100) / 100 + 0;

export const pairText = (x_mm: number, y_mm: number): string =>
  `(${newCoordinate(x_mm)}, ${newCoordinate(y_mm)}) mm`;

/** The digits of a length with its own unit, moved. */
export function movedLength(source: string, value: Value, by_mm: number): TextEdit {
  return movedNumber(source, value, by_mm, 0);
}

/** The digits of some coordinates, moved. A pair without a unit shares that of the next one that has one. */
export function movedCoordinates(
  source: string,
  pairs: readonly Coordinates[],
  by: { readonly x: number; readonly y: number },
): readonly TextEdit[] {
  const exponents = sharedExponents(source, pairs);
  return pairs.flatMap(({ x, y }, i) => {
    const exponent = exponents[i] ?? 0;
    return [
      ...(by.x === 0 ? [] : [movedNumber(source, x, by.x, exponent)]),
      ...(by.y === 0 ? [] : [movedNumber(source, y, by.y, exponent)]),
    ];
  });
}

/** Number and unit as written; `unit` null where the number shares another's. */
export interface Written {
  /** Of the digits with their sign, in the file. */
  readonly digitsSpan: Span;
  readonly digits: string;
  /** Exponent of its own unit: 10 to this of the working unit. */
  readonly exponent: number | null;
}

export function writtenNumber(source: string, { span }: Value): Written | null {
  const text = source.slice(span.from, span.to);
  const number = numberAt(text, 0);
  if (number === null) return null;
  return {
    digitsSpan: { from: span.from + number.span.from, to: span.from + number.span.to },
    digits: number.digits,
    exponent: unitAfter(text, number.span.to)?.unit.exponent ?? null,
  };
}

/** Digits of a number with at least so many decimals, never with a power of ten. */
export function plainDigits(value: number, decimals: number): string {
  const size = String(Math.abs(value));
  const exact = size.includes('e') ? Math.abs(value).toFixed(12).replace(/0+$/u, '') : size;
  const [whole = '0', fraction = ''] = exact.split('.');
  const kept = fraction.padEnd(decimals, '0');
  return `${value < 0 ? '-' : ''}${kept === '' ? whole : `${whole}.${kept}`}`;
}

function movedNumber(source: string, value: Value, by_mm: number, shared: number): TextEdit {
  const written = writtenNumber(source, value);
  if (written === null) return { span: value.span, text: `${newCoordinate(value.value + by_mm)} mm` };
  const { digitsSpan, digits, exponent } = written;
  const moved_mm = Number((value.value + by_mm).toFixed(9));
  const text = plainDigits(shifted(moved_mm, -(exponent ?? shared)), (digits.split('.')[1] ?? '').length);
  const sign = source.slice(digitsSpan.from, digitsSpan.to).includes('\u2212') ? '\u2212' : '-';
  return { span: digitsSpan, text: text.replace('-', sign) };
}

/** For each pair the exponent of the unit behind it, or behind the next one that has one. */
function sharedExponents(source: string, pairs: readonly Coordinates[]): readonly number[] {
  const exponents: number[] = [];
  let known = 0;
  for (const { span } of [...pairs].reverse()) {
    const text = source.slice(span.from, span.to);
    known = unitAfter(text, text.lastIndexOf(')') + 1)?.unit.exponent ?? known;
    exponents.unshift(known);
  }
  return exponents;
}
