/** Tidying our blocks, whole or in a range. */
import { formatBlock } from '../block/format.ts';
import type { TextEdit } from '../findings/finding.ts';
import type { Sheet } from '../sheet/sheet.ts';
import type { Span } from '../text/span.ts';
import { meets } from './place.ts';

/** Edits of lines inside our blocks, those that meet the range alone. */
export function formattingEdits(sheet: Sheet, range: Span): readonly TextEdit[] {
  return sheet.blocks
    .filter(({ block }) => meets(block.excerpt.span, range))
    .flatMap(({ block }) => formatBlock(block))
    .filter(({ span }) => meets(span, range));
}
