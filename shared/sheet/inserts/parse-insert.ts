/** Parses one insert, `?{…}` or `!{…}`, as far as its text alone tells. Total: what cannot be read is a broken insert with findings. */
import { nearest } from '../../block/nearest.ts';
import type { Finding } from '../../findings/finding.ts';
import { likelyUnits, unitOf } from '../../quantity/units.ts';
import type { Span } from '../../text/span.ts';
import type { InsertHead, Reference } from '../sheet.ts';
import { figureWords, isFigureWord, readFigure } from './figures.ts';
import { InsertReader } from './insert-reader.ts';
import { asReference, type Path, readPath, readReference } from './references.ts';

export interface InsertReading {
  readonly head: InsertHead;
  readonly noUnit: boolean;
  readonly findings: readonly Finding[];
}

/** Words that an insert may begin with. */
export const insertHeads: readonly string[] = [
  ...figureWords,
  'blank',
  'range',
  'gradient',
  'mean strength',
  'p.d.',
  'current',
  'resistance',
];

/** True for what stands alone in a paragraph, as a table or figure. */
export function isFigure(head: InsertHead): boolean {
  return head.kind === 'readings' || head.kind === 'drawing' || head.kind === 'later';
}

/** `written` is the insert with its braces; `fileSpan` turns offsets in it into a span of the file. */
export function parseInsert(
  written: string,
  closed: boolean,
  fileSpan: (from: number, to: number) => Span,
): InsertReading {
  const reader = new InsertReader(written, closed, fileSpan);
  if (!closed) {
    const end = readableEnd(written);
    reader.report('insert-unclosed', {
      span: reader.whole(),
      message: 'This insert has no closing brace.',
      fixes: [
        {
          title: 'Close it here',
          edits: [{ span: reader.span(end, end), text: '}' }],
          certain: false,
        },
      ],
    });
  }
  const head = closed ? readHead(reader) : null;
  const noUnit = head !== null && !isFigure(head) && readNoUnit(reader);
  if (head !== null && !reader.atEnd) unexpected(reader);
  const stands = head !== null && reader.findings.every(({ severity }) => severity !== 'error');
  if (stands) {
    const formed = noUnit && head.kind === 'reading' && head.form === 'value';
    return { head: formed ? { ...head, form: 'no unit' } : head, noUnit, findings: reader.findings };
  }
  const message = reader.findings[0]?.message ?? 'This insert cannot be read.';
  return { head: { kind: 'broken', message }, noUnit: false, findings: reader.findings };
}

/** Where the longest beginning ends that could be read as an insert; else the end. */
function readableEnd(written: string): number {
  const ends = [...written.slice(0, longestInsert).matchAll(/(?<=[\p{L}\p{Nd}"²])(?=[\s.,;:!?)]|$)/gu)].map(
    ({ index }) => index,
  );
  const readable = (end: number): boolean =>
    parseInsert(`${written.slice(0, end)}}`, true, (from, to) => ({ from, to })).head.kind !== 'broken';
  return ends.reverse().find(readable) ?? written.length;
}

/** Longer ones are not looked for, characters. */
const longestInsert = 200;

function readHead(reader: InsertReader): InsertHead | null {
  if (reader.atEnd) {
    return reader.report('insert-form', {
      span: reader.whole(),
      message: 'This insert is empty. `?{M}` asks for the reading at M.',
    });
  }
  const figure = reader.peek().text;
  if (isFigureWord(figure)) return readFigure(reader, figure);
  for (const [word, read] of valueHeads) {
    if (seesHead(reader, word)) return read(reader);
  }
  return readNamed(reader);
}

/** Heads of values that stand in a sentence, in the order in which they are tried. */
const valueHeads: readonly (readonly [RegExp, (reader: InsertReader) => InsertHead | null])[] = [
  [/(?:p\.\s?d\.?|pd)(?=\s+\S+\s+to\s)|p\.\s?d\.?(?!\S)/uy, difference],
  [/mean\s+strength(?![\p{L}\p{N}.-])/uy, meanStrength],
  [/gradient(?=\s|$)/uy, gradient],
  [/range(?=\s|$)/uy, range],
  [/blank(?=\s|$)/uy, blank],
  [/current(?=\s*(?:,|$))/uy, () => ({ kind: 'current', of: null })],
  [/resistance(?=\s*(?:,|$))/uy, () => ({ kind: 'resistance', of: null })],
];

function seesHead(reader: InsertReader, pattern: RegExp): boolean {
  return reader.takePattern(pattern) !== null;
}

function difference(reader: InsertReader): InsertHead | null {
  reader.take('from');
  const message = 'A p.d. lies between two names: `?{p.d. M to K}`.';
  const from = readReference(reader, message);
  if (from === null) return null;
  if (!reader.take('to')) return reader.report('insert-form', { span: reader.restSpan(), message });
  const to = readReference(reader, message);
  return to === null ? null : { kind: 'difference', from, to };
}

function meanStrength(reader: InsertReader): InsertHead | null {
  const form = 'A mean strength is `?{mean strength A from 0 mm to 5 mm}`.';
  reader.take('of');
  const row = readReference(reader, form);
  if (row === null) return null;
  if (!reader.take('from')) return reader.report('insert-form', { span: reader.restSpan(), message: form });
  const from = reader.quantity('length', form);
  if (from === null) return null;
  if (!reader.take('to')) return reader.report('insert-form', { span: reader.restSpan(), message: form });
  const to = reader.quantity('length', form);
  if (to === null) return null;
  if (to === from) {
    return reader.report('insert-form', {
      span: reader.whole(),
      message: 'The two places of a mean strength are the same.',
    });
  }
  return { kind: 'mean strength', row, from_mm: from, to_mm: to };
}

function gradient(reader: InsertReader): InsertHead | null {
  reader.take('of');
  const row = readReference(reader, 'The gradient of which row? `?{gradient A}`');
  return row === null ? null : { kind: 'gradient', row };
}

function range(reader: InsertReader): InsertHead | null {
  reader.take('of');
  const of = readReference(reader, 'The range of which reading? `?{range M}`');
  return of === null ? null : { kind: 'range', of };
}

/** `blank`, `blank V`, `blank 60 mm`, `blank 60 mm V`. */
function blank(reader: InsertReader): InsertHead | null {
  let length: number | null = null;
  if (reader.peek().kind === 'number') {
    length = reader.quantity('length', '');
    if (length === null) return null;
    if (length <= 0) {
      return reader.report('insert-form', { span: reader.whole(), message: 'A blank has a length.' });
    }
  }
  const written = reader.rest.replace(/\s*,\s*no\s+unit$/u, '');
  if (written === '') return { kind: 'blank', unit: null, length_mm: length };
  const { from } = reader.peek();
  const unit = unitOf(written)?.symbol;
  const likely = likelyUnits(written, null).map(({ symbol }) => symbol);
  const span = reader.span(from, from + written.length);
  reader.position = from + written.length;
  if (unit !== undefined) return { kind: 'blank', unit, length_mm: length };
  if (likely.length === 0 && /^[\p{L}°%µμΩ/²³⁻¹·\s]{1,12}$/u.test(written)) {
    return { kind: 'blank', unit: written, length_mm: length };
  }
  return reader.report('insert-form', {
    span,
    message: `\`${written}\` is no unit. A blank is \`?{blank V}\` or \`?{blank 60 mm}\`.`,
    fixes: likely.map((text) => ({ title: `Write ${text}`, edits: [{ span, text }], certain: false })),
  });
}

/** What begins with a name: a reading, a current, a place along a row. */
function readNamed(reader: InsertReader): InsertHead | null {
  const word = reader.peek();
  const path = readPath(reader, 'An insert begins with a name or with one of its words.');
  if (path === null) return null;
  const last = path.words.at(-1);
  if (path.words.length > 1 && last === 'strength') return ofShorter(reader, path, strengthOf);
  if (path.words.length > 1 && last === 'current') return ofShorter(reader, path, currentOf);
  if (path.words.length > 1 && last === 'resistance') return ofShorter(reader, path, resistanceOf);
  const name = asReference(reader, path);
  if (name === null) return null;
  if (reader.take('at')) {
    const distance = reader.quantity('length', 'At which distance? `?{A at 30 mm}`');
    return distance === null ? null : { kind: 'along', row: name, distance_mm: distance };
  }
  if (reader.takeWords('of', 'V0')) return { kind: 'reading', of: name, form: 'of V0' };
  if (!reader.atEnd && !reader.sees(',') && path.words.length === 1) {
    return misspelt(reader, word.text, reader.span(word.from, word.to));
  }
  return { kind: 'reading', of: name, form: 'value' };
}

const strengthOf = (of: Reference): InsertHead => ({ kind: 'reading', of, form: 'strength' });
const currentOf = (of: Reference): InsertHead => ({ kind: 'current', of });
const resistanceOf = (of: Reference): InsertHead => ({ kind: 'resistance', of });

/** `bars.M` of `bars.M.strength`. */
function ofShorter(reader: InsertReader, path: Path, make: (of: Reference) => InsertHead): InsertHead | null {
  const dropped = path.words.at(-1)?.length ?? 0;
  const of = asReference(reader, {
    words: path.words.slice(0, -1),
    from: path.from,
    to: path.to - dropped - 1,
  });
  return of === null ? null : make(of);
}

function readNoUnit(reader: InsertReader): boolean {
  const before = reader.position;
  reader.take(',');
  if (reader.takeWords('no', 'unit') || reader.takeWords('no', 'units')) return true;
  reader.position = before;
  return false;
}

function misspelt(reader: InsertReader, word: string, span: Span): null {
  const meant = nearest(word, insertHeads);
  const question = meant[0] === undefined ? '' : ` \`${meant[0]}\`?`;
  return reader.report('insert-head', {
    span,
    message: `No insert begins with \`${word}\`.${question}`,
    hints: meant.length > 0 ? [] : [`An insert begins with a name, or with ${insertHeads.join(', ')}.`],
    fixes: meant.map((text) => ({ title: `Write ${text}`, edits: [{ span, text }], certain: false })),
  });
}

function unexpected(reader: InsertReader): void {
  if (reader.findings.some(({ severity }) => severity === 'error')) return;
  reader.report('insert-form', {
    span: reader.restSpan(),
    message: `What does “${reader.rest}” mean here?`,
  });
}
