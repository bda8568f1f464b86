/** Repairs offered with findings: each makes its finding go, and makes no other one. */
import { expect, it, test } from 'vitest';
import { examineSheet } from '../../shared/checks/examine.ts';
import { safetyCodes } from '../../shared/findings/safety-codes.ts';
import { edited, twoSetups } from './cursor.ts';

/** Coarsely solved: what is found there is no matter here, nor are notes on safety. */
const findingsOf = (text: string) =>
  examineSheet({ name: 'sheet.md', text }, { gap: 0.1, traces: false }).findings.filter(
    ({ code }) => !Object.hasOwn(safetyCodes, code),
  );

/** The lines that the fix with this title changes, after it was held to end the finding. */
function mended(text: string, code: string, title: string): readonly string[] {
  const before = findingsOf(text);
  const found = before.find((one) => one.code === code);
  const fix = found?.fixes.find((one) => one.title === title);
  if (found === undefined) throw new Error(`no ${code}`);
  if (fix === undefined)
    throw new Error(`no “${title}”, but ${found.fixes.map((one) => one.title).join(', ')}`);
  const after = edited(text, fix.edits);
  const left = findingsOf(after).map((one) => one.code);
  const others = before.filter((one) => one !== found).map((one) => one.code);
  expect(left).toEqual(others);
  const [old, now] = [text.split('\n'), after.split('\n')];
  return [
    ...old.filter((line) => !now.includes(line)).map((line) => `- ${line}`),
    ...now.filter((line) => !old.includes(line)).map((line) => `+ ${line}`),
  ];
}

const withFront = (line: string): string => `---\n${line}\n---\n\n${twoSetups}`;

test.each([
  ['date: 2026/3/12', 'Write 2026-03-12', 'date: 2026-03-12'],
  ['date: 12 March 2026', 'Write 2026-03-12', 'date: 2026-03-12'],
  ['groups: 12 pairs', 'Write 12', 'groups: 12'],
  [
    'safety: kept in "Laboratory notes"',
    'Write kept-in "Laboratory notes"',
    'safety: kept-in "Laboratory notes"',
  ],
  ['kit: board 1, 2 rulers', 'Write board 1, rulers 2', 'kit: board 1, rulers 2'],
])('%s', (line, title, after) => {
  expect(mended(withFront(line), 'front-value', title)).toEqual([`- ${line}`, `+ ${after}`]);
});

it.each(['date: 3/4/2026', 'date: 2026-13-01', 'groups: many', 'kit: "2 of: a"', 'safety: none'])(
  'guesses nothing for %s',
  (line) => {
    const findings = findingsOf(withFront(line));
    expect(findings.find(({ code }) => code === 'front-value')?.fixes).toEqual([]);
  },
);

test('a second line is taken out, in a quotation with its prefix', () => {
  const text = twoSetups.replace('row     A', 'supply  cell 3 V\nrow     A');
  expect(mended(text, 'line-twice', 'Take this line out')).toEqual(['- supply  cell 3 V']);
  const quoted = text.replace(/^/gmu, '> ').replaceAll('\n', '\r\n');
  expect(mended(quoted, 'line-twice', 'Take this line out')).toEqual(['- > supply  cell 3 V\r']);
});

test('a block called setup needs no name', () => {
  const [block = ''] = twoSetups.replace('electrodes bars', 'electrodes setup').split('\n\n');
  const text = `${block}\n\n?{M}\n`;
  expect(mended(text, 'name-reserved', 'Leave the name out')).toEqual([
    '- ```electrodes setup',
    '+ ```electrodes',
  ]);
});

test('a clip on a spike belongs to what carries it', () => {
  const spike = 'spike   S  base 5 mm, length 10 mm on P pointing left\nclip    S  0.2 Ω\nrow     A';
  expect(mended(twoSetups.replace('row     A', spike), 'clip-of-part', 'Write P')).toEqual([
    '- clip    S  0.2 Ω',
    '+ clip    P  0.2 Ω',
  ]);
});

test('the resistance of a part is that of its setup', () => {
  const text = `${twoSetups}\nIt is ?{bars.N.resistance}.\n`;
  expect(mended(text, 'insert-kind', 'Write bars')).toEqual([
    '- It is ?{bars.N.resistance}.',
    '+ It is ?{bars.resistance}.',
  ]);
});

test('allowances that allow nothing go with their line; a misspelt one is mended', () => {
  const because = 'because it is meant';
  const inBlock = twoSetups.replace('row     A', `# allow row-uneven ${because}\nrow     A`);
  expect(mended(inBlock, 'allow-unused', 'Take this allowance out')).toEqual([
    `- # allow row-uneven ${because}`,
  ]);
  const inText = `${twoSetups}\n<!-- papervolt: allow html-escaped ${because} -->\nText.\n`;
  expect(mended(inText, 'allow-unused', 'Take this allowance out')).toEqual([
    `- <!-- papervolt: allow html-escaped ${because} -->`,
  ]);
  const uneven = inBlock.replace('every 10 mm', 'every 30 mm').replace('row-uneven', 'row-unevn');
  const findings = findingsOf(uneven);
  const misspelt = findings.find(({ code }) => code === 'allow-unused');
  expect(misspelt?.fixes.map(({ title }) => title)).toEqual(['Write row-uneven', 'Take this allowance out']);
  const after = edited(uneven, misspelt?.fixes[0]?.edits ?? []);
  expect(findingsOf(after).map(({ code }) => code)).not.toContain('row-uneven');
});
