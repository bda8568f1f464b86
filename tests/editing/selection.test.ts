/** Selections that grow step by step. */
import { describe, expect, it, test } from 'vitest';
import { selectionsAt } from '../../shared/editing/selection.ts';
import { withCursor } from './cursor.ts';

function steps(marked: string): readonly string[] {
  const { text, draft, offset } = withCursor(marked);
  return selectionsAt(draft.sheet, offset).map(({ from, to }) => text.slice(from, to));
}

describe('a selection in a block grows', () => {
  test('from a number to its quantity, to the size, to the line, to all lines, to the block', () => {
    expect(
      steps(`
        \`\`\`electrodes bars
        bar N 10 mm × 12‸0 mm at (60, 80) mm negative # left
        copper 0.1 mm
        \`\`\`
      `),
    ).toEqual([
      '120',
      '120 mm',
      '10 mm × 120 mm',
      'bar N 10 mm × 120 mm at (60, 80) mm negative',
      'bar N 10 mm × 120 mm at (60, 80) mm negative # left',
      'bar N 10 mm × 120 mm at (60, 80) mm negative # left\ncopper 0.1 mm',
      '```electrodes bars\nbar N 10 mm × 120 mm at (60, 80) mm negative # left\ncopper 0.1 mm\n```',
    ]);
  });

  test('from a name to its place', () => {
    expect(
      steps(`
        \`\`\`electrodes
        bar P 10 mm × 120 mm, 100 mm right of N‸ turned 30° positive
        \`\`\`
      `).slice(0, 4),
    ).toEqual([
      'N',
      '100 mm right of N',
      '100 mm right of N turned 30°',
      'bar P 10 mm × 120 mm, 100 mm right of N turned 30° positive',
    ]);
  });

  test('on the opening line', () => {
    expect(
      steps(`
        \`\`\`electrodes far like ba‸rs
        copper 0.1 mm
        \`\`\`
      `),
    ).toEqual(['bars', 'far like bars', '```electrodes far like bars\ncopper 0.1 mm\n```']);
  });

  it('always holds the cursor and what was selected before, on any line', () => {
    const lines = ['paper', 'paper 240', 'nonsense (', '# remark', '', 'row A from N to P every 10 mm'];
    for (const line of lines) {
      for (let at = 0; at <= line.length; at++) {
        const { draft, offset } = withCursor(
          `\`\`\`electrodes\n${line.slice(0, at)}‸${line.slice(at)}\n\`\`\``,
        );
        const spans = selectionsAt(draft.sheet, offset);
        expect(spans.length).toBeGreaterThan(0);
        for (const [i, { from, to }] of spans.entries()) {
          expect(from <= offset && offset <= to).toBe(true);
          const outer = spans[i + 1];
          expect(outer === undefined || (outer.from <= from && outer.to >= to)).toBe(true);
        }
      }
    }
  });

  it('is the affair of others outside blocks', () => {
    expect(steps('Text ‸\n\n```electrodes\n```')).toEqual([]);
  });
});
