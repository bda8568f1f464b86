/** What is offered at a place, and how the text then reads. The cursor is a `‸`. */
import { describe, expect, it, test } from 'vitest';
import { refactoringsAt } from '../../../shared/editing/refactor/offered.ts';
import { edited, withCursor } from '../cursor.ts';

const titles = (marked: string): readonly string[] => offered(marked).map(({ title }) => title);

/** Changed lines after the one refactoring whose title begins so; or what there is instead. */
function rewritten(marked: string, title: string): string {
  const { text } = withCursor(marked);
  const found = offered(marked).filter((one) => one.title.startsWith(title));
  const [only] = found;
  if (only === undefined || found.length > 1) return `offered: ${titles(marked).join('; ')}`;
  const before = text.split('\n');
  return edited(text, only.edits)
    .split('\n')
    .filter((line) => !before.includes(line))
    .join('\n');
}

function offered(marked: string) {
  const { draft, offset } = withCursor(marked);
  return refactoringsAt(draft, { from: offset, to: offset });
}

const sheet = `
\`\`\`electrodes bars
paper   240 mm × 160 mm, 5 kΩ per square
supply  cell 1.5 V, internal 0.5 Ω, limit 3 mA
bar     N  10 mm × 120 mm at (60, 80) mm                negative
bar     P  10 mm × 120 mm, 100 mm right of N            positive
disc    R  diameter 20 mm, midway between N and P       floating  # loose
bar     T  10 mm × 20 mm at (100, 30) mm, turned 20°    floating
outline F  (20, 2) (30, 2) (20, 12) mm                  floating
row     A  from N to P every 10 mm
probe   M  at (115, 80) mm
probe   H  at A 20 mm
\`\`\`
`.trimStart();
const at = (before: string): string => sheet.replace(before, `${before}‸`);

describe('units', () => {
  test.each([
    ['240 mm', ['Write 24 cm']],
    ['5 kΩ', ['Write 5000 Ω']],
    ['cell 1.5 V', ['Write 1500 mV']],
    ['0.5 Ω', []],
    ['3 mA', ['Write 3000 µA']],
    ['M  at (115', ['Write (11.5, 8) cm', 'Write at A 50 mm']],
  ] as const)('at %s', (before, expected) => {
    expect(titles(at(before))).toEqual(expected);
  });

  it('keeps the columns', () => {
    expect(rewritten(at('N  10 mm'), 'Write 1 cm')).toBe(
      'bar     N  1 cm × 120 mm at (60, 80) mm                 negative',
    );
  });

  it('takes all that share a unit', () => {
    expect(rewritten(at('(30, 2'), 'Write all in cm')).toBe(
      'outline F  (2, 0.2) (3, 0.2) (2, 1.2) cm                floating',
    );
    const shared = sheet.replace('240 mm × 160 mm', '24 × 1‸6 cm');
    expect(rewritten(shared, 'Write 240 × 160 mm')).toBe('paper   240 × 160 mm, 5 kΩ per square');
    const mixed = sheet.replace('(115, 80) mm', '(115 mm, 9.5‸0 cm)');
    expect(rewritten(mixed, 'Write 95.0 mm')).toBe('probe   M  at (115 mm, 95.0 mm)');
  });
});

describe('places', () => {
  it('become coordinates', () => {
    expect(rewritten(at('100 mm right'), 'Write at')).toBe(
      'bar     P  10 mm × 120 mm, at (170, 80) mm              positive',
    );
    expect(rewritten(at('midway'), 'Write at')).toBe(
      'disc    R  diameter 20 mm, at (115, 80) mm              floating  # loose',
    );
    expect(rewritten(at('at A 2'), 'Write at')).toBe('probe   H  at (85, 80) mm');
    expect(rewritten(sheet.replace('(60, 80) mm', 'cen‸tre'), 'Write at')).toBe(
      'bar     N  10 mm × 120 mm at (120, 80) mm          negative',
    );
  });

  it('become relative where the middles are level', () => {
    const level = sheet.replace(', 100 mm right of N', ' a‸t (170, 80) mm');
    expect(rewritten(level, 'Write 100 mm')).toBe(
      'bar     P  10 mm × 120 mm, 100 mm right of N         positive',
    );
    const high = sheet.replace(', 100 mm right of N', ' at (170, 8‸1) mm');
    expect(titles(high).filter((title) => title.includes('of N'))).toEqual([]);
  });

  it('are not taken from what counts from them', () => {
    expect(titles(at('N  10 mm × 120 mm at (')).some((title) => /right|left/u.test(title))).toBe(false);
  });
});

test('bars become outlines', () => {
  expect(rewritten(at('bar     N'), 'Write bar N')).toBe(
    'outline N  (55, 20) (65, 20) (65, 140) (55, 140) mm     negative',
  );
  expect(rewritten(at('bar     T'), 'Write bar T as an outline, its corners to 0.001 mm')).toBe(
    'outline T  (98.722, 18.893) (108.119, 22.313) (101.278, 41.107) (91.881, 37.687) mm  floating',
  );
  const first = sheet.replace(
    'N  10 mm × 120 mm at (60, 80) mm                negative',
    '‸N  negative 10 mm × 120 mm at (60, 80) mm',
  );
  expect(rewritten(first, 'Write bar N')).toBe(
    'outline N  (55, 20) (65, 20) (65, 140) (55, 140) mm negative',
  );
});

describe('rows', () => {
  const bare = sheet.replace('row     A  from N to P every 10 mm\n', '').replace(/probe {3}H.*\n/u, '');
  it('run between the two terminals by a step that divides', () => {
    expect(rewritten(bare.replace('bars', 'bars‸'), 'Add row')).toBe('row     A  from N to P every 10 mm');
    expect(rewritten(bare.replace('bar     P', 'bar     P‸'), 'Add row')).toBe(
      'row     A  from N to P every 10 mm',
    );
    const odd = bare.replace('100 mm right', '73 mm right').replace('bars', 'bars‸');
    expect(rewritten(odd, 'Add row')).toBe('row     A  from N to P in 10 steps');
  });
  it('are not offered twice, nor for what floats', () => {
    expect(titles(at('electrodes bars')).filter((title) => title.startsWith('Add'))).toEqual([]);
    expect(
      titles(bare.replace('disc    R', 'disc    R‸')).filter((title) => title.startsWith('Add')),
    ).toEqual([]);
  });
});

test('a setup without a name gets one, also where it is spoken of', () => {
  const unnamed = `${sheet.replace('electrodes bars', 'electrodes‸')}
\`\`\`electrodes other like setup
change  R  joined to P
\`\`\`

At M: ?{setup.M}, ?{other.M}, ?{setup.current}.
`;
  expect(rewritten(unnamed, 'Name this setup bars')).toBe(
    '```electrodes bars\n```electrodes other like bars\nAt M: ?{bars.M}, ?{other.M}, ?{bars.current}.',
  );
});

describe('a block that repeats another one', () => {
  const again = (change: (text: string) => string): string =>
    `${sheet}\n${change(sheet.replace('electrodes bars', 'electrodes again‸'))}`;

  it('becomes a variation', () => {
    const text = again((block) =>
      block
        .replace('(60, 80) mm                negative', '(6.5, 8) cm                held at 0 V')
        .replace('probe   M  at (115, 80)', 'probe   M  at (110, 80)')
        .replace('5 kΩ', '6 kΩ')
        .replace(/outline.*\n/u, '')
        .replace('disc    R  diameter 20 mm', 'disc    R  diameter 22 mm')
        .replace('# loose', '')
        .replace('probe   H', '\n# along the row\nprobe   H'),
    );
    const { text: before } = withCursor(text);
    const [variation] = offered(text).filter(({ title }) => title.startsWith('Write as a variation of bars'));
    const after = edited(before, variation?.edits ?? []);
    expect(after.slice(after.lastIndexOf('electrodes'))).toBe(
      [
        'electrodes again like bars',
        'without F',
        'paper   240 mm × 160 mm, 6 kΩ per square',
        'change  N  held at 0 V',
        'move    N  at (6.5, 8) cm',
        'without R',
        'disc    R  diameter 22 mm, midway between N and P       floating',
        'move    M  at (110, 80) mm',
        '',
        '# along the row',
        '```',
      ].join('\n'),
    );
  });

  it('is left alone where a remark would be lost, or where too little is alike', () => {
    expect(titles(again((block) => block))).not.toContainEqual(expect.stringContaining('variation'));
    const plain = again((block) => block.replace('# loose', ''));
    expect(titles(plain)).toContainEqual('Write as a variation of bars: 0 lines instead of 10');
    const other = again((block) => block.replace(/^(bar|disc|row|probe|outline|supply).*\n/gmu, ''));
    expect(titles(other)).not.toContainEqual(expect.stringContaining('variation'));
  });

  it('is left alone where the other one has what this one must not have', () => {
    const holed = again((block) => block.replace('# loose', '')).replace(
      'row     A',
      'hole disc diameter 8 mm at (200, 20) mm\nrow     A',
    );
    expect(titles(holed)).not.toContainEqual(expect.stringContaining('variation'));
  });
});

test('nothing outside our blocks', () => {
  expect(titles(`‸Prose.\n\n${sheet}`)).toEqual([]);
  expect(titles(`${sheet}\nProse 5 mm‸.`)).toEqual([]);
});
