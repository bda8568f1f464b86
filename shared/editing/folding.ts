/** What can be folded away: our blocks and passages. Headings and other fences are Markdown's own affair. */
import { isSheet } from '../sheet/read-sheet.ts';
import type { Sheet } from '../sheet/sheet.ts';
import type { Span } from '../text/span.ts';

export function foldsOf(sheet: Sheet): readonly Span[] {
  if (!isSheet(sheet)) return [];
  const spans = [
    ...sheet.blocks.map(({ block }) => block.excerpt.span),
    ...sheet.passages.map(({ span }) => span),
  ];
  return spans.sort((a, b) => a.from - b.from || b.to - a.to);
}
