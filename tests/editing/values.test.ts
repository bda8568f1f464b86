/** Values inside the lines, above blocks; fixes, formatting, outline, folds and colours. */
import { describe, expect, it, test } from 'vitest';
import { draftSheet } from '../../shared/checks/examine.ts';
import { certainEdits, fixesAt } from '../../shared/editing/fixes.ts';
import { foldsOf } from '../../shared/editing/folding.ts';
import { formattingEdits } from '../../shared/editing/formatting.ts';
import { hintsOf, lensesOf } from '../../shared/editing/hints.ts';
import { paintOf } from '../../shared/editing/paint.ts';
import { symbolsOf } from '../../shared/editing/symbols.ts';
import { meaningKey } from '../../shared/setup/meaning-key.ts';
import { formatSheet } from '../../shared/sheet/format-sheet.ts';
import { dedent } from '../check.ts';
import { edited, examined, twoSetups } from './cursor.ts';

const draft = (text: string) => draftSheet({ name: 'sheet.md', text });
const plainSpaces = (text: string): string => text.replaceAll('\u00a0', ' ');

const { readings } = examined(twoSetups).solutions.get(0) ?? {};
const totals = `${((readings?.current_A ?? 0) * 1000).toFixed(3)} mA, ${((readings?.resistance_ohm ?? 0) / 1000).toFixed(2)} kΩ`;

test('readings stand behind their probes, totals behind the supply', () => {
  const shown = edited(
    twoSetups,
    hintsOf(examined(twoSetups)).map(({ at, text }) => ({ span: { from: at, to: at }, text: `  [${text}]` })),
  );
  expect(
    plainSpaces(shown)
      .split('\n')
      .filter((line) => line.includes('[')),
  ).toEqual([
    `supply  cell 1.5 V, internal 0.5 Ω  [${totals}]`,
    'probe   M  at (115, 80) mm  [0.75 V]',
    `probe   H  at A 20 mm  [${(readings?.probes[1]?.reading_V ?? 0).toFixed(2)} V]`,
  ]);
});

test('above each block stands what it comes to', () => {
  expect(lensesOf(examined(twoSetups)).map(({ name, text }) => plainSpaces(`${name}: ${text}`))).toEqual([
    `bars: ${totals}`,
    'swapped: not solved',
  ]);
});

describe('the meaning of a setup', () => {
  const keys = (text: string): readonly string[] => draft(text).setups.map(meaningKey);
  it('stays when only the text around it, spaces and remarks change', () => {
    const moved = `# A heading\n\n${twoSetups.replace('bar     N  10', '# remark\nbar N 10')}`;
    expect(keys(moved)).toEqual(keys(twoSetups));
  });
  it('changes with a length', () => {
    expect(keys(twoSetups.replace('(115, 80)', '(116, 80)'))).not.toEqual(keys(twoSetups));
  });
});

describe('fixes', () => {
  const text = twoSetups.replace('1.5 V', '1,5 V').replace('right of N', 'rigth of N');
  const { findings } = examined(text);
  test('at a place', () => {
    const at = text.indexOf('1,5 V') + 1;
    expect(fixesAt(findings, { from: at, to: at }).map(({ fix }) => fix.title)).toContain('Write 1.5 V');
    expect(fixesAt(findings, { from: 0, to: 1 })).toEqual([]);
  });
  test('certain ones all at once, without touching each other', () => {
    const twice = twoSetups.replaceAll('```electrodes', '```Electrodes');
    expect(edited(twice, certainEdits(examined(twice).findings))).toBe(twoSetups);
  });
});

test('formatting does what the command line does, in a range only there', () => {
  const untidy = twoSetups.replace('probe   M  at', 'probe M at').replace('row     A  from', 'row A from');
  expect(edited(untidy, formattingEdits(draft(untidy).sheet, { from: 0, to: untidy.length }))).toBe(
    formatSheet(untidy),
  );
  const at = untidy.indexOf('row A');
  expect(edited(untidy, formattingEdits(draft(untidy).sheet, { from: at, to: at + 3 }))).toBe(
    twoSetups.replace('probe   M  at', 'probe M at'),
  );
});

test('the outline of a sheet', () => {
  const outline = symbolsOf(draft(twoSetups).sheet).map(
    ({ name, detail, children }) =>
      `${name} ${detail}: ${children.map((child) => `${child.kind} ${child.name}`).join(', ')}`,
  );
  expect(outline).toEqual([
    'bars : electrode N, electrode P, row A, probe M, probe H',
    'swapped like bars: ',
  ]);
});

test('blocks and passages fold', () => {
  const text = `${twoSetups}\n::: teachers\nText.\n:::\n`;
  const first = foldsOf(draft(text).sheet).map(({ from, to }) => text.slice(from, to).split('\n'));
  expect(first.map((lines) => [lines[0], lines.at(-1)])).toEqual([
    ['```electrodes bars', '```'],
    ['```electrodes swapped like bars', '```'],
    ['::: teachers', ':::'],
  ]);
  expect(foldsOf(draft('::: teachers\nText.\n:::\n').sheet)).toEqual([]);
});

test('colours of a line', () => {
  const text = dedent(`
    \`\`\`electrodes bars
    bar  N  10 mm × 120 mm at (60, 80) mm negative  # left
    \`\`\`
  `);
  const painted = paintOf(draft(text).sheet).map(
    ({ kind, span }) => `${kind} ${text.slice(span.from, span.to)}`,
  );
  expect(painted).toEqual([
    'name bars',
    'word bar',
    'name N',
    'number 10',
    'unit mm',
    'number 120',
    'unit mm',
    'word at',
    'number 60',
    'number 80',
    'unit mm',
    'word negative',
    'remark # left',
  ]);
});
