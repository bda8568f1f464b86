/** A text that is typed in is read as one that is read for the first time, though most of its blocks are not read again. */
import fc from 'fast-check';
import '../seed.ts';
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type Draft, draftSheet } from '../../shared/checks/examine.ts';
import { KnownBlocks } from '../../shared/setup/known-blocks.ts';
import { moved } from '../../shared/text/moved.ts';
import { twoSetups } from '../editing/cursor.ts';

const samples = new URL('../../samples/', import.meta.url);
const texts = readdirSync(samples)
  .filter((name) => name.endsWith('.md'))
  .map((name) => readFileSync(new URL(name, samples), 'utf8'));

/** Slips of all kinds, in lists and quotations, with both line ends. */
const crooked = `
\`\`\`electrodes
paper  240 mm × 160 mm
papr   twice
supply cell 1.5
bar    N 10 mm × 120 mm at (60, 80) mm
disc   D diameter 20 mm 30 mm right of Q positive
allow  paper-size because it is so
probe  M at A 20 mm
\`\`\`

- in a list

  \`\`\`electrodes listed
  paper  240 mm × 160 mm, 5 kΩ per square
  supply cell 1.5 V
  box    N 60 mm × 40 mm, wall 5 mm, opening 10 mm facing right, at (60, 80) mm negative
  strip  P from (180, 20) mm to (180, 140) mm width 4 mm positive
  slit   from (120, 20) mm to (120, 140) mm
  row    A from N to P every 7 mm
  lifted N 5 mm × 5 mm at (40, 80) mm
  \`\`\`

> \`\`\`electrodes quoted like listed\r
> without P\r
> outline P (150, 20) mm (180, 20) mm (180, 90) mm positive\r
> reverse supply\r
> move N at (70, 80) mm\r
> \`\`\`\r

?{listed.resistance} and ?{quoted.N}
`;

const words = [
  '5',
  ' mm',
  '\n',
  '𝑉',
  'probe Z at (100, 40) mm\n',
  '# ',
  '\r\n',
  '```\n',
  '```electrodes\n',
  '> ',
  'bars',
];
const edit = fc.record({
  place: fc.double({ min: 0, max: 1, noNaN: true }),
  cut: fc.constantFrom(0, 0, 0, 1, 3, 40),
  text: fc.constantFrom('', ...words),
});

function edited(
  text: string,
  { place, cut, text: typed }: { place: number; cut: number; text: string },
): string {
  const from = Math.floor(place * text.length);
  return text.slice(0, from) + typed + text.slice(from + cut);
}

/** All of a draft but the tokens, which are made anew each time. */
const saidIn = ({ sheet: { blocks, findings }, setups, binding }: Draft): unknown => ({
  blocks,
  findings,
  setups,
  bound: binding.bound,
  ofInserts: binding.findings,
});

describe('blocks that are known', () => {
  it('are as if read again after any edits', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(crooked, twoSetups, ...texts),
        fc.array(edit, { minLength: 1, maxLength: 8 }),
        (start, edits) => {
          const known = new KnownBlocks();
          let text = start;
          draftSheet({ name: 'sheet.md', text }, {}, known);
          for (const one of edits) {
            text = edited(text, one);
            const source = { name: 'sheet.md', text };
            expect(saidIn(draftSheet(source, {}, known))).toEqual(saidIn(draftSheet(source)));
          }
        },
      ),
      { numRuns: 25 },
    );
  });

  it('are the same setups where they stand still, and others where they have moved', () => {
    const known = new KnownBlocks();
    const setupsOf = (text: string) => draftSheet({ name: 'sheet.md', text }, {}, known).setups;
    const [bars] = setupsOf(twoSetups);
    expect(setupsOf(`${twoSetups}More.\n`)[0]).toBe(bars);
    const [below] = setupsOf(`More.\n\n${twoSetups}`);
    expect(below).not.toBe(bars);
    expect(below?.span.from).toBe((bars?.span.from ?? 0) + 'More.\n\n'.length);
  });

  it('are forgotten with the reading after the last that had them', () => {
    const known = new KnownBlocks();
    const setupOf = (text: string) => draftSheet({ name: 'sheet.md', text }, {}, known).setups[0];
    const bars = setupOf(twoSetups);
    setupOf('Nothing.\n');
    expect(setupOf(twoSetups)).not.toBe(bars);
    expect(setupOf(twoSetups)).toEqual(bars);
  });
});

it('moves places and nothing else, and keeps what is one thing one', () => {
  const place = { from: 3, to: 5 };
  const read = {
    span: place,
    lines: [{ text: 'bar', at: 7 }],
    related: new Map([['N', { span: place, at: { x: 1, y: 2 } }]]),
    names: new Set(['N']),
    width: 4,
  };
  const copy = moved(read, 10);
  expect(copy).toEqual({
    span: { from: 13, to: 15 },
    lines: [{ text: 'bar', at: 17 }],
    related: new Map([['N', { span: { from: 13, to: 15 }, at: { x: 1, y: 2 } }]]),
    names: new Set(['N']),
    width: 4,
  });
  expect(copy.related.get('N')?.span).toBe(copy.span);
  expect(read.span).toBe(place);
});
