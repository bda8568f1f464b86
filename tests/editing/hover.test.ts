/** What is told about a place. Values are those that the sheet prints. */
import { describe, expect, it, test } from 'vitest';
import { hoverAt, hoverNeeds } from '../../shared/editing/hover.ts';
import { examined, twoSetups, withCursor } from './cursor.ts';

const at = (before: string): string => twoSetups.replace(before, `${before}‸`);
const { solutions } = examined(twoSetups);
const readings = solutions.get(0)?.readings;
const mA = ((readings?.current_A ?? 0) * 1000).toFixed(3);
const kilohm = ((readings?.resistance_ohm ?? 0) / 1000).toFixed(2);
const [atM] = readings?.probes ?? [];
const plainSpaces = (text: string): string => text.replaceAll('\u00a0', ' ');

/** The hover's words behind the first `before`, and what they are about. */
function told(before: string, solved = true): string | null {
  const { text, draft, offset } = withCursor(at(before));
  const hover = hoverAt(draft, solved ? solutions : new Map(), offset);
  if (hover === null) return null;
  return `${text.slice(hover.span.from, hover.span.to)} | ${plainSpaces(hover.text)}`;
}

describe('hover', () => {
  test('on an electrode', () => {
    expect(told('bar     N')).toBe(
      [
        'N | electrode **N**: bar, 10 mm by 120 mm',
        '',
        '- reaches: x from 55 to 65, y from 20 to 140 mm',
        '- terminal: negative',
        '- potential: 0.00 V',
        `- current into the paper: −${mA} mA`,
      ].join('\n'),
    );
  });

  test('on a probe, and without a solution', () => {
    expect(told('probe   M')).toBe(
      [
        'M | probe **M** at (115, 80) mm',
        '',
        '- reading: 0.75 V',
        `- strength: ${Math.abs(atM?.strength_V_per_m?.[0] ?? 0).toFixed(1)} V/m`,
        `- source resistance: ${((atM?.source_resistance_ohm ?? 0) / 1000).toFixed(2)} kΩ`,
      ].join('\n'),
    );
    expect(told('probe   M', false)).toBe('M | probe **M** at (115, 80) mm');
  });

  test('on a probe as a variation has moved it', () => {
    expect(told('move    M', false)).toBe('M | probe **M** at (100, 80) mm');
  });

  test('on a row', () => {
    expect(told('row     A')).toContain('| 50 mm | 0.75 V |');
  });

  test('on a quantity: its value in SI units', () => {
    expect(told('paper   24')).toBe('240 mm | 0.24 m');
    expect(told('mm, 5')).toBe('5 kΩ | 5000 Ω');
    expect(told('cell 1')).toBe('1.5 V | 1.5 V');
  });

  test('on a word of the language', () => {
    expect(told('bla')).toBe(
      'black lead on | **black lead on**: electrode that the black lead stands on\n\n~~~text\nblack lead on N\n~~~',
    );
    expect(told('right o')?.startsWith('right of | **right of**')).toBe(true);
  });

  test('on an insert', () => {
    expect(told('?{bars.M')).toBe('?{bars.M} | `?{bars.M}` is **0.75 V**');
    expect(told('?{bars.cur')).toBe(`?{bars.current} | \`?{bars.current}\` is **${mA} mA**`);
  });

  test('on the opening line: what the setup comes to, and its drawing', () => {
    const { draft, offset } = withCursor(at('```elec'));
    const hover = hoverAt(draft, solutions, offset);
    expect(plainSpaces(hover?.text ?? '')).toBe(`**bars**: ${mA} mA, ${kilohm} kΩ`);
    expect(hover?.drawing).toBe(0);
    expect(hoverNeeds(draft, offset)).toBe(0);
  });

  it('is silent in prose and in remarks', () => {
    expect(told('\nAt ')).toBe(null);
    expect(told('along')).toBe(null);
  });
});

describe('outside blocks', () => {
  const text = (marked: string): string | null => {
    const { draft, offset } = withCursor(marked);
    return hoverAt(draft, new Map(), offset)?.text ?? null;
  };
  test('keys of the front matter and words of passages have their help', () => {
    expect(text(`---\nstat‸us: draft\n---\n\n${twoSetups}`)).toBe(
      '**status**: draft, reviewed, issued, withdrawn',
    );
    expect(text(`---\ngroups‸: 4\n---\n\n${twoSetups}`)).toContain('**groups**: how many groups');
    expect(text(`${twoSetups}\n::: teach‸ers\nText.\n:::\n`)).toBe('**teachers**: for teachers alone');
  });
  test('an insert without a value says what it makes', () => {
    expect(text(`${twoSetups}\n?{blank‸ V}\n`)).toBe('**blank**: room to write, with a unit');
  });
  test('other text has none', () => {
    expect(text(`---\ntitle: A ‸sheet\n---\n\n${twoSetups}`)).toBe(null);
    expect(text(`${twoSetups}\n::: teachers\nTe‸xt.\n:::\n`)).toBe(null);
  });
});
