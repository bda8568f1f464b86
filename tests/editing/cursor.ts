/** Sheets for tests of editing: the cursor is a `‸` in the text. */
import { type Draft, draftSheet, type Examination, examineSheet } from '../../shared/checks/examine.ts';
import type { TextEdit } from '../../shared/findings/finding.ts';
import { dedent } from '../check.ts';

export interface WithCursor {
  readonly text: string;
  readonly draft: Draft;
  readonly offset: number;
}

export function withCursor(marked: string): WithCursor {
  const dedented = dedent(marked);
  const offset = dedented.indexOf('‸');
  if (offset < 0) throw new Error('no cursor in the text');
  const text = dedented.slice(0, offset) + dedented.slice(offset + 1);
  return { text, draft: draftSheet({ name: 'sheet.md', text }), offset };
}

export const examined = (text: string): Examination => examineSheet({ name: 'sheet.md', text });

export function edited(text: string, edits: readonly TextEdit[]): string {
  const ordered = [...edits].sort((a, b) => b.span.from - a.span.from);
  return ordered.reduce((old, { span, text: to }) => old.slice(0, span.from) + to + old.slice(span.to), text);
}

/** Two setups, the second a variation of the first, and text that speaks of both. */
export const twoSetups = `
\`\`\`electrodes bars
paper   240 mm × 160 mm, 5 kΩ per square
supply  cell 1.5 V, internal 0.5 Ω
meter   10 MΩ, resolution 0.01 V, black lead on N
bar     N  10 mm × 120 mm at (60, 80) mm                negative
bar     P  10 mm × 120 mm, 100 mm right of N            positive
row     A  from N to P every 10 mm
probe   M  at (115, 80) mm
probe   H  at A 20 mm
\`\`\`

\`\`\`electrodes swapped like bars
change  N  joined to P
move    M  at (100, 80) mm
\`\`\`

At M: ?{bars.M}, along A: ?{p.d. bars.M to bars.P}, ?{bars.current}.

?{readings bars.A, swapped.A}
`.trimStart();
