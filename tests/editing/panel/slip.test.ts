/** The reading slip in words. Uniform fields are told by the gap; what is on metal, in a hole, beside the paper or unsolved is said so. */
import { describe, expect, test } from 'vitest';
import { draftSheet, editing, fieldReader, fieldStages, type Stages } from '../../../shared/index.ts';

const drained = <T>(stages: Stages<T, unknown>): T => {
  for (;;) {
    const step = stages.next();
    if (step.done === true) return step.value;
  }
};

/** What the slip says at a place of a setup. */
function slipOf(lines: string): (x: number, y: number) => editing.Slip {
  const draft = draftSheet({ name: 'sheet.md', text: `\`\`\`electrodes one\n${lines}\n\`\`\`\n` });
  const [setup] = draft.setups;
  if (setup === undefined) throw new Error('no block');
  const outcome = setup.solvable ? drained(fieldStages(setup, { gap: 1e-6 })) : null;
  const reader = outcome?.ok === true ? fieldReader(setup, outcome.field) : null;
  return (x, y) => {
    const slip = editing.slipAt(setup, reader, { x, y });
    return { ...slip, text: slip.text.replaceAll('\u00a0', ' ') };
  };
}

/** Bars as high as the paper: between them the field is uniform, 1.5 V over 100 mm. */
const uniform = `paper 140 mm × 60 mm, 5 kΩ per square
supply cell 1.5 V
meter 10 MΩ, resolution 0.01 V
bar N 10 mm × 60 mm at (15, 30) mm negative
bar P 10 mm × 60 mm, 100 mm right of N positive`;

describe('between bars as high as the paper', () => {
  const at = slipOf(uniform);
  test('it tells volts, place, strength and the electrode to which the field leads', () => {
    expect(at(70, 30)).toEqual({ text: '0.75 V at (70, 30) mm; 15.0 V/m toward N', direction_deg: 180 });
    expect(at(100, 12.5).text).toBe('1.20 V at (100, 12.5) mm; 15.0 V/m toward N');
  });
  test('on metal there is no field', () => {
    expect(at(15, 30)).toEqual({
      text: '0.00 V at (15, 30) mm, on N: no field in metal',
      direction_deg: null,
    });
  });
  test('beside the paper there is nothing', () => {
    expect(at(150, 30)).toEqual({
      text: '(150, 30) mm lies beside the paper: there is nothing to read',
      direction_deg: null,
    });
  });
  test('behind a bar that fills the paper the field is too weak to be told', () => {
    expect(at(5, 30)).toEqual({ text: '0.00 V at (5, 30) mm; no field', direction_deg: null });
  });
});

test('no digit that the meter does not show', () => {
  const coarse = slipOf(uniform.replace('resolution 0.01 V', 'resolution 0.1 V'));
  expect(coarse(70, 30).text).toMatch(/^0\.[78] V at/u);
});

test('a line of the field is followed round to the metal at which it ends', () => {
  // Left of the disc on the right the field points right, and goes to the other side of a hollow metal box in between.
  const at = slipOf(`paper 200 mm × 100 mm
supply cell 3 V
disc P diameter 10 mm at (30, 50) mm positive
disc M diameter 20 mm at (100, 50) mm floating
disc N diameter 10 mm at (170, 50) mm negative`);
  expect(at(60, 50).text).toMatch(/toward M$/u);
  expect(at(140, 50).text).toMatch(/toward N$/u);
  expect(at(100, 90).text).toMatch(/toward N$/u);
  expect(at(60, 50).direction_deg).toBeCloseTo(0, 0);
});

test('in a hole there is nothing to read', () => {
  const at = slipOf(`${uniform}\nhole disc diameter 20 mm at (70, 30) mm`);
  expect(at(70, 30).text).toBe('(70, 30) mm lies in a hole: there is nothing to read');
});

test('inside a closed ring there is no field', () => {
  const at = slipOf(`${uniform}\nring R diameter 40 mm, wall 4 mm, at (70, 30) mm floating`);
  expect(at(70, 30)).toEqual({ text: '0.75 V at (70, 30) mm; no field', direction_deg: null });
});

test('without a solution it says so, with the place', () => {
  const at = slipOf('paper 140 mm × 60 mm\nbar N 10 mm × 60 mm at (15, 30) mm negative');
  expect(at(70, 30).text).toBe('not solved: no reading at (70, 30) mm');
  expect(at(15, 30).text).toBe('not solved: no reading at (15, 30) mm, on N');
});

test('on paper with a grain a line may end at a hole: then the direction is told in words', () => {
  // No current crosses the rim; −grad V, which is not along the current there, meets it downstream.
  const at = slipOf(`${uniform.replace('5 kΩ per square', '1 kΩ per square along x, 9 kΩ per square along y')}
hole disc diameter 30 mm at (70, 30) mm`);
  expect(at(60, 42.5).text).toMatch(/V\/m down$/u);
  expect(at(40, 50).text).toMatch(/toward N$/u);
});

test('what is said below a drawing is the first error of the block', () => {
  const remark = (lines: string, solved: boolean): string | null => {
    const draft = draftSheet({ name: 'sheet.md', text: `\`\`\`electrodes one\n${lines}\n\`\`\`\n` });
    return editing.blockRemark(draft, 0, { solved, trouble: null });
  };
  expect(remark(uniform, true)).toBeNull();
  expect(remark(`${uniform}\nprobe C at (150, 30) mm`, true)).toBe('C stands beside the paper.');
  expect(remark(`${uniform}\nprobe C at (150, 30) mm\nprobe D at (150, 20) mm`, true)).toBe(
    'C stands beside the paper. (and 1 more)',
  );
  expect(remark('paper 140 mm × 60 mm', false)).not.toBeNull();
});
