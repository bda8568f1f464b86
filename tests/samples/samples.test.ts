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
    expect(printSheets(sample(name), ['teachers'])).toEqual(
      prints.filter(({ audience }) => audience === 'teachers'),
    );
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

const rowOf = (name: string, index: number): number[] =>
  (readingsOf(name, index).rows[0]?.points ?? []).map(({ potential_V }) => potential_V ?? Number.NaN);

describe('key numbers', () => {
  it('parallel bars: half the voltage on the mid-line, by symmetry', () => {
    // The cell's 0.5 Ω takes its share of a current near 0.5 mA: 0.25 mV.
    expect(probe('parallel-bars.md', 0, 'M')).toBeCloseTo(0.75 - 0.000125, 4);
  });

  it('parallel bars: equal steps from bar to bar (common practice, no source)', () => {
    const found = rowOf('parallel-bars.md', 0);
    expect(found).toHaveLength(11);
    for (const [index, value] of found.entries()) expect(Math.abs(value - 0.15 * index)).toBeLessThan(0.005);
  });

  it('hollow ring: half the voltage inside while floating, the voltage of P when joined', () => {
    expect(probe('hollow-ring.md', 0, 'C')).toBeCloseTo(0.7498, 3);
    expect(probe('hollow-ring.md', 0, 'D')).toBeCloseTo(probe('hollow-ring.md', 0, 'C'), 9);
    expect(probe('hollow-ring.md', 1, 'C')).toBeCloseTo(1.4994, 3);
    expect(probe('hollow-ring.md', 1, 'D')).toBeCloseTo(probe('hollow-ring.md', 1, 'C'), 9);
  });

  // Independent values: the five-point formula relaxed on grids of 1 mm, 0.5 mm and 0.25 mm, potentials fixed on the metal. The numbers
  // of the last grid stand here. From those of the grid before they differ by up to 0.005 V where steps stand for the round ring, by up
  // to 0.0013 V at the spikes.
  it.each([
    [0, 0.4135, 2458.6],
    [1, 0.8228, 1366.6],
  ])('hollow ring, setup %d: K and the resistance (independent finite differences)', (index, K, ohm) => {
    expect(Math.abs(probe('hollow-ring.md', index, 'K') - K)).toBeLessThan(0.005);
    expect(Math.abs((readingsOf('hollow-ring.md', index).resistance_ohm ?? 0) / ohm - 1)).toBeLessThan(5e-3);
  });

  it.each([
    ['triangular', 0, [1.1498, 0.9903, 0.7479, 0.544, 0.3564, 0.1766, 0.0881], 2876.4],
    ['rectangular', 1, [1.2712, 1.0921, 0.8174, 0.5911, 0.386, 0.1909, 0.0952], 2710.5],
  ])('%s spike: readings from the tip (independent finite differences)', (_, index, values, ohm) => {
    const found = rowOf('spikes.md', index);
    expect(found).toHaveLength(values.length);
    for (const [at, value] of values.entries())
      expect(Math.abs((found[at] ?? 0) - value)).toBeLessThan(0.002);
    expect(Math.abs((readingsOf('spikes.md', index).resistance_ohm ?? 0) / ohm - 1)).toBeLessThan(1e-3);
  });

  it('disc in ring: R = Rs ln(b/a) / 2π and V = V0 ln(b/r) / ln(b/a) (coaxial cable, textbook)', () => {
    const { resistance_ohm, rows } = readingsOf('disc-in-ring.md', 0);
    expect(resistance_ohm).toBeCloseTo((1000 * Math.log(8)) / (2 * Math.PI), 5);
    for (const { x_mm, potential_V } of rows[0]?.points ?? []) {
      expect(potential_V).toBeCloseTo((1.5 * Math.log(80 / (x_mm - 95))) / Math.log(8), 5);
    }
  });

  it('spikes: the field at the triangular tip is the stronger (common practice, no source)', () => {
    const lossOver5mm = (index: number): number => 1.5 - (rowOf('spikes.md', index)[0] ?? Number.NaN);
    expect(lossOver5mm(0)).toBeGreaterThan(1.2 * lossOver5mm(1));
  });
});
