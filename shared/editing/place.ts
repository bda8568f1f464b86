/** Where an offset of the file stands in a sheet: in which block, on which line of it. */
import type { Block } from '../block/tree.ts';
import type { Sheet } from '../sheet/sheet.ts';
import type { ExcerptLine } from '../text/excerpt.ts';
import type { Span } from '../text/span.ts';

export interface BlockPlace {
  /** Number of the block in the sheet. */
  readonly number: number;
  readonly block: Block;
  /** Number of the line in the block's excerpt; -1 for its opening line, null for a fence or prefix. */
  readonly line: number | null;
}

export const holds = (span: Span, offset: number): boolean => offset >= span.from && offset <= span.to;

export const meets = (a: Span, b: Span): boolean => a.from <= b.to && b.from <= a.to;

export const lineSpan = ({ at, text }: ExcerptLine): Span => ({ from: at, to: at + text.length });

/** The opening line from its fence on. */
export const openingSpan = ({ excerpt }: Block): Span => ({
  from: excerpt.span.from,
  to: lineSpan(excerpt.head).to,
});

/** Null outside our blocks. */
export function blockPlace(sheet: Sheet, offset: number): BlockPlace | null {
  const number = sheet.blocks.findIndex(({ block }) => holds(block.excerpt.span, offset));
  const block = sheet.blocks[number]?.block;
  if (block === undefined) return null;
  // The space that an opening line ends with is no part of its excerpt.
  const { from, to } = openingSpan(block);
  const behind = sheet.source.text.slice(to, offset);
  if (offset >= from && /^[^\S\r\n]*$/u.test(behind)) return { number, block, line: -1 };
  const line = block.excerpt.lines.findIndex((one) => holds(lineSpan(one), offset));
  return { number, block, line: line < 0 ? null : line };
}

/** Numbers of the blocks that a part of the text meets. */
export function blocksIn(sheet: Sheet, part: Span): readonly number[] {
  return sheet.blocks.flatMap(({ block }, number) => (meets(block.excerpt.span, part) ? [number] : []));
}
