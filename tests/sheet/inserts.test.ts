import { describe, expect, test } from 'vitest';
import { readSheet } from '../../shared/sheet/read-sheet.ts';
import { checkReading, cut, read, typesOf, withBlock } from './sheets.ts';

/** The heads of the inserts of a text, without spans. */
function headsOf(text: string): unknown {
  const plain = (value: unknown): unknown =>
    JSON.parse(JSON.stringify(value, (key, inner) => (key === 'span' ? undefined : inner)));
  return read(withBlock(text)).inserts.map(({ head }) => plain(head));
}
const name = (setup: string | null, word: string, heading: string | null = null): object => ({
  setup,
  name: word,
  heading,
});
const M = name(null, 'M');
const A = name(null, 'A');

describe('the language of inserts', () => {
  test.each<[string, object]>([
    ['?{bars.M}', { kind: 'reading', of: name('bars', 'M'), form: 'value' }],
    ['?{ M }', { kind: 'reading', of: M, form: 'value' }],
    ['?{M, no unit}', { kind: 'reading', of: M, form: 'no unit' }],
    ['?{M of V0}', { kind: 'reading', of: M, form: 'of V0' }],
    ['?{M.strength}', { kind: 'reading', of: M, form: 'strength' }],
    ['?{bars.M.strength}', { kind: 'reading', of: name('bars', 'M'), form: 'strength' }],
    ['?{p.d. M to K}', { kind: 'difference', from: M, to: name(null, 'K') }],
    ['?{A at 3 cm}', { kind: 'along', row: A, distance_mm: 30 }],
    ['?{gradient bars.A}', { kind: 'gradient', row: name('bars', 'A') }],
    ['!{mean strength A from 0 mm to 5 mm}', { kind: 'mean strength', row: A, from_mm: 0, to_mm: 5 }],
    ['?{current}', { kind: 'current', of: null }],
    ['?{bars.current}', { kind: 'current', of: name(null, 'bars') }],
    ['?{bars.N.current}', { kind: 'current', of: name('bars', 'N') }],
    ['?{resistance}', { kind: 'resistance', of: null }],
    ['?{bars.resistance}', { kind: 'resistance', of: name(null, 'bars') }],
    ['?{range M}', { kind: 'range', of: M }],
    ['?{Range}', { kind: 'reading', of: name(null, 'Range'), form: 'value' }],
    ['?{blank V}', { kind: 'blank', unit: 'V', length_mm: null }],
    ['?{blank 60 mm}', { kind: 'blank', unit: null, length_mm: 60 }],
    ['?{blank s}', { kind: 'blank', unit: 's', length_mm: null }],
    ['?{Ω-probe}', { kind: 'reading', of: name(null, 'Ω-probe'), form: 'value' }],
    [
      '?{readings A, B}',
      { kind: 'readings', rows: [A, name(null, 'B')], columns: [], size: null, caption: null },
    ],
    [
      '?{readings E: r, V, V, V, mean, ln r}',
      { kind: 'readings', columns: ['r', 'V', 'V', 'V', 'mean', 'ln r'] },
    ],
    [
      '?{readings a.A as "left", b.A: distance, 1/r, half size "All of it"}',
      {
        rows: [name('a', 'A', 'left'), name('b', 'A')],
        columns: ['distance', '1/r'],
        size: 'half',
        caption: 'All of it',
      },
    ],
    [
      '?{drawing bars: electrodes, dimensions "A {braced} caption"}',
      {
        kind: 'drawing',
        setup: name(null, 'bars'),
        parts: ['electrodes', 'dimensions'],
        caption: 'A {braced} caption',
      },
    ],
    ['!{drawing, full size}', { kind: 'drawing', setup: null, parts: null, size: 'full' }],
    ['?{drawing: everything}', { parts: { length: 8 } }],
    [
      '?{graph E: V against ln r, help scales, hinted "ln"}',
      { kind: 'later', word: 'graph', columns: ['V', 'ln r'], help: 'scales', hinted: true, caption: 'ln' },
    ],
    ['!{kit one, two, 3 sets}', { word: 'kit', names: [name(null, 'one'), name(null, 'two')], sets: 3 }],
    ['!{cut-outs bars}', { word: 'cut-outs', names: [name(null, 'bars')] }],
    ['!{marks}', { word: 'marks', names: [] }],
  ])('%s', (text, head) => {
    expect(headsOf(text)).toMatchObject([head]);
    const unexpected = read(withBlock(text)).findings.filter(({ code }) => code !== 'insert-later');
    expect(unexpected).toEqual([]);
  });
});

test('slips are met one by one', () => {
  checkReading(`
    ?{}
    ^^^ error insert-form This insert is empty
    ?{strenght M}
      ^^^^^^^^ error insert-head
    ?{raneg M}
      ^^^^^ error insert-head \`range\`?
      => ?{range M}
    ?{blank v}
            ^ error insert-form \`v\` is no unit
            => ?{blank V}
    ?{A at 30}
           ^^ error insert-form
           => ?{A at 30 mm}
           => ?{A at 30 cm}
           => ?{A at 30 m}
    ?{A at 2,5 mm}
           ^^^ error insert-form
    ?{M no units please}
      ^ error insert-head
    ?{p.d. M and K}
             ^^^^^ error insert-form A p.d. lies between
    ?{M.strength.x}
      ^^^^^^^^^^^^ error insert-form
    ?{M_1}
      ^^^ error insert-form no name
    ?{M
    ^^^ error insert-unclosed
    => ?{M}
  `);
});

test.each([
  ['The middle reads ?{M.', 'The middle reads ?{M}.'],
  ['At ?{bars.M of V0, then on (2)', 'At ?{bars.M of V0}, then on (2)'],
  ['?{drawing bars "Two bars" and text', '?{drawing bars "Two bars"} and text'],
  ['?{readings of', '?{readings of}'],
])('%j is closed where it can be read', (open, closed) => {
  const { findings } = readSheet({ name: '', text: `\`\`\`electrodes\n\`\`\`\n\n${open}\n` });
  const [edit] = findings.find(({ code }) => code === 'insert-unclosed')?.fixes[0]?.edits ?? [];
  const at = (edit?.span.from ?? 0) - '```electrodes\n```\n\n'.length;
  expect(`${open.slice(0, at)}}${open.slice(at)}`).toBe(closed);
});

test('slips in tables and figures', () => {
  checkReading(
    `
    ?{readings}
    ^^^^^^^^^^^ error insert-form Of which row?

    ?{readings A: lnr}
                  ^^^ error insert-form \`ln r\`?
                  => ?{readings A: ln r}

    ?{drawing bars: electrode, fieldlines}
                    ^^^^^^^^^ error insert-form \`electrodes\`?
                               ^^^^^^^^^^ error insert-form \`field-lines\`?

    ?{drawing a, b}
                 ^ error insert-form one setup

    ?{graph A, help scale}
    ^^^^^^^^^^^^^^^^^^^^^^ note insert-later
                    ^^^^^ error insert-form

    Look: ?{drawing}
          ^^^^^^^^^^ error insert-alone A figure stands in a paragraph of its own
  `.replace('    ^^^^^^^^^^^^^^^^^^^^^^ note insert-later\n', ''),
  );
});

test('they are found in running text and not in code, addresses, comments or behind a backslash', () => {
  const text =
    'a?{M}b **!{M}** [see ?{M}](x "?{no}") `?{no}` <!-- ?{no} --> \\?{no} \\\\?{M}\n\n# On ?{M}\n\n    ?{no}\n';
  const sheet = read(withBlock(text));
  expect(sheet.inserts.map(({ written }) => written)).toEqual(['?{M}', '!{M}', '?{M}', '?{M}', '?{M}']);
  expect(sheet.inserts.map(({ told }) => told)).toEqual([false, true, false, false, false]);
  for (const insert of sheet.inserts) expect(cut(sheet, insert.span)).toBe(insert.written);
});

test('their places are those of the file, whatever stands before them', () => {
  const text = [
    '\ufeff# 𝔼 ?{M} ##',
    '> 1. é ?{M}',
    '>\tlazy  ',
    'and ?{M} too',
    '',
    '| a \\| ?{M} | V / mV |',
    '|---|:-:|',
    '| `x` | ?{M} |',
    'b \\| c | ?{M}',
    '',
    '- | ?{M} | x |',
    '  |---|---|',
    '  | x | ?{M} |',
    '',
    '?{M} under',
    '=====',
    '',
  ].join('\r\n');
  const sheet = read(`${text}${withBlock('')}`);
  expect(sheet.inserts).toHaveLength(9);
  for (const insert of sheet.inserts) expect(cut(sheet, insert.span)).toBe('?{M}');
  const places = sheet.inserts.map(({ span }) => span.from);
  expect(new Set(places).size).toBe(9);
  expect(places).toEqual([...places].sort((a, b) => a - b));
});

test('a hard blank at the end of a heading or cell moves no place', () => {
  for (const text of [
    '# ?{M}\u00a0',
    '# ?{M}\u00a0#',
    '| a | b |\n|---|---|\n| \u00a0?{M}\u00a0 | ?{M}\u2003|',
  ]) {
    const sheet = read(`${text}\n${withBlock('')}`);
    expect(sheet.inserts.length).toBeGreaterThan(0);
    for (const insert of sheet.inserts) expect(cut(sheet, insert.span)).toBe('?{M}');
  }
});

test('an insert over two lines keeps its places', () => {
  const sheet = read('> ?{drawing bars: electrodes,\n> dimensions "A\n> caption"}\n\n```electrodes\n```\n');
  expect(sheet.inserts[0]?.head).toMatchObject({ parts: ['electrodes', 'dimensions'], caption: 'A caption' });
  expect(sheet.inserts[0]?.alone).toBe(true);
  expect(sheet.findings).toEqual([]);
});

test('in a column headed with a unit the number stands bare', () => {
  const sheet = read(withBlock('| p | V / mV | p.d. (V) | x |\n|-|-|-|-|\n| ?{A} | ?{B} | ?{C} | ?{D} |'));
  expect(sheet.inserts.map(({ columnUnit }) => columnUnit)).toEqual([null, 'mV', 'V', null]);
  expect(sheet.inserts.map(({ bareNumber }) => bareNumber)).toEqual([false, true, true, false]);
});

test('figures alone in a paragraph stand side by side', () => {
  const sheet = read(withBlock('?{drawing a} ?{drawing b}\n!{readings A} [2]\n\n1. ?{drawing a}\n2. x'));
  expect(typesOf(sheet.tokens)).toContain('figures_open [insert insert insert total] figures_close');
  expect(typesOf(sheet.tokens)).toContain('list_item_open figures_open [insert] figures_close');
  expect(sheet.inserts.every(({ alone }) => alone)).toBe(true);
});

test('a picture’s description is not filled in and keeps no comment', () => {
  const sheet = read(withBlock('![a ?{M} <!-- secret --> b](x.png)'));
  expect(sheet.inserts).toEqual([]);
  expect(sheet.findings.map(({ code }) => code)).toEqual(['insert-place']);
  const image = sheet.tokens.flatMap((token) => token.children ?? []).find(({ type }) => type === 'image');
  expect(image?.children?.map(({ content }) => content).join('')).toBe('a ?{M}  b');
});
