/** Findings of the rules of SI writing alone, for a text with an empty block behind it. */
import { siWriting } from '../../../shared/checks/prose/index.ts';
import type { Finding } from '../../../shared/findings/finding.ts';
import { resolveSetups } from '../../../shared/setup/resolve.ts';
import { usualDepartment } from '../../../shared/sheet/department/department.ts';
import type { HouseStyle } from '../../../shared/sheet/department/style.ts';
import { readSheet } from '../../../shared/sheet/read-sheet.ts';
import { check } from '../../check.ts';

export function findingsOf(text: string, said: Partial<HouseStyle> = {}): readonly Finding[] {
  const style = { ...usualDepartment.style, ...said };
  const source = { name: 'sheet.md', text: `${text}\n\n\`\`\`electrodes\n\`\`\`\n` };
  const sheet = readSheet(source, style.language ?? undefined);
  const setups = resolveSetups(sheet.blocks.map(({ block }) => block));
  return siWriting({
    sheet,
    setups,
    solutions: new Map(),
    department: { ...usualDepartment, style },
    today: null,
  });
}

/** Holds the findings of a marked text. */
export const checkProse = (marked: string, said: Partial<HouseStyle> = {}): void =>
  check(marked, (text) => findingsOf(text, said));
