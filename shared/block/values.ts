/** Reads names, quantities, counts, sizes and directions from a line. */
import type { FindingCode } from '../findings/catalogue.ts';
import type { Fix } from '../findings/finding.ts';
import type { Dimension } from '../quantity/quantity.ts';
import {
  type Digits,
  dimensionWords,
  inUnit,
  numberAt,
  type Refusal,
  type RefusalReason,
  readQuantity,
  unitAfter,
} from '../quantity/read.ts';
import { type Unit, usualUnits } from '../quantity/units.ts';
import type { LineReader } from './line-reader.ts';
import { nearest } from './nearest.ts';
import { isName } from './tokens.ts';
import type { Count, Direction, Name, Size, Value } from './tree.ts';

/** A quantity of the dimension. One that is refused is reported, and its number stands in so that the line can be read on. */
export function quantity(line: LineReader, dimension: Dimension): Value | null {
  const reading = readQuantity(line.text, line.offset, dimension);
  if (reading.kind === 'none') {
    const usual = usualUnits[dimension].map((unit) => `5 ${unit}`.replace(' °', '°')).join(' or ');
    const message = `Here stands ${dimensionWords[dimension]}, such as ${usual}.`;
    return line.report('part-missing', { span: nextToken(line), message });
  }
  if (reading.kind === 'refused') {
    report(line, reading.refusal);
    line.take('number', reading.span.from, reading.span.to);
    return { value: 1, dimension, span: line.span(reading.span.from, reading.span.to) };
  }
  takeNumber(line, { from: reading.span.from, to: reading.unitSpan.from });
  takeUnit(line, reading.unit, reading.unitSpan);
  return { ...reading.quantity, span: line.span(reading.span.from, reading.span.to) };
}

/** A quantity that must be more than zero. */
export function positive(line: LineReader, dimension: Dimension): Value | null {
  const value = quantity(line, dimension);
  if (value !== null && value.value <= 0) {
    line.report('number-positive', { span: value.span, message: 'This must be more than zero.' });
  }
  return value;
}

/** A whole number of something, at least one. */
export function count(line: LineReader, what: string): Count | null {
  const number = numberAt(line.text, line.offset);
  if (number === null) {
    return line.report('part-missing', { span: nextToken(line), message: `How many ${what}?` });
  }
  const span = line.span(number.span.from, number.span.to);
  line.take('number', number.span.from, number.span.to);
  const value = Number(number.digits);
  if (!Number.isInteger(value)) {
    const whole = String(Math.max(1, Math.round(value)));
    const fixes = [rewrite(line, number.span, whole, `${whole} ${what}`)];
    return line.report('number-whole', { span, message: `Only whole numbers of ${what} make sense.`, fixes });
  }
  if (value < 1) line.report('number-positive', { span, message: `At least one of the ${what} is needed.` });
  return { value, span };
}

/** The name at this place; `what` it names is for the message. */
export function name(line: LineReader, what: string): Name | null {
  const token = line.peek();
  const span = line.span(token.from, token.to);
  if (token.kind !== 'word') {
    return line.report('name-missing', {
      span: nextToken(line),
      message: `Here stands the name of ${what}.`,
    });
  }
  if (!isName(token.text)) {
    const plain = token.text.replace(/[^\p{L}\p{M}\p{Nd}-]+/gu, '-').replace(/^[^\p{L}]+|-+$/gu, '');
    const fixes = plain === '' ? [] : [rewrite(line, token, plain, plain)];
    line.report('name-form', {
      span,
      message: `“${token.text}” cannot be a name: a letter first, then letters, digits and hyphens.`,
      fixes,
    });
  }
  line.take('name', token.from, token.to);
  return { text: token.text, span };
}

/** `W × H`, the unit shared where only the last has one, or `W wide, H high`. */
export function size(line: LineReader): Size | null {
  const from = line.pieces.length;
  const first = numberAt(line.text, line.offset);
  if (first !== null && byAt(line, first.span.to)) {
    takeNumber(line, first.span);
    takeBy(line);
    const height = positive(line, 'length');
    if (height === null) return null;
    const width = inShared(line, first, height);
    return { width, height, span: line.spanFrom(from) };
  }
  const one = positive(line, 'length');
  if (one === null) return null;
  if (takeBy(line)) {
    const height = positive(line, 'length');
    return height === null ? null : { width: one, height, span: line.spanFrom(from) };
  }
  return wideAndHigh(line, one, from);
}

/** True where a size begins among other numbers: behind the first one's unit stands "by", "wide" or "high". */
export function seesSize(line: LineReader): boolean {
  if (line.peek().kind !== 'number') return false;
  return line.lookAhead(() => {
    const number = numberAt(line.text, line.offset);
    if (number === null) return false;
    if (byAt(line, number.span.to)) return true;
    quantity(line, 'length');
    return byAt(line, line.offset) || line.seen(['wide', 'high']) !== null;
  });
}

export function direction(line: LineReader): Direction | null {
  const token = line.peek();
  const word = line.seen(directions);
  if (word !== null) {
    line.takeWord(word);
    return { word, angle_deg: angles[word], span: line.span(token.from, line.offset) };
  }
  if (numberAt(line.text, line.offset) !== null) {
    const angle = quantity(line, 'angle');
    return angle === null ? null : { word: null, angle_deg: angle.value, span: angle.span };
  }
  return needsWord(line, directions, 'Which way? `left`, `right`, `up`, `down`, or an angle such as 30°.');
}

export function seesDirection(line: LineReader): boolean {
  if (line.seen(directions) !== null) return true;
  const number = numberAt(line.text, line.offset);
  return number !== null && unitAfter(line.text, number.span.to)?.unit.dimension === 'angle';
}

/** Reports that one of some words is needed here: a misspelt one with a fix, otherwise what the message and the fixes say. */
export function needsWord(
  line: LineReader,
  words: readonly string[],
  message: string,
  otherwise: readonly Fix[] = [],
): null {
  const token = line.peek();
  const span = nextToken(line);
  const others = words.filter((word) => word !== token.text.toLowerCase());
  const near = token.kind === 'word' ? nearest(token.text, others) : [];
  const [first] = near;
  if (first === undefined) return line.report('part-missing', { span, message, fixes: otherwise });
  const fixes = near.map((word) => rewrite(line, token, word, word));
  const says = `“${token.text}” is not known here: \`${first}\`?`;
  return line.report('word-unknown', { span, message: says, fixes });
}

/** The fix that writes a word that was left out before what stands here. */
export function writeBefore(line: LineReader, word: string): Fix {
  const { from } = line.peek();
  return rewrite(line, { from, to: from }, `${word} `, `${word} before it`);
}

/** Span of the next token, or of the end of the line. */
export function nextToken(line: LineReader): { readonly from: number; readonly to: number } {
  const token = line.peek();
  return line.span(token.from, token.to);
}

export function takeNumber(line: LineReader, number: { readonly from: number; readonly to: number }): void {
  const written = line.text.slice(number.from, number.to).trimEnd();
  const text = written.replace(/\s/gu, '').replace(/^([+\-\u2212]?)\./u, '$10.');
  line.take('number', number.from, number.from + written.length, text);
}

export function takeUnit(
  line: LineReader,
  unit: Unit,
  at: { readonly from: number; readonly to: number },
): void {
  line.take('unit', at.from, at.to, unit.symbol);
}

/** A fix that writes `text` over offsets of the line. */
export function rewrite(
  line: LineReader,
  at: { readonly from: number; readonly to: number },
  text: string,
  shown: string,
  certain = false,
): Fix {
  return { title: `Write ${shown}`, edits: [{ span: line.span(at.from, at.to), text }], certain };
}

const directions = ['left', 'right', 'up', 'down'] as const;
const angles = { right: 0, up: 90, left: 180, down: 270 } as const;

const codes: Readonly<Record<RefusalReason, FindingCode>> = {
  inches: 'unit-inches',
  comma: 'decimal-comma',
  power: 'number-power',
  case: 'unit-capitals',
  missing: 'unit-missing',
  unknown: 'unit-unknown',
  dimension: 'unit-dimension',
};

function report(line: LineReader, refusal: Refusal): void {
  line.report(codes[refusal.reason], {
    span: line.span(refusal.span.from, refusal.span.to),
    message: refusal.message,
    fixes: refusal.rewritings.map((r) => rewrite(line, r.span, r.text, r.shown, r.certain)),
  });
}

/** "By" between two sizes: ×, * or an x that begins no word. */
const byPattern = /\s*(×|\*|by(?![\p{L}\p{N}_-])|[xX](?![\p{L}_-]))/uy;

function byAt(line: LineReader, from: number): boolean {
  byPattern.lastIndex = from;
  return byPattern.test(line.text);
}

function takeBy(line: LineReader): boolean {
  byPattern.lastIndex = line.offset;
  const sign = byPattern.exec(line.text)?.[1];
  if (sign === undefined) return false;
  line.take('by', byPattern.lastIndex - sign.length, byPattern.lastIndex, '×');
  return true;
}

/** The first number of `240 × 160 mm`, in the unit that the second one names. */
function inShared(line: LineReader, digits: Digits, second: Value): Value {
  const span = line.span(digits.span.from, digits.span.to);
  const unit = unitAfter(line.text, secondNumberEnd(line, second))?.unit;
  const value = unit === undefined ? { value: 1, dimension: second.dimension } : inUnit(digits, unit);
  if (value.value <= 0) line.report('number-positive', { span, message: 'This must be more than zero.' });
  return { ...value, span };
}

function secondNumberEnd(line: LineReader, second: Value): number {
  return numberAt(line.text, second.span.from - line.line.at)?.span.to ?? line.offset;
}

function wideAndHigh(line: LineReader, one: Value, from: number): Size | null {
  const first = line.seen(['wide', 'high']);
  if (first === null) {
    if (line.failed) return null;
    const message =
      'A size is width × height, such as 10 mm × 120 mm; a distance goes on with `right of`, `left of`, `above` or `below`.';
    return needsWord(line, ['wide', 'high', 'right', 'left', 'above', 'below'], message);
  }
  line.takeWord(first);
  line.skipCommas();
  line.takeWord('and');
  const two = positive(line, 'length');
  if (two === null) return null;
  const second = first === 'wide' ? 'high' : 'wide';
  if (!line.takeWord(second)) {
    return needsWord(line, [second], `Here stands \`${second}\`.`);
  }
  const span = line.spanFrom(from);
  return first === 'wide' ? { width: one, height: two, span } : { width: two, height: one, span };
}
