/** The text behind spans: what a teacher wrote at a place, and edits that add a line to a block. */
import type { Block } from '../block/tree.ts';
import type { TextEdit } from '../findings/finding.ts';
import type { ExcerptLine } from '../text/excerpt.ts';
import { type Span, span } from '../text/span.ts';

export interface Writing {
  /** As written; empty where the span lies in no block. */
  text(of: Span): string;
  /** The first word of the line in which the span begins. */
  firstWord(of: Span): string;
  /** Adds a line behind the one in which the span ends, with the prefix of its list or quotation. */
  lineAfter(of: Span, text: string): TextEdit;
  /** Adds a line at the end of the block. */
  lastLine(block: Block, text: string): TextEdit;
  /** Takes out the line in which the span begins, with the line end before it. */
  without(of: Span): TextEdit;
}

export function writingOf(blocks: readonly Block[]): Writing {
  const find = (offset: number): { readonly block: Block; readonly index: number } | null => {
    for (const block of blocks) {
      const index = block.excerpt.lines.findIndex((line) => offset >= line.at && offset <= endOf(line));
      if (index >= 0) return { block, index };
    }
    return null;
  };
  const lineAt = (offset: number): ExcerptLine | undefined => {
    const found = find(offset);
    return found?.block.excerpt.lines[found.index];
  };
  return {
    text(of) {
      const line = lineAt(of.from);
      return line === undefined ? '' : line.text.slice(of.from - line.at, of.to - line.at);
    },
    firstWord(of) {
      return /[\p{L}-]+/u.exec(lineAt(of.from)?.text ?? '')?.[0] ?? '';
    },
    lineAfter(of, text) {
      const found = find(of.to);
      return found === null
        ? { span: span(of.to, of.to), text: `\n${text}` }
        : added(found.block, found.index, text);
    },
    lastLine: (block, text) => added(block, block.excerpt.lines.length - 1, text),
    without(of) {
      const found = find(of.from);
      const { head, lines = [] } = found?.block.excerpt ?? {};
      const line = lines[found?.index ?? -1];
      const before = lines[(found?.index ?? 0) - 1] ?? head;
      return line === undefined || before === undefined
        ? { span: of, text: '' }
        : { span: span(endOf(before), endOf(line)), text: '' };
    },
  };
}

const endOf = (line: ExcerptLine): number => line.at + line.text.length;

function added(block: Block, index: number, text: string): TextEdit {
  const { head, lines, lineEnd = '\n' } = block.excerpt;
  const end = endOf(lines[index] ?? head);
  // A blank line may go without what stands before the others.
  const { prefix = '' } = lines.find((line) => line.text.trim() !== '') ?? head;
  return { span: span(end, end), text: `${lineEnd}${prefix}${text}` };
}
