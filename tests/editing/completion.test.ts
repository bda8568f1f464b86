/** What is offered at a place of a sheet, the likeliest first. */
import { describe, expect, it, test } from 'vitest';
import { words } from '../../shared/block/words.ts';
import { draftSheet } from '../../shared/checks/examine.ts';
import { completionsAt } from '../../shared/editing/completion/complete.ts';
import { fenceCompletions } from '../../shared/editing/completion/fence.ts';
import { keyHelp, keyValues } from '../../shared/editing/completion/front-matter.ts';
import { headHelp } from '../../shared/editing/completion/insert.ts';
import { lineWords } from '../../shared/editing/completion/line-words.ts';
import { usualUnits } from '../../shared/quantity/units.ts';
import { frontMatterKeys } from '../../shared/sheet/front-matter.ts';
import { insertHeads } from '../../shared/sheet/inserts/parse-insert.ts';
import { readSheet } from '../../shared/sheet/read-sheet.ts';
import { twoSetups, withCursor } from './cursor.ts';

/** Labels offered at the cursor. */
function offered(marked: string): readonly string[] {
  const { draft, offset } = withCursor(marked);
  return completionsAt(draft, offset).map(({ label }) => label);
}

/** A line in a block of its own behind two electrodes and a row. */
const onLine = (line: string): readonly string[] =>
  offered(`
    \`\`\`electrodes
    paper   240 mm × 160 mm
    bar     N  10 mm × 120 mm at (60, 80) mm  negative
    bar     P  10 mm × 120 mm, 100 mm right of N  positive
    row     A  from N to P every 10 mm
    probe   M  at (115, 80) mm
    ${line}
    \`\`\`
  `);
const inText = (text: string): readonly string[] => offered(`${twoSetups}\n${text}\n`);

describe('in a block', () => {
  test('the words that begin a line', () => {
    expect(onLine('‸')).toEqual(expect.arrayContaining(['supply', 'bar', 'probe', 'row', 'draw']));
    expect(onLine('‸')).not.toContain('change');
  });

  test('a whole line to fill in, under a free name', () => {
    const { draft, offset } = withCursor('```electrodes\nbar N 10 mm × 10 mm at centre negative\n‸\n```');
    const bar = completionsAt(draft, offset).find(({ label }) => label === 'bar');
    expect(bar?.text).toBe('bar «A» «10 mm» × «120 mm» at («60», «80») mm negative');
  });

  test('units of what a number must be', () => {
    expect(onLine('bar  Q  10 ‸')).toEqual(['mm', 'cm', 'm']);
    expect(onLine('supply cell 1.5 ‸')[0]).toBe('V');
    expect(onLine('supply 2 ‸')).toEqual(['cell']);
    expect(onLine('bar Q 1 mm × 2 mm at centre held at 2 ‸')[0]).toBe('V');
    expect(onLine('supply cell 1.5 V, internal 0.5 ‸')).toContain('Ω');
    expect(onLine('supply cell 1.5 V, internal 0.5 ‸')).not.toContain('V');
    expect(onLine('meter 10 ‸')).toContain('MΩ');
    expect(onLine('hole 5 mm × 5 mm at (6, 8) mm turned 30 ‸')).toEqual(['°']);
    expect(onLine('row B from N to P 11 ‸')).toEqual(['readings']);
    expect(onLine('row B from N to P in 10 ‸')).toEqual(['steps']);
    expect(onLine('row B from N to P every 10 ‸')[0]).toBe('mm');
    expect(onLine('row B from N to constructor 10 ‸')).toEqual(['readings']);
  });

  test('names where names belong', () => {
    expect(onLine('row  B  from ‸').slice(0, 2)).toEqual(['N', 'P']);
    expect(onLine('bar Q 10 mm × 10 mm, 20 mm left of ‸').slice(0, 2)).toEqual(['N', 'P']);
    expect(onLine('probe K at ‸')[0]).toBe('A');
    expect(onLine('clip ‸').slice(0, 2)).toEqual(['N', 'P']);
  });

  test('nothing where a new name belongs', () => {
    expect(onLine('bar ‸')).toEqual([]);
  });

  test('the part of a word is replaced', () => {
    const { draft, offset } = withCursor('```electrodes\npap‸\n```');
    const [first] = completionsAt(draft, offset);
    expect(first?.span).toEqual({ from: offset - 3, to: offset });
  });

  test('codes to be allowed', () => {
    expect(onLine('# allow ‸')).toContain('row-uneven');
    expect(onLine('# a remark ‸')).toEqual([]);
  });

  test.each([
    ['paper A4 ‸', ['landscape', 'portrait']],
    ['paper 240 mm × 160 mm, 5 kΩ ‸', ['per square']],
    ['supply ‸', ['cell', 'power-pack', 'eht', 'ht']],
    ['supply eht 3 kV, ‸', ['internal', 'limit', 'ac']],
    ['supply 2 cells ‸', []],
    ['meter 10 MΩ, probe ‸', ['tip']],
    ['bar Q 10 mm ‸', ['wide']],
    ['bar Q 10 mm wide, 20 mm ‸', ['high', 'at', 'midway between']],
    ['bar Q 10 mm × 20 mm ‸', ['at', 'midway between']],
    ['bar Q 10 mm × 20 mm, 5 mm ‸', ['right of', 'left of', 'above', 'below']],
    ['bar Q 10 mm × 20 mm, 5 mm right ‸', ['of']],
    ['bar Q 10 mm × 20 mm, midway between N ‸', ['and']],
    ['bar Q 10 mm × 20 mm at ‸', ['centre', 'centre of']],
    ['bar Q 10 mm × 20 mm at cen‸', ['centre', 'centre of']],
    ['disc Q diameter 5 mm at (1, 2) mm ‸', ['positive', 'negative', 'floating', 'held at', 'joined to']],
    ['disc Q diameter 5 mm at (1, 2) mm joined to ‸', ['N', 'P']],
    ['ring Q diameter 50 mm, wall 2 mm, opening 5 mm facing ‸', ['left', 'right', 'up', 'down']],
    ['spike S base 5 mm, length 6 mm ‸', ['tip radius', 'tip at', 'on']],
    ['spike S base 5 mm, length 6 mm on N pointing left ‸', ['at']],
    ['slit from ‸', ['centre', 'centre of']],
    ['row B from N ‸', ['to', 'left', 'right', 'up', 'down']],
    ['row B from N to P ‸', ['every', 'in', 'at']],
    ['equipotentials 0 V to ‸', []],
    ['draw everything ‸', expect.arrayContaining(['for'])],
  ])('%s: what may come next alone', (line, labels) => {
    expect(onLine(line)).toEqual(labels);
  });

  it('offers a move in the form of what is moved', () => {
    const varied = (line: string) => inText(`\`\`\`electrodes third like bars\n${line}\n\`\`\``);
    expect(varied('move M ‸')).toEqual(['at']);
    expect(varied('move A ‸')).toEqual(['from']);
    expect(varied('move N ‸')).not.toContain('from');
  });

  it('offers a line that a block has once only while it is missing', () => {
    expect(onLine('‸')).not.toContain('paper');
    expect(onLine('‸').slice(0, 2)).toEqual(['supply', 'meter']);
  });

  it('speaks of electrodes that there are', () => {
    const { draft, offset } = withCursor('```electrodes\ndisc K diameter 9 mm at centre negative\n‸\n```');
    const clip = completionsAt(draft, offset).find(({ label }) => label === 'clip');
    expect(clip?.text).toBe('clip «K» «0.2 Ω»');
  });

  it('offers no word that the line cannot have', () => {
    expect(onLine('outline Q ‸')).not.toContain('right of');
    expect(onLine('disc Q ‸')).not.toContain('tip at');
    expect(onLine('row Q ‸')).not.toContain('steps');
    expect(onLine('draw electrodes ‸')).not.toContain('pupils');
    expect(onLine('draw electrodes for ‸')).toEqual(['pupils', 'teachers', 'technicians']);
  });

  it('offers every word of the language on some line', () => {
    const onLines = new Set(Object.values(lineWords).flatMap((line) => line.words));
    const begins = ['statement', 'shape', 'head'];
    const lost = words.filter(({ word, role }) => !begins.includes(role) && !onLines.has(word));
    expect(lost.map(({ word }) => word)).toEqual([]);
    const lines = words.filter(({ role }) => role === 'statement' || role === 'shape');
    expect(Object.keys(lineWords).sort()).toEqual(lines.map(({ word }) => word).sort());
  });
});

describe('on the opening line', () => {
  test('like, and the setups to be like', () => {
    expect(inText('```electrodes third ‸\n```')).toEqual(['like']);
    expect(inText('```electrodes third like ‸\n```')).toEqual(['bars', 'swapped']);
  });

  test.each([
    ['```‸\n\nText.', 'at centre\n```'],
    ['~~~~ el‸', 'at centre\n~~~~'],
    ['```‸\n```\nText.', 'at centre'],
    ['```‸```\nText.', 'at centre\n'],
  ])('%j: the block is closed unless an editor has done it', (marked, end) => {
    const [before = '', after = ''] = marked.split('‸');
    const [first] = fenceCompletions({ name: 'new.md', text: before + after }, before.length);
    expect(first?.text.slice(first.text.indexOf('at centre'))).toBe(end);
  });

  test.each([
    ['- ```‸', '  '],
    ['   > 1. ```‸\n   >    ```', '>    '],
    ['   ```‸', ''],
  ])('%j: it stays in its list or quotation', (marked, prefix) => {
    const [before = '', after = ''] = marked.split('‸');
    const [first] = fenceCompletions({ name: 'new.md', text: before + after }, before.length);
    const [, ...lines] = first?.text.split('\n') ?? [];
    expect(lines.length).toBeGreaterThan(6);
    expect(lines.filter((line) => !line.startsWith(prefix))).toEqual([]);
    expect(lines[0]?.slice(prefix.length)).toMatch(/^paper/);
    expect(lines.filter((line) => line.trim() === '```').length).toBe(after === '' ? 1 : 0);
  });

  test('a block behind three backticks, in any text', () => {
    const draft = draftSheet({ name: 'new.md', text: '# New\n\n```el' });
    expect(completionsAt(draft, 12).map(({ label }) => label)).toEqual(['electrodes']);
  });
});

describe('in an insert', () => {
  test('names and words', () => {
    expect(inText('Here ?{‸}')).toEqual(expect.arrayContaining(['bars.M', 'readings', 'current']));
  });
  test('behind the point of a setup', () => {
    expect(inText('Here ?{bars.‸}')).toEqual(['M', 'H', 'N', 'P', 'A', 'current', 'resistance']);
  });
  test('behind a word', () => {
    expect(inText('?{drawing ‸}')).toEqual(['bars', 'swapped']);
    expect(inText('?{readings bars.A: ‸}')).toContain('ln r');
    expect(inText('?{gradient ‸}')).toEqual(['bars.A', 'swapped.A']);
  });
  test('behind a name', () => {
    expect(inText('?{mean strength bars.A ‸}')).toEqual(['from']);
    expect(inText('?{mean strength bars.A from 0 mm ‸}')).toEqual(['to']);
    expect(inText('?{mean strength bars.A from 5 ‸}')).toEqual([...usualUnits.length]);
    expect(inText('?{bars.A ‸}')).toEqual(['at']);
    expect(inText('?{bars.A at 30 ‸}')).toEqual([...usualUnits.length]);
    expect(inText('?{bars.M ‸}')).toEqual(['of V0']);
    expect(inText('?{drawing bars ‸}')).toContain('half size');
    expect(inText('?{graph bars.A ‸}')).toContain('help scales');
  });
  test.each([
    ['?{bars.M.‸}', ['strength']],
    ['?{bars.N.‸}', ['current']],
    ['?{bars.M of ‸}', ['V0']],
    ['?{bars.M, ‸}', ['no unit']],
    ['?{bars.A at ‸}', []],
    ['?{p.d. bars.M ‸}', ['to']],
    ['?{p.d. bars.M to ‸}', expect.not.arrayContaining(['to'])],
    ['?{drawing bars, ‸}', expect.arrayContaining(['swapped'])],
  ])('%s', (text, labels) => {
    expect(inText(text)).toEqual(labels);
  });
  test('a pattern has names of the sheet', () => {
    const { draft, offset } = withCursor(`${twoSetups.replaceAll('bars', 'plates')}\n?{‸}\n`);
    const patterns = completionsAt(draft, offset).map(({ text }) => text);
    expect(patterns).toEqual(expect.arrayContaining(['drawing «plates» "«caption»"', 'readings «plates.A»']));
  });
  test('before it is closed', () => {
    expect(inText('?{drawing ‸')).toEqual(['bars', 'swapped']);
  });
  it('is silent behind it and in code', () => {
    expect(inText('Here ?{bars.M}‸')).toEqual([]);
    expect(inText('Here `?{‸}`')).toEqual([]);
  });
  it('knows every word that an insert begins with', () => {
    expect(Object.keys(headHelp).sort()).toEqual([...insertHeads].sort());
  });
});

describe('in the front matter', () => {
  test('keys that are not there yet', () => {
    const keys = offered(`---\ntitle: Bars\n‸\n---\n\n${twoSetups}`);
    expect(keys).toEqual(frontMatterKeys.filter((key) => key !== 'title'));
  });
  test('values', () => {
    expect(offered(`---\nstatus: ‸\n---\n\n${twoSetups}`)).toEqual([...(keyValues.status ?? [])]);
  });
  test('where the notes on safety are', () => {
    expect(offered(`---\nsafety: ‸\n---\n\n${twoSetups}`)).toEqual(['kept-in']);
  });
  it('has help for every key, and only values that are read', () => {
    expect(Object.keys(keyHelp).sort()).toEqual([...frontMatterKeys].sort());
    for (const [key, values] of Object.entries(keyValues)) {
      for (const value of values) {
        const text = `---\n${key}: ${value}\n---\n\n\`\`\`electrodes\n\`\`\`\n`;
        expect(readSheet({ name: '', text }).findings, `${key}: ${value}`).toEqual([]);
      }
    }
  });
});

describe('passages', () => {
  test('their readers, each of which is understood', () => {
    const kinds = inText('::: ‸');
    expect(kinds).toContain('technicians');
    for (const kind of kinds) {
      const text = `\`\`\`electrodes\n\`\`\`\n\n::: ${kind}\nText.\n:::\n`;
      expect(readSheet({ name: '', text }).findings, kind).toEqual([]);
    }
  });
  test('room for an answer', () => {
    expect(inText('::: answer ‸')).toEqual(['lines', 'box']);
  });
});

it('is silent in prose and where there is no sheet', () => {
  expect(inText('Plain words ‸')).toEqual([]);
  expect(offered('# Notes\n\n?{‸}')).toEqual([]);
});
