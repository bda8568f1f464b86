/**
 * The contract between reading and printing: the tokens that our rules leave in markdown-it's stream, and what each carries. A token
 * carries all that its printing needs in `meta`, so that one parse serves every audience and a preview that keeps tokens but not their
 * environment. Print rules must not change tokens.
 *
 * What the stream no longer has: comments, front matter, the colons of passages. What it has as markdown-it made it: all else.
 */
import type { Token } from 'markdown-it';
import type { Readers, Sheet } from '../sheet.ts';

export const tokenTypes = {
  /** First token of the stream of a sheet; prints nothing. Absent where the text is no sheet: then no other token of ours is there. */
  sheet: 'papervolt_sheet',
  /** In place of markdown-it's `fence` for a block; keeps `map`, `content`, `info`. */
  block: 'papervolt_block',
  /** Around the content of a passage, nesting 1 and -1; both carry the meta. A broken passage has them too. */
  passageOpen: 'papervolt_passage_open',
  passageClose: 'papervolt_passage_close',
  /** In place of `paragraph_open` and `paragraph_close` round inserts that stand alone: tables and figures, side by side if several. */
  figuresOpen: 'papervolt_figures_open',
  figuresClose: 'papervolt_figures_close',
  /** Inline. `content` is the insert as written. */
  insert: 'papervolt_insert',
  /** Inline, last in its paragraph or item: `[2]`. */
  total: 'papervolt_total',
  /** Inline, at the end of a source line inside an answer: `(1)`. */
  point: 'papervolt_point',
  /** Inline or block: HTML as written, in `content`, to be printed escaped. */
  html: 'papervolt_html',
  /** Block: `<!-- papervolt: new page -->`. */
  newPage: 'papervolt_new_page',
} as const;

export interface SheetMeta {
  readonly kind: 'sheet';
  readonly sheet: Sheet;
}
export interface BlockMeta {
  readonly kind: 'block';
  /** Index in `sheet.blocks`, and so `Setup.block`. */
  readonly block: number;
  readonly readers: Readers;
}
export interface PassageMeta {
  readonly kind: 'passage';
  /** Index in `sheet.passages`. */
  readonly passage: number;
  /** Of the content: those that this passage and all round it let in. */
  readonly readers: Readers;
}
export interface FiguresMeta {
  readonly kind: 'figures';
  /** Indices in `sheet.inserts`. */
  readonly inserts: readonly number[];
}
export interface InsertMeta {
  readonly kind: 'insert';
  /** Index in `sheet.inserts`, the same as its `number`. */
  readonly insert: number;
}
/** Of `total` and `point`. */
export interface MarksMeta {
  readonly kind: 'marks';
  readonly marks: number;
}
export interface PlainMeta {
  readonly kind: 'html' | 'new page';
}
export type TokenMeta =
  | SheetMeta
  | BlockMeta
  | PassageMeta
  | FiguresMeta
  | InsertMeta
  | MarksMeta
  | PlainMeta;

/** What a token of ours carries under the key `papervolt` of its meta; null for any other token. */
export function metaOf(token: Token): TokenMeta | null {
  // Our own rules alone write this key.
  return (token.meta?.papervolt as TokenMeta | undefined) ?? null;
}

/**
 * The meta of the first token. Editors copy tokens between threads and write them as JSON, for which a sheet, which holds its own tokens,
 * is not made: copies go without it.
 */
export function sheetMeta(sheet: Sheet): SheetMeta {
  return Object.defineProperty({ kind: 'sheet' } as SheetMeta, 'sheet', { value: sheet, enumerable: false });
}

export function setMeta(token: Token, meta: TokenMeta): void {
  token.meta = { ...token.meta, papervolt: meta };
}

/** The sheet that a stream of tokens was read from; null where the text is no sheet. */
export function sheetOf(tokens: readonly Token[]): Sheet | null {
  const first = tokens[0];
  const meta = first === undefined ? null : metaOf(first);
  // A copy has none.
  return meta?.kind === 'sheet' ? (meta.sheet ?? null) : null;
}
