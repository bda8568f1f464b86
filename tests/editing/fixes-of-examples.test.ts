/** Fixes of the examples with which findings are explained: in any surroundings each ends its finding, and makes no error. */
import { describe, expect, it, test } from 'vitest';
import { conclude, draftSheet } from '../../shared/checks/examine.ts';
import { certainEdits } from '../../shared/editing/fixes.ts';
import { type Told, toldFamilies } from '../../shared/findings/explanations/index.ts';
import type { Finding } from '../../shared/findings/finding.ts';
import { readDepartment } from '../../shared/sheet/department/read-department.ts';
import { framed } from '../findings/frames.ts';
import { edited } from './cursor.ts';

/** Without solutions. */
function findingsOf(text: string, { department }: Pick<Told, 'department'>): readonly Finding[] {
  const file = readDepartment({ name: 'department.yaml', text: department ?? '' });
  const standards = { department: file.department, today: '2026-10-01' };
  const draft = draftSheet({ name: 'sheet.md', text }, standards);
  return conclude(draft, () => ({ solved: null, trouble: null })).findings;
}

/** The text behind the front matter, changed. */
const behindFront = (text: string, change: (rest: string) => string): string => {
  const front = /^---\n[\s\S]*?\n---\n/u.exec(text)?.[0] ?? '';
  return front + change(text.slice(front.length));
};
const surroundings: readonly (readonly [string, (text: string) => string])[] = [
  ['alone', (text) => text],
  ['in a list', (text) => behindFront(text, (rest) => `\n- Item\n\n${rest.replace(/^(?=.)/gmu, '  ')}`)],
  [
    'in a quotation, with other line ends',
    (text) =>
      behindFront(text, (rest) => `\n${rest.trim().replace(/^/gmu, '> ')}\n`).replaceAll('\n', '\r\n'),
  ],
];

/** A setup without a supply is not asked for its electrodes. */
const follows: Readonly<Record<string, string>> = { 'supply-missing': 'circuit-open' };

const examples = toldFamilies().flatMap(({ told }) =>
  told.flatMap((one) =>
    one.wrong === null || one.from === 'department' ? [] : [{ ...one, wrong: one.wrong }],
  ),
);

describe.each(surroundings)('%s', (_, surrounded) => {
  test.each(examples)('$code', (one) => {
    const text = surrounded(framed(one.from, one.wrong));
    const before = findingsOf(text, one);
    for (const finding of before) {
      const alike = ({ code, message }: Finding): boolean =>
        code === finding.code && message === finding.message;
      for (const [i, { title, edits }] of finding.fixes.entries()) {
        const after = findingsOf(edited(text, edits), one);
        expect(after.filter(alike).length, title).toBeLessThan(before.filter(alike).length);
        // Which unit was left out is for the teacher to say: of the units offered the first alone is likely.
        const isGuess = i > 0 && /^Write \d+ c?m$/u.test(title);
        const made = isGuess ? '' : newErrors(before, after);
        expect(['', follows[finding.code]], title).toContain(made);
      }
    }
  });
});

/** Codes of errors that were not there before. */
function newErrors(before: readonly Finding[], after: readonly Finding[]): string {
  const codes = (findings: readonly Finding[]): string[] =>
    findings.flatMap(({ code, severity }) => (severity === 'error' || severity === 'stop' ? [code] : []));
  const left = codes(before);
  return codes(after)
    .filter((code) => {
      const at = left.indexOf(code);
      if (at >= 0) left.splice(at, 1);
      return at < 0;
    })
    .join();
}

it('comes to an end with all that are certain', () => {
  for (const one of examples) {
    let text = framed(one.from, one.wrong);
    for (let round = 0; round < 4; round++) text = edited(text, certainEdits(findingsOf(text, one)));
    expect(certainEdits(findingsOf(text, one)), one.code).toEqual([]);
  }
});
