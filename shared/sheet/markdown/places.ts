/**
 * Where the content of a paragraph, heading or cell stands in the file. markdown-it hands on content without the prefixes of quotations
 * and lists, trimmed, and without offsets. But it cuts at the front and the back of lines only, so that every line of content is found
 * again at the end of its line in the file.
 */
import type { Span } from '../../text/span.ts';
import type { Places, Reading } from './reading.ts';

/** Of content that runs over the lines `from` to `to` (not included) of the file: paragraph, underlined heading, HTML block. */
export function placesOfLines(
  reading: Reading,
  [from, to]: readonly [number, number],
  content: string,
): Places {
  const pieces: Piece[] = [];
  let start = 0;
  let fileLine = from;
  for (const written of content.split('\n')) {
    const found = findLine(reading, written, fileLine, to);
    if (found !== null) {
      pieces.push({ start: start + found.skipped, at: found.at });
      fileLine = found.line + 1;
    }
    start += written.length + 1;
  }
  return fromPieces(content, pieces, reading.index.startOf(from));
}

/** Of a heading behind `#`: its content ends before the closing marks. */
export function placesOfHeading(reading: Reading, line: number, content: string): Places {
  const whole = reading.parserLine(line).trimEnd();
  const text = (/^(.*[ \t])#+$/u.exec(whole)?.[1] ?? whole).trimEnd();
  // markdown-it trims plain blanks and tabs alone: a hard blank at the end stays in its content.
  const core = content.trimEnd();
  const at = text.endsWith(core) ? text.length - core.length : Math.max(0, text.lastIndexOf(core));
  return fromPieces(content, [{ start: 0, at: reading.index.startOf(line) + at }], 0);
}

/** Of the cells of one line of a table, in order. */
export function placesOfCells(reading: Reading, line: number, cells: readonly string[]): readonly Places[] {
  const start = reading.index.startOf(line);
  const pieces = splitCells(reading.parserLine(line));
  const offset = firstCell(pieces, cells);
  return cells.map((content, i) => {
    const cell = pieces[offset + i];
    if (cell === undefined) return fromPieces(content, [], start);
    const text = cell.text.trimEnd();
    const skipped = Math.max(0, text.length - content.length);
    return { content, at: (position) => start + (cell.at[skipped + position] ?? cell.end) };
  });
}

export function spanIn(places: Places, from: number, to: number): Span {
  // An end lies behind its last character, not before the next, which may stand in another line.
  return { from: places.at(from), to: to > from ? places.at(to - 1) + 1 : places.at(from) };
}

/** From `start` in the content on, characters stand one for one from `at` in the file on. */
interface Piece {
  readonly start: number;
  readonly at: number;
}

function fromPieces(content: string, pieces: readonly Piece[], fallback: number): Places {
  return {
    content,
    at(offset) {
      let low = 0;
      let high = pieces.length - 1;
      while (low < high) {
        const middle = (low + high + 1) >> 1;
        if ((pieces[middle]?.start ?? 0) <= offset) low = middle;
        else high = middle - 1;
      }
      const piece = pieces[low];
      return piece === undefined ? fallback : piece.at + Math.max(0, offset - piece.start);
    },
  };
}

interface FoundLine {
  readonly line: number;
  readonly at: number;
  /** Leading space of the content, which a tab may have given. */
  readonly skipped: number;
}

function findLine(reading: Reading, written: string, from: number, to: number): FoundLine | null {
  const text = written.trimEnd();
  const core = text.trimStart();
  for (let line = from; line < to; line++) {
    const fileText = reading.parserLine(line).trimEnd();
    if (!fileText.endsWith(core)) continue;
    const at = reading.index.startOf(line) + fileText.length - core.length;
    return { line, at, skipped: text.length - core.length };
  }
  return null;
}

interface Cell {
  /** Without the strokes, `\|` read as `|`. */
  readonly text: string;
  /** Column in the line of each character of `text`. */
  readonly at: readonly number[];
  readonly end: number;
}

function splitCells(line: string): readonly Cell[] {
  const cells: Cell[] = [];
  let text = '';
  let at: number[] = [];
  for (let i = 0; i <= line.length; i++) {
    const sign = line.charAt(i);
    const escaped = line.charAt(i - 1) === '\\';
    if (i === line.length || (sign === '|' && !escaped)) {
      cells.push({ text, at, end: i });
      text = '';
      at = [];
    } else if (sign === '|') {
      text = `${text.slice(0, -1)}|`;
      at[at.length - 1] = i;
    } else {
      text += sign;
      at.push(i);
    }
  }
  return cells;
}

/** A row may open with a stroke; then what stands before it (space, the prefix of a quotation or list) is no cell. */
function firstCell(pieces: readonly Cell[], cells: readonly string[]): number {
  const fits = (offset: number): boolean =>
    cells.every((cell, i) => cell === '' || (pieces[offset + i]?.text.trimEnd().endsWith(cell) ?? false));
  const opening = /^(?:[\s>]|[-+*](?=\s)|\d{1,9}[.)](?=\s)|\ufeff)*$/u.test(pieces[0]?.text ?? '');
  const [likely, other] = opening ? [1, 0] : [0, 1];
  return !fits(likely) && fits(other) ? other : likely;
}
