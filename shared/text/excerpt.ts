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
  /** What follows the word `electrodes` on the opening fence line. */
  readonly head: ExcerptLine;
}
