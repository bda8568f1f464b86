/** Reads the parts of a line in any order, with or without commas between them. */
import type { Fix } from '../findings/finding.ts';
import type { Span } from '../text/span.ts';
import type { LineReader } from './line-reader.ts';
import { nearest } from './nearest.ts';
import { nextToken, quantity, rewrite, writeBefore } from './values.ts';

export interface Part<T> {
  /** Words that begin it; empty where a number or bracket does. */
  readonly words: readonly string[];
  starts(line: LineReader): boolean;
  /** Null where it could not be read; the finding is made. */
  read(line: LineReader): T | null;
}

export type Parts<T> = { readonly [K in keyof T]: Part<T[K]> };
export type Found<T> = { readonly [K in keyof T]: T[K] | null };

/** A part that begins with a word and goes on with what `read` reads. */
export function after<T>(word: string, read: (line: LineReader) => T | null): Part<T> {
  return {
    words: [word],
    starts: (line) => line.sees(word),
    read(line) {
      line.takeWord(word);
      return read(line);
    },
  };
}

/** A part that is a word and nothing else. */
export function flag(word: string): Part<true> {
  return after(word, () => true);
}

/** All parts to the end of the line. Parts that are not there are null. */
export function readParts<T extends object>(line: LineReader, parts: Parts<T>): Found<T> {
  const keys = keysOf(parts);
  const found: { [K in keyof T]?: T[K] | null } = {};
  line.skipCommas();
  while (!line.atEnd) {
    const key = keys.find((candidate) => parts[candidate].starts(line));
    if (key === undefined) {
      unexpected(
        line,
        keys.flatMap((candidate) => parts[candidate].words),
      );
      break;
    }
    const from = line.pieces.length;
    const value = parts[key].read(line);
    if (value === null) break;
    if (found[key] === undefined) found[key] = value;
    else twice(line, line.spanFrom(from));
    line.skipCommas();
  }
  const all: { [K in keyof T]: T[K] | null } = Object.assign(
    {},
    ...keys.map((key) => ({ [key]: null })),
    found,
  );
  return all;
}

/** Reports what stands here and does not belong; `words` are those that would. */
export function unexpected(line: LineReader, words: readonly string[]): null {
  const token = line.peek();
  const span = nextToken(line);
  const left = leftOut(line, words);
  if (left !== null) {
    const message = `\`${left.word}\` is missing before ${left.before}.`;
    return line.report('part-missing', { span, message, fixes: [writeBefore(line, left.word)] });
  }
  if (token.kind === 'word') {
    const near = nearest(token.text, words);
    const [first] = near;
    const message =
      first === undefined
        ? `“${token.text}” is not understood here.`
        : `“${token.text}” is not known here: \`${first}\`?`;
    const fixes = near.map((word): Fix => rewrite(line, token, word, word));
    return line.report('word-unknown', { span, message, fixes, hints: hintsFor(words, near) });
  }
  if (token.kind === 'sign') {
    return line.report('word-unexpected', { span, message: `“${token.text}” is not understood here.` });
  }
  const attached = /^\S*/u.exec(line.text.slice(token.to))?.[0].length ?? 0;
  const written = line.text.slice(token.from, Math.min(token.to + attached, token.from + 40));
  return line.report('word-unexpected', {
    span,
    message: `“${written}” does not belong here: a word that says what it is may be missing.`,
    hints: hintsFor(words, []),
  });
}

interface LeftOut {
  readonly word: string;
  readonly before: string;
}

/** The word that belongs before a bracket, a direction or a length where no part begins with one. */
function leftOut(line: LineReader, words: readonly string[]): LeftOut | null {
  const { text } = line.peek();
  const said = (word: string): boolean => line.pieces.some((piece) => piece.text === word);
  const missing = (word: string, before: string): LeftOut | null =>
    words.includes(word) && !said(word) ? { word, before } : null;
  if (text === '(') return missing('at', 'the bracket');
  if (line.seen(['left', 'right', 'up', 'down']) !== null) return missing('pointing', 'the direction');
  if (!/^\d/u.test(text) || line.lookAhead(() => quantity(line, 'length') === null || line.failed))
    return null;
  return (
    missing('diameter', 'the length') ?? (words.includes('diameter') ? missing('wall', 'the length') : null)
  );
}

/** Reports a part that a line needs, at the end of the line, unless the line has failed already. */
export function missing(line: LineReader, message: string, fixes: readonly Fix[] = []): null {
  if (line.failed) return null;
  return line.report('part-missing', { span: lastPiece(line), message, fixes });
}

/** Nothing more may follow. */
export function end(line: LineReader): void {
  line.skipCommas();
  if (!line.atEnd && !line.failed) unexpected(line, []);
}

/** Reports what a line says a second time. */
export function twice(line: LineReader, span: Span): void {
  line.report('part-twice', { span, message: 'This is said twice in one line. Which one holds?' });
}

function hintsFor(words: readonly string[], near: readonly string[]): readonly string[] {
  if (near.length > 0 || words.length === 0) return [];
  return [`Here may stand: ${words.map((word) => `\`${word}\``).join(', ')}.`];
}

function lastPiece(line: LineReader): Span {
  const last = line.pieces.at(-1);
  return last === undefined ? line.whole : line.span(last.from, last.to);
}

/** Object.keys with the type that a table of our own has. */
function keysOf<T extends object>(table: Parts<T>): readonly (keyof T)[] {
  return Object.keys(table) as (keyof T)[];
}
