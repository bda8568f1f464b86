/** What is to be said below the drawing of a block: why it is not solved, or which line is left out. */
import type { Draft } from '../../checks/examine.ts';
import type { FieldTrouble } from '../../field/field.ts';
import { whyUnsolved } from '../drawing.ts';

/** One sentence or two; null where all is well. */
export function blockRemark(
  draft: Draft,
  number: number,
  { solved, trouble }: { readonly solved: boolean; readonly trouble: FieldTrouble | null },
): string | null {
  if (!solved) return whyUnsolved(draft, number, trouble);
  const findings = [
    ...(draft.sheet.blocks[number]?.block.findings ?? []),
    ...(draft.setups[number]?.findings ?? []),
  ];
  const errors = findings.filter(({ severity }) => severity === 'error' || severity === 'stop');
  const [first, ...others] = errors.sort((a, b) => a.span.from - b.span.from);
  if (first === undefined) return null;
  return others.length === 0 ? first.message : `${first.message} (and ${others.length} more)`;
}
