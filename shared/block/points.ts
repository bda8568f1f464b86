/** Reads points: coordinates in round brackets, the centre of the paper or of an electrode. */
import type { Fix } from '../findings/finding.ts';
import { type Digits, inUnit, numberAt, unitAfter } from '../quantity/read.ts';
import { type Unit, unitOf } from '../quantity/units.ts';
import type { Span } from '../text/span.ts';
import type { LineReader } from './line-reader.ts';
import type { CentrePoint, Coordinates, Point, Value } from './tree.ts';
import { name, needsWord, quantity, rewrite, takeNumber, takeUnit } from './values.ts';

export function point(line: LineReader): Point | null {
  if (seesCentre(line)) return centre(line);
  if (seesPair(line)) return coordinates(line);
  const bare = barePair(line);
  if (bare !== null) return unbracketed(line, bare);
  return needsWord(
    line,
    ['centre'],
    'Here stands a point: `(60, 80) mm`, `centre`, or `centre of` an electrode.',
  );
}

export function seesPoint(line: LineReader): boolean {
  return seesCentre(line) || seesPair(line);
}

export function seesPair(line: LineReader): boolean {
  return line.peek().text === '(';
}

/** True for `centre`; in another spelling only where nothing has that name. */
function seesCentre(line: LineReader): boolean {
  if (line.sees('centre of')) return true;
  return line.sees('centre') && (line.peek().text === 'centre' || !line.context.names.has(line.peek().text));
}

/** One pair with its unit. */
export function coordinates(line: LineReader): Coordinates | null {
  return points(line, 1)?.[0] ?? null;
}

/** `(X, Y) (X, Y) … mm`: pairs without a unit take the one that follows later. */
export function corners(line: LineReader): readonly Coordinates[] | null {
  return points(line, Number.POSITIVE_INFINITY);
}

interface BarePair {
  readonly from: number;
  readonly to: number;
  /** As it should stand: `(40, 95) mm`. */
  readonly written: string;
}

/** Coordinates without brackets, or in others: `40, 95 mm`, `[40, 95] mm`. */
export function barePair(line: LineReader): BarePair | null {
  const from = line.peek().from;
  const [all, x, , y, unit] = barePattern.exec(line.text.slice(from, from + 60)) ?? [];
  if (all === undefined || x === undefined || y === undefined) return null;
  return { from, to: from + all.length, written: `(${x}, ${y}) ${unit ?? 'mm'}` };
}

const barePattern =
  /^[[{]?\s*([+\-\u2212]?[\d.]+)\s*(\p{L}*)\s*,\s*([+\-\u2212]?[\d.]+)(?:\s*[\]}])?(?:\s*(mm|cm|m)(?![\p{L}\d]))?(?:\s*[\]}])?/u;

export function unbracketed(line: LineReader, { from, to, written }: BarePair): null {
  return line.report('coordinates-form', {
    span: line.span(from, to),
    message: 'Coordinates stand in round brackets.',
    fixes: [rewrite(line, { from, to }, written, written)],
  });
}

interface Half {
  readonly digits: Digits;
  /** Written inside the brackets. */
  readonly value: Value | null;
}
interface Pair {
  readonly x: Half;
  readonly y: Half;
  readonly span: Span;
  unit: Unit | null;
}

function centre(line: LineReader): CentrePoint | null {
  const from = line.pieces.length;
  if (!takeCentreOfPaper(line) && line.takeWord('centre of')) {
    const of = name(line, 'an electrode');
    return of === null ? null : { kind: 'centre', of, span: line.spanFrom(from) };
  }
  if (line.pieces.length === from) line.takeWord('centre');
  return { kind: 'centre', of: null, span: line.spanFrom(from) };
}

/** `centre of the paper` is `centre`. */
function takeCentreOfPaper(line: LineReader): boolean {
  const { from } = line.peek();
  const pattern = /^(?:the\s+)?\S+\s+of\s+the\s+paper(?![\p{L}\p{N}-])/iu;
  const words = pattern.exec(line.text.slice(from, from + 60))?.[0];
  if (words === undefined) return false;
  line.take('word', from, from + words.length, 'centre');
  return true;
}

function points(line: LineReader, most: number): readonly Coordinates[] | null {
  const pairs: Pair[] = [];
  while (pairs.length < most && seesPair(line)) {
    const read = pair(line);
    if (read === null) return null;
    pairs.push(read);
    if (most > 1 && line.lookAhead(() => nextIsPair(line))) line.skipCommas();
  }
  const last = pairs.at(-1);
  if (last === undefined) return null;
  // From the last to the first: a unit serves the pairs before it.
  let unit: Unit | null = null;
  for (const read of [...pairs].reverse()) {
    unit = read.unit ?? unit;
    read.unit = unit;
  }
  if (unit === null || last.unit === null) reportNoUnit(line, pairs);
  return pairs.map((read) => ({
    kind: 'coordinates',
    x: inUnitOf(line, read.x, read.unit),
    y: inUnitOf(line, read.y, read.unit),
    span: read.span,
  }));
}

function nextIsPair(line: LineReader): boolean {
  line.skipCommas();
  return seesPair(line);
}

function reportNoUnit(line: LineReader, pairs: readonly Pair[]): void {
  const bare = pairs.some((read) => read.unit === null && (read.x.value === null || read.y.value === null));
  const last = pairs.at(-1);
  if (!bare || last === undefined || line.failed) return;
  const at = { from: line.offset, to: line.offset };
  const inside = pairs.length === 1 ? unitInside(line, last) : null;
  if (inside !== null) {
    line.report('unit-missing', {
      span: last.span,
      message: 'The unit of both coordinates stands behind the bracket, or each has its own.',
      fixes: [inside],
    });
    return;
  }
  line.report('unit-missing', {
    span: last.span,
    message: 'Coordinates need their unit: `(60, 80) mm`.',
    fixes: [
      rewrite(line, at, ' mm', 'mm behind the bracket'),
      rewrite(line, at, ' cm', 'cm behind the bracket'),
    ],
  });
}

/** `(40, 95 mm)`: the one unit goes behind the bracket. */
function unitInside(line: LineReader, { x, y, span }: Pair): Fix | null {
  const withUnit = x.value ?? y.value;
  const half = x.value === null ? y : x;
  if (withUnit === null) return null;
  const to = withUnit.span.to - line.line.at;
  const unit = line.text.slice(half.digits.span.to, to).trim();
  const written = `(${x.digits.digits}, ${y.digits.digits}) ${unit}`;
  return rewrite(
    line,
    { from: span.from - line.line.at, to: span.to - line.line.at },
    written,
    written,
    true,
  );
}

function inUnitOf(line: LineReader, half: Half, unit: Unit | null): Value {
  if (half.value !== null) return half.value;
  const span = line.span(half.digits.span.from, half.digits.span.to);
  return { ...inUnit(half.digits, unit ?? millimetre), span };
}

const millimetre: Unit = unitOf('mm') ?? { symbol: 'mm', dimension: 'length', exponent: 0, times: 1 };

const digitsPattern = String.raw`[+\-\u2212]?\s?(?:\d+(?:\.\d+)?|\.\d+)`;
const halfPattern = String.raw`\s*${digitsPattern}\s*(?:\p{L}{1,12}\s*)?`;
const pairPattern = new RegExp(String.raw`\(${halfPattern},${halfPattern}(\)?)`, 'uy');

function pair(line: LineReader): Pair | null {
  const open = line.peek();
  pairPattern.lastIndex = open.from;
  const match = pairPattern.exec(line.text);
  const rest = match === null ? '' : line.text.charAt(pairPattern.lastIndex);
  if (match === null || (match[1] === '' && rest === ',')) return badPair(line);
  line.take('open', open.from, open.to);
  const x = half(line);
  line.takeSign(',', 'comma');
  const y = x === null ? null : half(line);
  if (x === null || y === null) return null;
  closePair(line);
  const span = line.span(open.from, line.offset);
  const after = unitAfter(line.text, line.offset);
  if (after === null) return { x, y, span, unit: null };
  if (after.unit.dimension !== 'length') return wrongUnit(line, after);
  takeUnit(line, after.unit, after.span);
  return { x, y, span: line.span(open.from, line.offset), unit: after.unit };
}

function closePair(line: LineReader): void {
  if (line.takeSign(')', 'close')) return;
  const at = { from: line.offset, to: line.offset };
  line.report('coordinates-form', {
    span: line.span(at.from, at.to),
    message: 'The bracket is not closed.',
    fixes: [rewrite(line, at, ')', 'the closing bracket', true)],
  });
}

function half(line: LineReader): Half | null {
  const digits = numberAt(line.text, line.offset);
  if (digits === null) return null;
  const follows = /^\s*\p{L}/u.test(line.text.slice(digits.span.to, digits.span.to + 40));
  if (!follows) {
    takeNumber(line, digits.span);
    return { digits, value: null };
  }
  const value = quantity(line, 'length');
  return value === null ? null : { digits, value };
}

function wrongUnit(line: LineReader, after: { readonly unit: Unit; readonly span: Span }): null {
  const fixes = [rewrite(line, after.span, 'mm', 'mm', false)];
  return line.report('unit-dimension', {
    span: line.span(after.span.from, after.span.to),
    message: `Coordinates are lengths, not in ${after.unit.symbol}.`,
    fixes,
  });
}

/** A bracket that holds no pair: three numbers are a decimal comma, two without a comma want one. */
function badPair(line: LineReader): null {
  const open = line.peek();
  const closing = line.text.indexOf(')', open.to);
  const to = closing < 0 ? line.text.length : closing;
  const inner = { from: open.to, to };
  const whole = line.span(open.from, closing < 0 ? to : to + 1);
  const text = line.text.slice(inner.from, Math.min(inner.to, inner.from + 200));
  const points = decimalPoints(text);
  line.take('open', open.from, closing < 0 ? to : to + 1);
  if (points.length > 0) {
    const certain = points.length === 1;
    const fixes = points.map((written) => rewrite(line, inner, written, `(${written})`, certain));
    return line.report('decimal-comma', {
      span: whole,
      message:
        'A decimal comma in coordinates: the decimal sign is a point, the comma stands between x and y.',
      fixes,
    });
  }
  return line.report('coordinates-form', {
    span: whole,
    message: 'Coordinates are a pair with a comma: `(60, 80) mm`, x first, from the bottom left corner.',
    fixes: missingComma(line, inner, text),
  });
}

/** Ways of reading three or four numbers between commas as two with decimals. */
function decimalPoints(inner: string): readonly string[] {
  const parts = inner.split(',').map((part) => part.trim());
  const whole = (part: string | undefined): boolean => part !== undefined && /^\d+$/u.test(part);
  const start = (part: string | undefined): boolean =>
    part !== undefined && /^[+\-\u2212]?\s?\d+$/u.test(part);
  const number = (part: string | undefined): boolean => part !== undefined && fullNumber.test(part);
  const [a, b, c, d] = parts;
  if (parts.length === 4) return start(a) && whole(b) && start(c) && whole(d) ? [`${a}.${b}, ${c}.${d}`] : [];
  if (parts.length !== 3) return [];
  const first = start(a) && whole(b) && number(c) ? [`${a}.${b}, ${c}`] : [];
  const second = number(a) && start(b) && whole(c) ? [`${a}, ${b}.${c}`] : [];
  // A comma with a space behind it separates, one without does not.
  const [gapOne, gapTwo] = inner
    .split(',')
    .slice(1)
    .map((part) => /^\s/u.test(part));
  if (gapOne === false && gapTwo === true) return first;
  if (gapOne === true && gapTwo === false) return second;
  return [...first, ...second];
}

const fullNumber = new RegExp(`^${digitsPattern}$`, 'u');
const twoNumbers = new RegExp(String.raw`^\s*(${digitsPattern})\s*[;\s]\s*(${digitsPattern})\s*$`, 'u');

function missingComma(line: LineReader, at: { from: number; to: number }, inner: string): readonly Fix[] {
  const [, x, y] = twoNumbers.exec(inner) ?? [];
  if (x === undefined || y === undefined) return [];
  return [rewrite(line, at, `${x}, ${y}`, `(${x}, ${y})`, true)];
}
