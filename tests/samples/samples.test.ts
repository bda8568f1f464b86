/** The samples are tests: read without errors or warnings, solved, drawn, printed; key numbers against closed forms. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { audiences, type Examination, examineSheet, formatSheet, printSheets } from '../../shared/index.ts';

const folder = new URL('../../samples/', import.meta.url);
const names = readdirSync(folder)
  .filter((name) => name.endsWith('.md'))
  .sort();

const examined = new Map<string, Examination>();
function sample(name: string): Examination {
  const known =
    examined.get(name) ?? examineSheet({ name, text: readFileSync(new URL(name, folder), 'utf8') });
  examined.set(name, known);
  return known;
}

it('there are four', () => {
  expect(names).toEqual(['disc-in-ring.md', 'hollow-ring.md', 'parallel-bars.md', 'spikes.md']);
});

describe.each(names)('%s', (name) => {
  it('has no errors and no warnings', () => {
    expect(sample(name).findings.filter(({ severity }) => severity !== 'note')).toEqual([]);
  });

  it('is formatted', () => {
    const text = readFileSync(new URL(name, folder), 'utf8');
    expect(formatSheet(text)).toBe(text);
  });

  it('is solved to the gap of the command line', () => {
    const { setups, solutions } = sample(name);
    expect(solutions.size).toBe(setups.length);
    for (const { work } of solutions.values()) expect(work.gap).toBeLessThanOrEqual(1e-8);
  });

  it('prints for everyone, the same to the byte again, each drawing once described', () => {
    const prints = printSheets(sample(name), audiences);
    expect(prints.map(({ audience }) => audience)).toEqual(audiences);
    expect(printSheets(sample(name), audiences)).toEqual(prints);
    for (const { html } of prints) {
      const figures = html.match(/<svg [^>]*role="img"/g)?.length ?? 0;
      expect(html.match(/<title\b/g)?.length).toBe(figures + 1);
      expect(html.match(/<desc\b/g)?.length ?? 0).toBe(figures);
    }
  });
});

function readingsOf(name: string, index: number) {
  const found = sample(name).solutions.get(index)?.readings;
  if (!found) throw new Error(`${name} has no solution ${index}`);
  return found;
}
const probe = (name: string, index: number, letter: string): number =>
  readingsOf(name, index).probes.find((each) => each.name === letter)?.potential_V ?? Number.NaN;

describe('key numbers', () => {
  it('parallel bars: half the voltage on the mid-line, by symmetry', () => {
    // The cell's 0.5 Ω takes its share of a current near 0.5 mA: 0.25 mV.
    expect(probe('parallel-bars.md', 0, 'M')).toBeCloseTo(0.75 - 0.000125, 4);
  });

  it('hollow ring: half the voltage inside while floating, the voltage of P when joined', () => {
    expect(probe('hollow-ring.md', 0, 'C')).toBeCloseTo(0.7498, 3);
    expect(probe('hollow-ring.md', 0, 'D')).toBeCloseTo(probe('hollow-ring.md', 0, 'C'), 9);
    expect(probe('hollow-ring.md', 1, 'C')).toBeCloseTo(1.4994, 3);
    expect(probe('hollow-ring.md', 1, 'D')).toBeCloseTo(probe('hollow-ring.md', 1, 'C'), 9);
  });

  it('disc in ring: R = Rs ln(b/a) / 2π and V = V0 ln(b/r) / ln(b/a) (coaxial cable, textbook)', () => {
    const { resistance_ohm, rows } = readingsOf('disc-in-ring.md', 0);
    expect(resistance_ohm).toBeCloseTo((1000 * Math.log(8)) / (2 * Math.PI), 5);
    for (const { x_mm, potential_V } of rows[0]?.points ?? []) {
      expect(potential_V).toBeCloseTo((1.5 * Math.log(80 / (x_mm - 95))) / Math.log(8), 5);
    }
  });

  it('spikes: the field at the triangular tip is the stronger (common practice, no source)', () => {
    const strengthAt5 = (index: number): number => {
      const [near] = readingsOf('spikes.md', index).rows[0]?.points ?? [];
      return (
        (readingsOf('spikes.md', index).electrodes.find(({ name }) => name === 'T')?.potential_V ?? 0) -
        (near?.potential_V ?? 0)
      );
    };
    expect(strengthAt5(0)).toBeGreaterThan(1.2 * strengthAt5(1));
  });
});
