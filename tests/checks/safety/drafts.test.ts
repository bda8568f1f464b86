/** Drafts of notes: where they go, how they open, and that they are what was missing and nothing worse. */
import { describe, expect, it, test } from 'vitest';
import { hazards } from '../../../shared/checks/safety/hazards/index.ts';
import { applied, dedent } from '../../check.ts';
import { phrasings } from './phrasings.ts';
import { codesOf, findingsOf, sheetWith } from './safety.ts';

/** The text after the fix with this title. */
function fixedBy(text: string, title: RegExp): string {
  const fix = findingsOf(text)
    .flatMap(({ fixes }) => fixes)
    .find((one) => title.test(one.title));
  if (fix === undefined) throw new Error(`no fix ${title}`);
  expect(fix.certain).toBe(false);
  return applied(text, fix.edits);
}

const block =
  '```electrodes\npaper 240 mm × 160 mm\nsupply cell 1.5 V, zinc-carbon\nbar N 10 mm × 120 mm at (60, 80) mm negative\nbar P 10 mm × 120 mm, 100 mm right of N positive\n```\n';
const wash = 'Draft: adapt to your risk assessment. Wash your hands afterwards: graphite and carbon rub off.';
const clips = 'Keep the clips apart. Join the cell last. If a lead feels warm, disconnect it.';

describe('one draft goes', () => {
  test.each([
    [
      'behind the last item of the passage',
      `# T\n\n::: safety\n- ${clips}\n- Take care.\n\nRules come first.\n:::\n\n`,
      `# T\n\n::: safety\n- ${clips}\n- Take care.\n- ${wash}\n\nRules come first.\n:::\n\n`,
    ],
    [
      'behind an item of several lines, with its mark',
      `::: safety\n* Keep the clips apart.\n* Join the cell last. If a lead feels warm,\n  disconnect it.\n:::\n\n`,
      `::: safety\n* Keep the clips apart.\n* Join the cell last. If a lead feels warm,\n  disconnect it.\n* ${wash}\n:::\n\n`,
    ],
    [
      'with the next number',
      `::: safety\n1. Take care.\n2. ${clips}\n:::\n\n`,
      `::: safety\n1. Take care.\n2. ${clips}\n3. ${wash}\n:::\n\n`,
    ],
    [
      'below a passage without a list',
      `::: safety\n${clips}\n:::\n\n`,
      `::: safety\n${clips}\n\n- ${wash}\n:::\n\n`,
    ],
    [
      'into an empty passage',
      `${clips}\n\n::: safety\n:::\n\n`,
      `${clips}\n\n::: safety\n- ${wash}\n:::\n\n`,
    ],
    [
      'inside a quotation',
      `> ::: safety\n> - ${clips}\n> :::\n\n`,
      `> ::: safety\n> - ${clips}\n> - ${wash}\n> :::\n\n`,
    ],
    [
      'below a heading',
      `# T\n\n## Safety notes\n\n- ${clips}\n\n## Method\n\n- Plot.\n\n`,
      `# T\n\n## Safety notes\n\n- ${clips}\n- ${wash}\n\n## Method\n\n- Plot.\n\n`,
    ],
    [
      'below a heading and its subheadings',
      `## Hazards\n\n### Cell\n\n- ${clips}\n\n### Copper\n\n- Take care.\n\n## Method\n\n`,
      `## Hazards\n\n### Cell\n\n- ${clips}\n\n### Copper\n\n- Take care.\n- ${wash}\n\n## Method\n\n`,
    ],
    [
      'below a paragraph that is headed in bold',
      `**Safety.** ${clips}\n\n**Aim.** To plot.\n\n`,
      `**Safety.** ${clips}\n\n- ${wash}\n\n**Aim.** To plot.\n\n`,
    ],
    [
      'into a new passage below the title',
      `# T\n\n${clips}\n\n`,
      `# T\n\n::: safety\n- ${wash}\n:::\n\n${clips}\n\n`,
    ],
    ['into a new passage at the top', `${clips}\n\n`, `::: safety\n- ${wash}\n:::\n\n${clips}\n\n`],
    [
      'into a new passage below the front matter',
      `---\ntitle: T\n---\n${clips}\n\n`,
      `---\ntitle: T\n---\n\n::: safety\n- ${wash}\n:::\n\n${clips}\n\n`,
    ],
  ])('%s', (_, before, expected) => {
    expect(fixedBy(before + block, /wash hands/)).toBe(expected + block);
    // The same in lines that end otherwise.
    const ends = (text: string): string => text.replaceAll('\n', '\r\n');
    expect(fixedBy(ends(before + block), /wash hands/)).toBe(ends(expected + block));
  });

  it('to the technicians where they prepare, if they have a passage', () => {
    const text = `::: safety\n- Sharp edges. Count the pieces. ${clips} Wash your hands.\n:::\n\n::: technicians\n- Store it flat.\n:::\n\n${block.replace('supply', 'copper 0.15 mm\nsupply')}`;
    expect(fixedBy(text, /deburr/)).toBe(
      text.replace(
        '- Store it flat.\n',
        '- Store it flat.\n- Draft: adapt to your risk assessment. Edges are deburred with fine abrasive before the pieces are issued.\n',
      ),
    );
  });
});

it('one fix for each note that is missing, one for all, once at a place', () => {
  const found = findingsOf(sheetWith({ notes: ['Take care.'] }));
  expect(found.map(({ code, fixes }) => [code, fixes.map(({ title }) => title)])).toEqual([
    [
      'clips-shorted',
      [
        'Add a draft: keep the clips apart',
        'Add a draft: join the supply last',
        'Add a draft: disconnect if anything grows warm',
        'Add drafts of all 4 missing notes',
      ],
    ],
    ['paper-dust', ['Add a draft: wash hands or wipe the bench afterwards']],
  ]);
  expect(fixedBy(sheetWith({ notes: ['Take care.'] }), /all 4/)).toContain(
    dedent(`
    - Take care.
    - Draft: adapt to your risk assessment. Keep the two clips apart: do not let them touch each other or lie against the same metal.
    - Draft: adapt to your risk assessment. Join the supply last, when everything else is in place, and take it off first.
    - Draft: adapt to your risk assessment. If a lead or the supply feels warm, disconnect it at once and tell your teacher.
    - Draft: adapt to your risk assessment. Wash your hands afterwards: graphite and carbon rub off.
    :::
  `),
  );
});

const notes = hazards.flatMap(({ notes: own }) => own);

describe('with all drafts nothing is missing and nothing else is found', () => {
  test.each(Object.entries(phrasings))('%s', (_, { notes: _notes, text = '', ...parts }) => {
    const before = sheetWith({ ...parts, text, notes: ['Take care.'] });
    const drafted = fixedBy(before, /Add drafts of all/);
    const own = codesOf(before).filter((code) => !hazards.some((hazard) => hazard.code === code));
    expect(codesOf(drafted)).toEqual(own);
  });

  it('in a sheet of every hazard, for every reader, in American words too', () => {
    const everything = Object.values(phrasings)
      .map(({ text }) => text)
      .join(' ');
    const blocks = Object.values(phrasings)
      .flatMap(({ block: lines }) => lines ?? [])
      .join('\n');
    for (const front of ['', 'language: en-US']) {
      const before = sheetWith({
        front,
        text: everything,
        block: blocks,
        supply: '4 cells 3 V, alkaline',
        notes: ['Take care.'],
      });
      const drafted = fixedBy(
        before.replace(front === '' ? '' : 'language: en-GB\n', ''),
        /Add drafts of all/,
      );
      expect(codesOf(drafted)).toEqual([]);
    }
  });
});

describe('the words of drafts', () => {
  const words = notes.flatMap(({ draft, draftAmerican, name }) => [draft, draftAmerican ?? draft, name]);
  test.each(words)('%s', (written) => {
    expect(written).not.toMatch(
      /\b(?:safe(?:ly)?|harmless|low hazard|no risk|approved|compliant|none needed)\b/i,
    );
  });

  it('of hazards, too', () => {
    for (const { why, about } of hazards)
      expect(`${why} ${about}`).not.toMatch(/\b(?:safe(?:ly)?|harmless|no risk|approved|compliant)\b/i);
  });
});

it('a draft that nobody adapted is told once the sheet is reviewed', () => {
  const drafted = fixedBy(sheetWith({ notes: ['Take care.'] }), /all 4/);
  expect(codesOf(drafted)).toEqual([]);
  expect(codesOf(drafted.replace('title:', 'status: issued\ntitle:'))).toEqual(Array(4).fill('draft-left'));
});
