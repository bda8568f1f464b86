/** Findings of the rules of SI writing alone, for a text with an empty block behind it. */
import { siWriting } from '../../../shared/checks/prose/index.ts';
import { usualStandards } from '../../../shared/checks/rule.ts';
import type { Finding } from '../../../shared/findings/finding.ts';
import { resolveSetups } from '../../../shared/setup/resolve.ts';
import { readSheet } from '../../../shared/sheet/read-sheet.ts';
import { check } from '../../check.ts';

export function findingsOf(text: string): readonly Finding[] {
  const sheet = readSheet({ name: 'sheet.md', text: `${text}\n\n\`\`\`electrodes\n\`\`\`\n` });
  const setups = resolveSetups(sheet.blocks.map(({ block }) => block));
  return siWriting({ sheet, setups, solutions: new Map(), ...usualStandards });
}

/** Holds the findings of a marked text. */
export const checkProse = (marked: string): void => check(marked, findingsOf);
