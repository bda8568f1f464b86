/** One row of the table of words. */
export type WordRole =
  /** Begins a line. */
  | 'statement'
  /** Begins a line that gives a piece of an electrode. */
  | 'shape'
  | 'source'
  | 'chemistry'
  | 'option'
  | 'place'
  | 'direction'
  | 'terminal'
  | 'part'
  | 'audience'
  /** Paper formats and which way they lie. */
  | 'format'
  /** On the opening line of the block. */
  | 'head';

export interface Word {
  /** As the formatter writes it; two or three words where they belong together: `right of`. */
  readonly word: string;
  readonly role: WordRole;
  /** Other spellings that are read and mended, lower case; capitals are mended anyway. */
  readonly spellings: readonly string[];
  readonly help: string;
  /** A part of a line, or a line, that uses it. */
  readonly example: string;
}

export function entry(
  role: WordRole,
  word: string,
  help: string,
  example: string,
  spellings: readonly string[] = [],
): Word {
  return { word, role, spellings, help, example };
}
