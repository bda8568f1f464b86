/** Reads one line as a statement: the first word says which, and for most a name follows. */
import type { Fix } from '../findings/finding.ts';
import type { ExcerptLine } from '../text/excerpt.ts';
import { meter, paper, supply } from './apparatus.ts';
import { draw, equipotentials, fieldLines } from './drawing-lines.ts';
import { type LineContext, LineReader } from './line-reader.ts';
import { unexpected } from './parts.ts';
import { clip, contact, copper, hole, lifted, painted, slit } from './patches.ts';
import { probe, row } from './rows.ts';
import { shapeReaders } from './shapes.ts';
import { tokenAt } from './tokens.ts';
import type { Name, Statement } from './tree.ts';
import { doubtLengths } from './unlikely.ts';
import { name, rewrite } from './values.ts';
import { change, move, reverse, without } from './variations.ts';
import { formsOf, reservedNames, wordsOf } from './words.ts';

export interface LineReading {
  /** Null for a blank line and for a remark alone. */
  readonly statement: Statement | null;
  readonly reader: LineReader;
}

export function readLine(excerptLine: ExcerptLine, context: LineContext): LineReading {
  const reader = new LineReader(excerptLine, context);
  if (reader.atEnd) return { statement: null, reader };
  return { statement: readStatement(reader), reader };
}

/** The name that a line gives, by its first two words only. */
export function nameGiven(line: string): { readonly name: string; readonly ofElectrode: boolean } | null {
  const first = tokenAt(line, 0);
  const written = first.text.toLowerCase();
  const word = Object.keys(naming).find((known) => formsOf(known).some(([form]) => form === written));
  if (word === undefined) return null;
  const second = tokenAt(line, first.to);
  return second.kind === 'word'
    ? { name: second.text, ofElectrode: Object.hasOwn(shapeReaders, word) }
    : null;
}

type Unnamed = (line: LineReader) => Statement | null;
type Named = (line: LineReader, name: Name) => Statement | null;

const unnamed: Readonly<Record<string, Unnamed>> = {
  paper,
  supply,
  meter,
  hole,
  slit,
  painted,
  copper,
  equipotentials,
  'field-lines': fieldLines,
  draw,
  reverse,
};

/** Lines that give a new name, and what the name is of. */
const naming: Readonly<Record<string, readonly [Named, string]>> = {
  ...Object.fromEntries(Object.entries(shapeReaders).map(([word, read]) => [word, [read, `the ${word}`]])),
  probe: [probe, 'the probe'],
  row: [row, 'the row'],
};

/** Lines that speak of a name. */
const speaking: Readonly<Record<string, readonly [Named, string]>> = {
  clip: [clip, 'an electrode'],
  contact: [contact, 'an electrode'],
  lifted: [lifted, 'an electrode'],
  change: [change, 'an electrode'],
  move: [move, 'what is moved'],
  without: [without, 'what is taken away'],
};

const firstWords = [...Object.keys(unnamed), ...Object.keys(naming), ...Object.keys(speaking)];

function readStatement(line: LineReader): Statement {
  const word = line.seen(firstWords);
  if (word === null) {
    unexpected(line, firstWords);
    return broken(line, null, likelyName(line));
  }
  line.takeWord(word);
  const plain = unnamed[word];
  if (plain !== undefined) return plainStatement(line, word, plain);
  const named = naming[word] ?? speaking[word];
  if (named === undefined) return broken(line, word, null);
  const [read, what] = named;
  if (naming[word] !== undefined && line.peek().kind !== 'word') return nameless(line, word, what);
  const given = name(line, what);
  if (given === null) return broken(line, word, null);
  line.bodyPiece = 2;
  const statement = read(line, given);
  if (naming[word] !== undefined) {
    if (line.failed && partWords.includes(given.text)) doubtName(line, word, given);
    else checkReserved(line, given);
  }
  return finished(line, word, given, statement);
}

/** `disc diameter 20 mm …`: the word after a shape is its name, even where it was meant otherwise. */
function doubtName(line: LineReader, word: string, given: Name): void {
  const free = letters.find((letter) => !line.context.electrodes.has(letter));
  const at = { from: given.span.from - line.line.at, to: given.span.from - line.line.at };
  line.report('name-missing', {
    span: given.span,
    message: `The word after \`${word}\` is always its name. Is “${given.text}” one?`,
    fixes: free === undefined ? [] : [rewrite(line, at, `${free} `, `${word} ${free} ${given.text}`)],
  });
}

const partWords = wordsOf('option', 'place', 'terminal', 'direction');

function plainStatement(line: LineReader, word: string, read: Unnamed): Statement {
  return finished(line, word, null, read(line));
}

function finished(
  line: LineReader,
  word: string,
  given: Name | null,
  statement: Statement | null,
): Statement {
  if (statement === null || line.failed) return broken(line, word, given);
  doubtLengths(line);
  return statement;
}

function broken(line: LineReader, word: string | null, given: Name | null): Statement {
  return { kind: 'broken', word, name: given, span: line.whole };
}

/** The second word of a line whose first is misspelt. */
function likelyName(line: LineReader): Name | null {
  const first = line.peek();
  const second = tokenAt(line.text, first.to);
  if (second.kind !== 'word') return null;
  return { text: second.text, span: line.span(second.from, second.to) };
}

function checkReserved(line: LineReader, given: Name): void {
  if (!reservedNames.includes(given.text)) return;
  const capital = given.text.charAt(0).toUpperCase() + given.text.slice(1);
  const at = { from: given.span.from - line.line.at, to: given.span.to - line.line.at };
  const fixes = capital === given.text ? [] : [rewrite(line, at, capital, capital)];
  line.report('name-reserved', {
    span: given.span,
    message: `\`${given.text}\` means something else in the text of a sheet. Another name?`,
    fixes,
  });
}

/** `bar 10 mm × 120 mm …`: a free letter is offered. */
function nameless(line: LineReader, word: string, what: string): Statement {
  const token = line.peek();
  const joined = tokenAt(line.text, token.to);
  const attached = token.kind === 'number' && joined.kind === 'word' && joined.from === token.to;
  const likely = attached && tokenAt(line.text, joined.to).kind === 'number';
  const span = line.span(token.from, likely ? joined.to : token.to);
  const free = letters.find((letter) => !line.context.electrodes.has(letter));
  const at = { from: line.offset, to: line.offset };
  const fixes: Fix[] = free === undefined ? [] : [rewrite(line, at, ` ${free}`, `${word} ${free}`)];
  if (likely) {
    const turned = joined.text + token.text;
    line.report('name-form', {
      span,
      message: 'A name begins with a letter; letters, digits and hyphens follow.',
      fixes: [rewrite(line, { from: token.from, to: joined.to }, turned, turned)],
    });
  } else {
    const message = `Here stands the name of ${what}: \`${word} ${free ?? 'N'} …\`.`;
    line.report('name-missing', { span, message, fixes });
  }
  return broken(line, word, null);
}

const letters = ['N', 'P', 'R', 'S', 'D', 'E', 'F', 'G', 'H', 'K', 'M'] as const;
