/**
 * The engine against published values, through the language: each to its own uncertainty, or 1e-6 in R, 1e-5 of the EMF in V and
 * 1e-3 in E, whichever is larger. The bounds on R contain the closed form.
 */
import { describe, expect, it } from 'vitest';
import type { PointReading } from '../../shared/setup/readings.ts';
import { type Expected, sheetCases } from './sheets.ts';
import { solveBlock } from './solve.ts';

const relative = { resistance: 1e-6, potential: 1e-5, strength: 1e-3 };

const emfOf = (block: string): number => Number(/supply\s+power-pack\s+([\d.]+) V/.exec(block)?.[1]);

function placesOf({ potentials_V = [], strengths_V_per_m = [] }: Expected) {
  return [...potentials_V, ...strengths_V_per_m].map(([x, y]) => ({ x, y }));
}

describe.each(sheetCases)('$id $title', ({ block, expected }) => {
  const solved = solveBlock(block, placesOf(expected));
  const { readings, samples } = solved;
  const { potentials_V = [], strengths_V_per_m = [], currents_A = {}, resistance_ohm, within = 0 } = expected;

  it('reaches the gap of the command line', () => {
    expect(solved.work.gap).toBeLessThanOrEqual(1e-8);
  });

  if (resistance_ohm !== undefined) {
    it(`R = ${resistance_ohm} Ω`, () => {
      const tolerance = Math.max(relative.resistance, within);
      expect(Math.abs((readings.resistance_ohm ?? 0) / resistance_ohm - 1)).toBeLessThan(tolerance);
    });
  }

  it.each(potentials_V.map(([x, y, value], index) => ({ x, y, value, index })))(
    'V at ($x, $y) = $value V',
    ({ value, index }) => {
      const found = samples[index]?.potential_V ?? Number.NaN;
      expect(Math.abs(found - value)).toBeLessThan(Math.max(relative.potential, within) * emfOf(block));
    },
  );

  it.each(strengths_V_per_m.map(([x, y, ex, ey], index) => ({ x, y, ex, ey, index })))(
    'E at ($x, $y) = ($ex, $ey) V/m',
    ({ ex, ey, index }) => {
      const sample: PointReading | undefined = samples[potentials_V.length + index];
      const [fx, fy] = sample?.strength_V_per_m ?? [Number.NaN, Number.NaN];
      expect(Math.hypot(fx - ex, fy - ey)).toBeLessThan(
        Math.max(relative.strength, within) * Math.hypot(ex, ey),
      );
    },
  );

  it.each(Object.entries(currents_A))('current of %s = %d A', (name, value) => {
    const electrode = readings.electrodes.find((each) => each.name === name);
    const largest = Math.max(...readings.electrodes.map(({ current_A }) => Math.abs(current_A ?? 0)));
    expect(Math.abs((electrode?.current_A ?? Number.NaN) - value)).toBeLessThan(
      relative.resistance * largest,
    );
  });
});

/** Closed forms to at least twelve digits, so that an interval of relative width 1e-8 must hold them. */
const exact = sheetCases.filter(
  ({ id, expected }) => ['A01', 'A02', 'A03', 'A21', 'A26'].includes(id) && expected.resistance_ohm,
);

describe('bounds', () => {
  it('are tested on closed forms', () => {
    expect(exact.length).toBeGreaterThanOrEqual(8);
  });

  it.each(exact.filter(({ title }) => !title.startsWith('slot')))(
    'contain the closed form: $id $title',
    ({ block, expected }) => {
      const [low, high] = solveBlock(block).readings.resistance_bounds_ohm ?? [Number.NaN, Number.NaN];
      expect(low).toBeLessThanOrEqual(expected.resistance_ohm ?? Number.NaN);
      expect(high).toBeGreaterThanOrEqual(expected.resistance_ohm ?? Number.NaN);
      expect(high / low - 1).toBeLessThan(2e-8);
    },
  );
});
