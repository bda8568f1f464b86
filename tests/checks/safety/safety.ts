/** Findings about safety alone, for a text that is a sheet, and a sheet without any. */
import { type Standards, usualStandards } from '../../../shared/checks/rule.ts';
import { safetyNotes } from '../../../shared/checks/safety/index.ts';
import type { Finding } from '../../../shared/findings/finding.ts';
import { resolveSetups } from '../../../shared/setup/resolve.ts';
import { readSheet } from '../../../shared/sheet/read-sheet.ts';
import { check, dedent } from '../../check.ts';

export function findingsOf(text: string, standards: Partial<Standards> = {}): readonly Finding[] {
  const sheet = readSheet({ name: 'sheet.md', text });
  const setups = resolveSetups(sheet.blocks.map(({ block }) => block));
  return safetyNotes({ sheet, setups, solutions: new Map(), ...usualStandards, ...standards });
}

export const codesOf = (text: string, standards: Partial<Standards> = {}): readonly string[] =>
  findingsOf(text, standards).map(({ code }) => code);

/** Holds the findings of a marked text; those about its front matter where it has none are left out. */
export const checkSafety = (marked: string): void =>
  check(marked, (text) =>
    findingsOf(text).filter(({ code }) => text.startsWith('---') || !aboutFront.includes(code)),
  );

const aboutFront: readonly string[] = ['risk-assessment-missing', 'review-missing'];

export interface Parts {
  /** Lines of front matter more. */
  readonly front?: string;
  readonly supply?: string;
  /** Lines of the block more. */
  readonly block?: string;
  /** Below the notes on safety. */
  readonly text?: string;
  /** Items of the notes on safety; a whole set for a cell on paper unless told. */
  readonly notes?: readonly string[];
}

export const cellNotes: readonly string[] = [
  'Keep the clips apart. Join the cell last. If a lead feels warm, disconnect it.',
  'Wash your hands afterwards.',
];

/** A sheet in which nothing is missing. */
export function sheetWith({
  front = '',
  supply,
  block = '',
  text = '',
  notes = cellNotes,
}: Parts = {}): string {
  const plain = dedent(`
    ---
    title: Two bars
    language: en-GB
    next-review: 2027-09-01
    risk-assessment: RA-7
    FRONT---

    # Two bars

    ::: safety
    NOTES
    :::

    TEXT

    \`\`\`electrodes bars
    paper   240 mm × 160 mm, 5 kΩ per square
    supply  SUPPLY
    bar     N  10 mm × 120 mm at (60, 80) mm      negative
    bar     P  10 mm × 120 mm, 100 mm right of N  positive
    BLOCK
    \`\`\`
  `);
  const parts: Readonly<Record<string, string>> = {
    FRONT: front === '' ? '' : `${front}\n`,
    NOTES: notes.map((note) => `- ${note}`).join('\n'),
    TEXT: text,
    SUPPLY: supply ?? 'cell 1.5 V, zinc-carbon',
    BLOCK: block,
  };
  return plain.replace(/\b(?:FRONT|NOTES|TEXT|SUPPLY|BLOCK)\b|FRONT(?=---)/g, (name) => parts[name] ?? '');
}
