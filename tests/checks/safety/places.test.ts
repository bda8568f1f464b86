/** Where notes are looked for and who must see them; where findings stand; what silences them. */
import { describe, expect, it, test } from 'vitest';
import { examineSheet } from '../../../shared/checks/examine.ts';
import { checkSafety, codesOf, findingsOf, sheetWith } from './safety.ts';

const block =
  '```electrodes\npaper 240 mm × 160 mm\nsupply cell 1.5 V, zinc-carbon\nbar N 10 mm × 120 mm at (60, 80) mm negative\nbar P 10 mm × 120 mm, 100 mm right of N positive\n```\n';
const own = (text: string): readonly string[] =>
  codesOf(`${text}\n\n${block}`).filter(
    (code) => code !== 'risk-assessment-missing' && code !== 'review-missing',
  );

const items = [
  'Keep the clips apart.',
  'Join the cell last.',
  'If a lead feels warm, disconnect it.',
  'Wash your hands.',
];
const list = items.map((item) => `- ${item}`).join('\n');

describe('notes count', () => {
  test.each([
    ['in a passage', `::: safety\n${list}\n:::`],
    ['in prose', `::: safety\n${items.join(' ')}\n:::`],
    ['under a heading', `## Safety\n\n${list}`],
    ['under another heading', `## Risk assessment\n\n${list}`],
    [
      'in a table',
      `## Hazards\n\n| Hazard | Control |\n| --- | --- |\n| clips | never let them touch |\n| cell | join it last |\n| lead | if warm, disconnect |\n| graphite | wash hands |`,
    ],
    [
      'in prose that goes on',
      `## 4 Safety\n\nThe clips are at the ends. Keep them apart. The cell is small; it is joined last. If a lead is warm, disconnect it. Wash your hands.`,
    ],
    [
      'in the words of a colleague',
      `**Before you touch anything.** Clips kept from touching; cell on last, off first, off at once if a lead is warm. Fingers get black: wash them.`,
    ],
    [
      'in questions to the reader',
      `## Be careful\n\n- The clips must not touch.\n- Connect the cell last.\n- Is a wire hot? Disconnect the cell.\n- Wash your hands.`,
    ],
    [
      'in the steps of the method',
      `## Method\n\n1. Keep the clips apart.\n2. Join the cell last. If it feels warm, disconnect it.\n3. Wash your hands.`,
    ],
    [
      'over the end of a line',
      `::: safety\n- Keep the\n  clips apart, join the cell\n  last. If a lead feels\n  warm, disconnect it. Wash your\n  hands.\n:::`,
    ],
    [
      'in bold and in capitals',
      `::: safety\n- KEEP THE **CLIPS** APART.\n- Join the *cell* **last**.\n- If a lead feels warm, disconnect it. WASH HANDS\n:::`,
    ],
    ['in a passage that is misspelt and has its own error', `::: saftey\n${list}\n:::`],
  ])('%s', (_, text) => {
    expect(own(text)).toEqual([]);
  });

  test.each([
    ['in a passage for teachers', `::: teachers\n${list}\n:::`],
    ['in an answer', `1. What matters? [2]\n\n   ::: answer\n   ${items.join(' ')}\n   :::`],
    ['in a comment', `<!-- ${items.join(' ')} -->`],
    ['in code', `~~~\n${list}\n~~~`],
    ['in a question', items.map((item) => `- ${item} [1]`).join('\n')],
  ])('not %s', (_, text) => {
    expect(own(text)).toEqual(['clips-shorted', 'paper-dust']);
  });

  it('for whom they serve: the finding says who does not see them', () => {
    const text = `::: safety\n- ${items.slice(1).join(' ')}\n:::\n\n::: teachers\nKeep the clips apart.\n:::`;
    const [found] = findingsOf(`${text}\n\n${block}`);
    expect(found?.hints.join(' ')).toContain(
      '“keep the clips apart” stands only where pupils do not see it.',
    );
    expect(found?.related.map(({ message }) => message)).toContain('This does not reach pupils.');
  });

  it('for technicians where they prepare', () => {
    const cut = (passage: string): readonly string[] =>
      codesOf(
        sheetWith({
          block: 'copper 0.15 mm',
          text: `::: ${passage}\nThe edges are deburred.\n:::`,
          notes: [...items, 'Edges are sharp: count the pieces.'],
        }),
      );
    expect(cut('technicians')).toEqual([]);
    expect(cut('teachers')).toEqual(['copper-edges']);
    expect(cut('pupils')).toEqual(['copper-edges']);
  });

  it('for the reader of a sheet that only one gets', () => {
    const sheet = sheetWith({ front: 'audience: technicians', notes: items });
    expect(codesOf(sheet)).toEqual([]);
    const bare = (audience: string, block: string): readonly string[] =>
      codesOf(sheetWith({ front: `audience: ${audience}`, notes: ['Take care.'], block }));
    expect(bare('teachers', '')).toEqual(['clips-shorted', 'paper-dust']);
    // A list for technicians is no place for what is done at the bench.
    expect(bare('technicians', '')).toEqual([]);
    expect(bare('technicians', 'copper 0.15 mm')).toEqual(['copper-edges']);
  });

  it('for technicians where the words that make a hazard are theirs', () => {
    const solder = (notes: string): readonly string[] =>
      codesOf(sheetWith({ text: `::: technicians\nSolder the leads. ${notes}\n:::` }));
    expect(solder('')).toEqual(['soldering']);
    expect(solder('Iron into its stand, eye protection, window open, wash hands.')).toEqual([]);
  });
});

test('findings stand on the opening of the passage', () => {
  checkSafety(`
    # Bars

    ::: safety
    ^^^^^^^^^^ warning clips-shorted are missing: join the supply last; disconnect if anything grows warm.
    ^^^^^^^^^^ note paper-dust A note on graphite and carbon
    - Keep the clips apart.
    :::

    \`\`\`electrodes
    paper   240 mm × 160 mm
    supply  cell 1.5 V, zinc-carbon
    bar     N  10 mm × 120 mm at (60, 80) mm  negative
    bar     P  10 mm × 120 mm, 100 mm right of N  positive
    \`\`\`
  `);
});

test('on the heading', () => {
  checkSafety(`
    ## Safety notes
       ^^^^^^^^^^^^ warning clips-shorted
       ^^^^^^^^^^^^ note paper-dust

    Keep the clips apart.

    \`\`\`electrodes
    paper   240 mm × 160 mm
    supply  cell 1.5 V, zinc-carbon
    bar     N  10 mm × 120 mm at (60, 80) mm  negative
    bar     P  10 mm × 120 mm, 100 mm right of N  positive
    \`\`\`
  `);
});

test('and without either on what makes the hazard', () => {
  checkSafety(`
    # Bars

    \`\`\`electrodes
    paper   240 mm × 160 mm
    ^^^^^^^^^^^^^^^^^^^^^^^ note paper-dust
    supply  cell 1.5 V
    ^^^^^^^^^^^^^^^^^^ warning cell-chemistry
    ^^^^^^^^^^^^^^^^^^ warning clips-shorted
    copper  0.15 mm
    ^^^^^^^^^^^^^^^ warning copper-edges
    bar     N  10 mm × 120 mm at (60, 80) mm  negative
    bar     P  10 mm × 120 mm, 100 mm right of N  positive
    \`\`\`
  `);
});

describe('allowances', () => {
  const codes = (text: string): readonly string[] =>
    examineSheetCodes(text).filter(
      (code) => code.startsWith('clips') || code.startsWith('eht') || code.startsWith('allow'),
    );
  const examineSheetCodes = (text: string): readonly string[] =>
    examineSheet({ name: 'sheet.md', text }, { gap: 0.1, traces: false }).findings.map(({ code }) => code);

  it('silence a note that is missing', () => {
    const sheet = sheetWith({ notes: ['Wash your hands.'] });
    expect(codes(sheet)).toEqual(['clips-shorted']);
    const allowed = sheet.replace(
      '::: safety',
      '<!-- papervolt: allow clips-shorted because a card on each board says it -->\n::: safety',
    );
    expect(codes(allowed)).toEqual([]);
  });

  it('silence no stop', () => {
    const sheet = sheetWith({ supply: 'eht 3 kV' });
    expect(codes(sheet.replace('supply ', '# allow eht-on-paper because we are careful\nsupply '))).toEqual(
      expect.arrayContaining(['eht-on-paper', 'allow-stop']),
    );
  });
});

it('notes that are kept elsewhere are not missing, and that is told', () => {
  const sheet = sheetWith({
    front: 'safety: kept-in "Laboratory notes"',
    notes: ['See the wall.'],
    supply: 'cell 1.5 V',
  });
  expect(codesOf(sheet)).toEqual(['cell-chemistry', 'notes-kept-in']);
});

it('a variation asks for no note twice', () => {
  const sheet = `${sheetWith({ notes: ['Take care.'], block: 'copper 0.2 mm' })}\n\n\`\`\`electrodes other like bars\nreverse supply\n\`\`\`\n`;
  expect(codesOf(sheet)).toEqual(['clips-shorted', 'copper-edges', 'paper-dust']);
});
