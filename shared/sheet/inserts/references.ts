/** Reads names in inserts: `M`, `bars.M`, `bars.M as "middle"`, and lists of them. */
import { isName } from '../../block/tokens.ts';
import type { Reference } from '../sheet.ts';
import type { InsertReader } from './insert-reader.ts';

/** The words of a dotted name, with their offsets in the insert; null with a finding where a word is no name. */
export interface Path {
  readonly words: readonly string[];
  readonly from: number;
  readonly to: number;
}

export function readPath(reader: InsertReader, missing: string): Path | null {
  const first = reader.peek();
  if (first.kind !== 'word') {
    return reader.report('insert-form', { span: reader.restSpan(), message: missing });
  }
  const words: string[] = [];
  let to = first.from;
  for (let next = first; next.kind === 'word'; next = reader.peek()) {
    if (words.length > 0 && next.from !== to) break;
    if (!isName(next.text)) return noName(reader, next.text, next.from, next.to);
    words.push(next.text);
    reader.position = next.to;
    to = next.to;
    if (reader.text.charAt(to) !== '.') break;
    to++;
    reader.position = to;
  }
  return { words, from: first.from, to: reader.position };
}

/** At most a setup and a name. */
export function readReference(reader: InsertReader, missing: string): Reference | null {
  const path = readPath(reader, missing);
  return path === null ? null : asReference(reader, path);
}

export function asReference(reader: InsertReader, path: Path): Reference | null {
  const [first = '', second] = path.words;
  const span = reader.span(path.from, path.to);
  if (path.words.length > 2 || reader.text.charAt(path.to - 1) === '.') {
    return reader.report('insert-form', {
      span,
      message: 'A name here is a setup, a point and a name: `bars.M`.',
    });
  }
  return second === undefined
    ? { setup: null, name: first, heading: null, span }
    : { setup: first, name: second, heading: null, span };
}

/** `A, B as "left", bars.C`; ends before options, columns and caption. Null with a finding where a name cannot be read. */
export function readNames(reader: InsertReader, endsHere: () => boolean): readonly Reference[] | null {
  const names: Reference[] = [];
  while (!reader.atEnd && !endsHere()) {
    const name = readReference(reader, 'A name belongs here.');
    if (name === null) return null;
    names.push(withHeading(reader, name));
    const before = reader.position;
    if (!reader.take(',')) break;
    if (endsHere()) {
      reader.position = before;
      break;
    }
  }
  return names;
}

/** Text in quotes, straight or typographic; null where there is none. */
export function readQuoted(reader: InsertReader): string | null {
  const match = reader.takePattern(/"([^"]*)"|[“„]([^”“]*)[”“]/uy);
  return match === null ? null : (match[1] ?? match[2] ?? '').replace(/\s+/gu, ' ').trim();
}

function withHeading(reader: InsertReader, name: Reference): Reference {
  const before = reader.position;
  if (!reader.take('as')) return name;
  const heading = readQuoted(reader);
  if (heading !== null) return { ...name, heading };
  reader.position = before;
  return name;
}

function noName(reader: InsertReader, text: string, from: number, to: number): null {
  const message = `\`${text}\` is no name: a name is a letter, then letters, digits and hyphens.`;
  return reader.report('insert-form', { span: reader.span(from, to), message });
}
