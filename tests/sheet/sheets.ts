/** Sheets for tests of reading: findings as marked documents, and the spans of a sheet as text. */
import { resolveSetups } from '../../shared/setup/resolve.ts';
import { applyAllowances } from '../../shared/sheet/allowances.ts';
import { type Binding, bindInserts } from '../../shared/sheet/inserts/bind.ts';
import { readSheet } from '../../shared/sheet/read-sheet.ts';
import type { Sheet } from '../../shared/sheet/sheet.ts';
import type { Span } from '../../shared/text/span.ts';
import { check, dedent } from '../check.ts';

/** Two setups with the same names. */
export const twoBars = `
\`\`\`electrodes bars
paper   240 mm × 160 mm, 5 kΩ per square
supply  cell 1.5 V
bar     N  10 mm × 120 mm at (60, 80) mm           negative
bar     P  10 mm × 120 mm, 100 mm right of N       positive
probe   M  at centre
row     A  from N to P every 10 mm
\`\`\`
`;
export const like = '```electrodes short like bars\n```\n';

export const read = (text: string): Sheet => readSheet({ name: 'sheet.md', text });

/** Findings of reading alone; a block is added behind the marked text so that it is a sheet. */
export function checkReading(marked: string): void {
  check(marked, (text) => read(`${text}\n${plainBlock}`).findings);
}
const plainBlock = '\n```electrodes\n```\n';

/** Findings of the text as it stands. */
export function checkAsItStands(marked: string): void {
  check(marked, (text) => read(text).findings);
}

export function bound(text: string): Binding & { readonly sheet: Sheet } {
  const sheet = read(text);
  return { sheet, ...bindInserts(sheet, resolveSetups(sheet.blocks.map(({ block }) => block))) };
}

/** Findings of reading and binding; blocks follow the marked text. */
export function checkBinding(marked: string, blocks: string): void {
  check(marked, (text) => {
    const { sheet, findings } = bound(`${text}\n\n${blocks}`);
    return applyAllowances([...sheet.findings, ...findings], sheet);
  });
}

export const cut = (sheet: Sheet, { from, to }: Span): string => sheet.source.text.slice(from, to);

/** A dedented text with a block behind it. */
export const withBlock = (text: string): string => `${dedent(text)}\n${plainBlock}`;

/** Types of all tokens, those of running text in brackets. */
export function typesOf(tokens: Sheet['tokens']): string {
  return tokens
    .map((token) => (token.type === 'inline' ? `[${typesOf(token.children ?? [])}]` : token.type))
    .join(' ')
    .replaceAll('papervolt_', '');
}
