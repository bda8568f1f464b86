/**
 * Lines cut out of a file: a block's text without the prefixes of the quotations and lists around it. Each line knows where it
 * stands, so that everything read from it carries spans of the file.
 */
import type { Span } from './span.ts';

export interface ExcerptLine {
  /** The line without prefix and line end. */
  readonly text: string;
  /** Offset in the file of the first character of `text`. */
  readonly at: number;
  /** What stands before `text` for the quotations and lists around the block; a line that is added repeats it. Absent where nothing stands. */
  readonly prefix?: string;
}

export interface Excerpt {
  readonly lines: readonly ExcerptLine[];
  /** The whole block in the file, fences included. */
  readonly span: Span;
  /** What follows the word `electrodes` on the opening fence line. Its prefix is that of a first line below it. */
  readonly head: ExcerptLine;
  /** Of the opening fence line; absent for a line feed alone. */
  readonly lineEnd?: '\r\n' | '\r';
}

/**
 * Finds a line as a Markdown parser cuts it out at the end of the file's line, which begins at `start`. Where the parser cuts a tab in
 * two, it makes spaces that the file does not have: they are left out.
 */
export function lineInFile(cut: string, line: string, start: number): ExcerptLine {
  let length = line.endsWith(cut) ? cut.length : 0;
  while (length < cut.length && length < line.length && cut.at(-1 - length) === line.at(-1 - length)) {
    length++;
  }
  return { text: line.slice(line.length - length), at: start + line.length - length };
}
