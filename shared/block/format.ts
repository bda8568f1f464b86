/**
 * Formats a block: spellings mended, one space between parts, and fixed columns so that a change to one line leaves the others alone.
 *
 *     bar     N  10 mm × 120 mm at (60, 80) mm                negative   # left
 *     ↑0      ↑8 ↑ two spaces behind the longest name         ↑56        ↑ two spaces behind the line
 *                of the paragraph
 *
 * What is longer than its column pushes the next one on, by one space behind the first word and by two elsewhere. A line with an error
 * keeps its words and loses trailing space only; the order of what is written never changes but for `at 50 mm along A`.
 */
import type { TextEdit } from '../findings/finding.ts';
import type { Piece } from './line-reader.ts';
import { readLines } from './parse.ts';
import type { LineReading } from './statements.ts';
import type { Block } from './tree.ts';

/** Edits inside the lines of the block, none for lines that stand as they should. */
export function formatBlock(block: Block): TextEdit[] {
  const lines = readLines(block.excerpt);
  const nameWidths = namesOfParagraphs(lines);
  const edits: TextEdit[] = [];
  for (const [i, reading] of lines.entries()) {
    const { line } = reading.reader;
    const text = formatted(reading, nameWidths[i] ?? 0);
    if (text === line.text) continue;
    edits.push({ span: { from: line.at, to: line.at + line.text.length }, text });
  }
  return edits;
}

const nameColumn = 8;
const terminalColumn = 56;

function formatted(reading: LineReading, nameWidth: number): string {
  const { statement, reader } = reading;
  const whole = reader.line.text.trimEnd();
  if (statement === null) return whole.trimStart();
  if (statement.kind === 'broken') return whole;
  const remark = reader.line.text.slice(reader.text.length).trim();
  const text = written(reading, nameWidth);
  return remark === '' ? text : `${text}  ${remark}`;
}

/** The statement of a line, without its remark. */
function written({ statement, reader }: LineReading, nameWidth: number): string {
  const { pieces, bodyPiece, terminal } = reader;
  const [word, name] = pieces;
  let text = pad(word?.text ?? '', nameColumn - 1);
  if (bodyPiece === 2 && name !== undefined) text += ` ${pad(name.text, nameWidth + 1)}`;
  const inColumn = statement?.kind === 'shape' && terminal !== null && terminal.to === lastPart(pieces);
  const body = joined(pieces.slice(bodyPiece, inColumn ? terminal.from : pieces.length));
  if (body !== '') text += ` ${body}`;
  if (inColumn)
    text = `${pad(text, terminalColumn - 2)}  ${joined(pieces.slice(terminal.from, terminal.to))}`;
  return text.trimEnd();
}

/** Length of the list of pieces without commas that end it. */
function lastPart(pieces: readonly Piece[]): number {
  let last = pieces.length;
  while (pieces[last - 1]?.kind === 'comma') last--;
  return last;
}

/** Pieces with the space that belongs between them; commas that separate nothing are dropped. */
function joined(pieces: readonly Piece[]): string {
  const kept = pieces.slice(0, lastPart(pieces)).filter((piece, i, all) => {
    const before = all[i - 1];
    return piece.kind !== 'comma' || (before !== undefined && before.kind !== 'comma');
  });
  let text = '';
  for (const [i, piece] of kept.entries()) {
    const before = kept[i - 1];
    text += before === undefined || closeUp(before, piece) ? piece.text : ` ${piece.text}`;
  }
  return text;
}

function closeUp(before: Piece, piece: Piece): boolean {
  if (piece.kind === 'comma' || piece.kind === 'close' || piece.kind === 'sign') return true;
  return before.kind === 'open' || piece.text === '°';
}

/** For each line the length of the longest name in its paragraph: lines between blank ones. */
function namesOfParagraphs(lines: readonly LineReading[]): readonly number[] {
  const widths = lines.map(() => 0);
  let start = 0;
  let longest = 0;
  const close = (end: number): void => {
    widths.fill(longest, start, end);
    start = end;
    longest = 0;
  };
  for (const [i, { statement, reader }] of lines.entries()) {
    if (reader.line.text.trim() === '') close(i);
    const name = statement?.kind === 'broken' || reader.bodyPiece !== 2 ? undefined : reader.pieces[1];
    if (name !== undefined) longest = Math.max(longest, width(name.text));
  }
  close(lines.length);
  return widths;
}

function pad(text: string, to: number): string {
  return text + ' '.repeat(Math.max(0, to - width(text)));
}

/** Columns as an editor counts them: one for each character. */
function width(text: string): number {
  return [...text].length;
}
