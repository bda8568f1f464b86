/** Setups solved from their text: closed forms, laws that any solution keeps, and what is null. */
import { describe, expect, it } from 'vitest';
import type { SolvedSetup } from '../../shared/setup/readings.ts';
import { solveSetup, unsolvedReadings } from '../../shared/setup/solve-setup.ts';
import { setupOf } from './blocks.ts';

function solved(text: string, gap = 1e-8, traces = false): SolvedSetup {
  const setup = setupOf(text);
  const { solved: found, findings } = solveSetup(setup, { gap, traces, samples: [] });
  if (found === null)
    throw new Error([...setup.findings, ...findings].map(({ message }) => message).join('\n'));
  return found;
}

const electrode = ({ readings }: SolvedSetup, name: string) =>
  readings.electrodes.find((e) => e.name === name);
const probe = ({ readings }: SolvedSetup, name: string) => readings.probes.find((p) => p.name === name);

/** Full-width bars 180 mm apart on 160 mm: 1.125 squares (definition of sheet resistance), the field between them uniform. */
const strip = `
  paper 240 mm × 160 mm, 2 kΩ per square
  supply cell 1.5 V
  bar B 10 mm × 160 mm at (25, 80) mm negative
  bar A 10 mm × 160 mm at (215, 80) mm positive
  probe M at (120, 33) mm
  probe K at (75, 33) mm
  row E from B to A in 4 steps
`;

describe('full-width bars', () => {
  const found = solved(strip);

  it('have the resistance of 1.125 squares, within its bounds', () => {
    const { resistance_ohm, resistance_bounds_ohm, current_A } = found.readings;
    expect(resistance_ohm).toBeCloseTo(2250, 5);
    expect(resistance_bounds_ohm?.[0]).toBeLessThanOrEqual(2250);
    expect(resistance_bounds_ohm?.[1]).toBeGreaterThanOrEqual(2250);
    expect(current_A).toBeCloseTo(1.5 / 2250, 12);
  });

  it('let the potential rise evenly', () => {
    expect(probe(found, 'M')?.potential_V).toBeCloseTo(0.75, 8);
    expect(probe(found, 'M')?.strength_V_per_m?.[0]).toBeCloseTo(-1.5 / 0.18, 5);
    expect(found.readings.rows[0]?.points.map((p) => p.potential_V)).toEqual([
      0,
      expect.closeTo(0.375, 8),
      expect.closeTo(0.75, 8),
      expect.closeTo(1.125, 8),
      1.5,
    ]);
  });

  it('let a meter on floating metal between them draw down what it reads', () => {
    const loaded = solved(`${strip}
      meter 5 kΩ
      bar F 10 mm × 160 mm at (120, 80) mm floating`);
    // 85 mm of paper, 1062.5 Ω, on each side of F: a source of half as much (Thévenin).
    expect(electrode(loaded, 'F')?.potential_V).toBeCloseTo(0.75, 8);
    expect(electrode(loaded, 'F')?.reading_V).toBeCloseTo((0.75 * 5000) / (5000 + 531.25), 8);
    expect(electrode(loaded, 'A')?.reading_V).toBeCloseTo(1.5, 8);
  });

  it('pass on in B what comes in at A', () => {
    expect(electrode(found, 'A')?.current_A).toBeCloseTo(1.5 / 2250, 12);
    expect(electrode(found, 'B')?.current_A).toBeCloseTo(-1.5 / 2250, 12);
  });

  it('read without a meter what the paper stands at', () => {
    expect(probe(found, 'M')?.reading_V).toBe(probe(found, 'M')?.potential_V);
    expect(probe(found, 'M')?.source_resistance_ohm).toBeNull();
  });

  it('share the e.m.f. with the internal resistance of the supply', () => {
    const weak = solved(strip.replace('1.5 V', '1.5 V, internal 180 Ω'));
    expect(weak.readings.current_A).toBeCloseTo(1.5 / 2430, 12);
    expect(electrode(weak, 'A')?.potential_V).toBeCloseTo((1.5 * 2250) / 2430, 9);
    expect(weak.readings.resistance_ohm).toBeCloseTo(2250, 5);
  });

  it('tell no currents without a sheet resistance, but the same potentials', () => {
    const bare = solved(strip.replace(', 2 kΩ per square', ''));
    expect(probe(bare, 'M')?.potential_V).toBeCloseTo(0.75, 8);
    expect(bare.readings).toMatchObject({
      resistance_ohm: null,
      resistance_bounds_ohm: null,
      current_A: null,
    });
    expect(electrode(bare, 'A')).toMatchObject({ potential_V: 1.5, current_A: null });
  });

  it('add for two sources what each makes', () => {
    const held = (a: number, b: number) =>
      solved(`
        paper 240 mm × 160 mm, 2 kΩ per square
        supply cell 1.5 V
        bar N 10 mm × 100 mm at (25, 80) mm negative
        disc H diameter 20 mm at (120, 60) mm held at ${a} V
        disc K diameter 10 mm at (190, 100) mm held at ${b} V
        probe M at (150, 90) mm
      `);
    const [both, one, other] = [held(1, 0.5), held(1, 0), held(0, 0.5)].map(
      (s) => probe(s, 'M')?.potential_V ?? Number.NaN,
    );
    expect(both).toBeCloseTo((one ?? 0) + (other ?? 0), 6);
  });
});

describe('leads swapped', () => {
  const pair = (more: string) => `
    \`\`\`electrodes one
    paper 240 mm × 160 mm, 2 kΩ per square
    supply cell 1.5 V, internal 50 Ω
    bar N 10 mm × 100 mm at (60, 80) mm negative
    spike P base 20 mm, length 40 mm, tip at (150, 60) mm pointing left positive
    ring R diameter 30 mm, wall 3 mm at (110, 110) mm floating
    probe M at (100, 70) mm
    probe C at centre of R
    \`\`\`
    \`\`\`electrodes two like one
    ${more}
    \`\`\`
  `;
  it('turn V into the e.m.f. less V', () => {
    const there = solved(pair(''), 1e-6);
    const back = solved(pair('reverse supply'), 1e-6);
    // At the cell's own terminals 1.5 V; on the paper the drop in the cell moves to the other side.
    const drop = 50 * (there.readings.current_A ?? Number.NaN);
    for (const name of ['M', 'C']) {
      const [v, w] = [probe(there, name)?.potential_V, probe(back, name)?.potential_V];
      expect(w).toBeCloseTo(1.5 - drop - (v ?? Number.NaN), 9);
    }
    expect(back.readings.current_A).toBeCloseTo(there.readings.current_A ?? Number.NaN, 12);
    expect(probe(there, 'C')?.strength_V_per_m?.[0]).toBeCloseTo(0, 9);
  });
});

describe('the meter', () => {
  it('reads less on paper of high resistance, by its source resistance', () => {
    const found = solved(`
      paper 290 mm × 200 mm, 20 kΩ per square
      supply cell 1.5 V
      meter 100 kΩ, probe tip 0.4 mm
      bar N 10 mm × 160 mm at (90, 100) mm negative
      bar A 10 mm × 160 mm at (200, 100) mm positive
      probe M at (145, 100) mm
    `);
    const m = probe(found, 'M');
    const source = m?.source_resistance_ohm ?? Number.NaN;
    // About 0.9 times the sheet resistance for a fine tip in the middle of the sheet; common practice, no source.
    expect(source / 20e3).toBeCloseTo(0.9, 1);
    expect(m?.reading_V).toBeCloseTo(((m?.potential_V ?? 0) * 1e5) / (1e5 + source), 6);
    // Potential stays that of the paper without the meter.
    expect(Math.abs((m?.potential_V ?? 0) - 0.75)).toBeLessThan(m?.uncertainty_V ?? 0);
    expect(electrode(found, 'A')?.potential_V).toBe(1.5);
  });

  it('counts from its black lead', () => {
    const found = solved(strip.replace('probe M', 'meter 10 MΩ, black lead on A\n  probe M'), 1e-7);
    expect(probe(found, 'M')?.reading_V).toBeCloseTo(-0.75, 3);
    expect(found.readings.rows[0]?.points[0]?.reading_V).toBe(-1.5);
  });
});

describe('what cannot be solved', () => {
  it('keeps its entry with nulls', () => {
    const setup = setupOf(strip.replace('1.5 V', '1,5 V'));
    expect(solveSetup(setup, { gap: 1e-6, traces: false, samples: [] }).solved).toBeNull();
    const entry = unsolvedReadings(setup);
    expect(entry.electrodes.map(({ name, potential_V }) => [name, potential_V])).toEqual([
      ['B', null],
      ['A', null],
    ]);
    expect(entry.probes[0]).toEqual({
      name: 'M',
      x_mm: 120,
      y_mm: 33,
      potential_V: null,
      reading_V: null,
      strength_V_per_m: null,
      source_resistance_ohm: null,
      uncertainty_V: null,
    });
    expect(entry.rows[0]?.points[1]?.distance_mm).toBe(45);
  });

  it('has no value off the paper, in a hole and on an island of paper', () => {
    const found = solved(
      `
      paper 240 mm × 160 mm, 2 kΩ per square
      supply cell 1.5 V
      bar B 10 mm × 160 mm at (25, 80) mm negative
      bar A 10 mm × 160 mm at (115, 80) mm positive
      hole 2 mm × 200 mm at (170, 80) mm
      disc F diameter 10 mm at (200, 80) mm floating
      probe O at (300, 80) mm
      probe H at (170, 80) mm
      probe I at (200, 100) mm
      probe K at (200, 80) mm
      probe M at (70, 80) mm
      `,
      1e-6,
    );
    expect(found.readings.probes.map(({ name, potential_V }) => [name, potential_V === null])).toEqual([
      ['O', true],
      ['H', true],
      ['I', true],
      ['K', true],
      ['M', false],
    ]);
    expect(electrode(found, 'F')?.potential_V).toBeNull();
  });
});

describe('traces', () => {
  it('follow the equipotentials asked for, and field lines of one current', () => {
    const found = solved(`${strip}  equipotentials 0.5 V, 1 V\n  field-lines 8`, 1e-6, true);
    const { equipotentials, fieldLines, lineCurrent_A } = found.traces;
    expect(equipotentials.map(({ value_V, lines }) => [value_V, lines.length])).toEqual([
      [0.5, 1],
      [1, 1],
    ]);
    for (const x of equipotentials[0]?.lines[0]?.points.filter((_, i) => i % 2 === 0) ?? [])
      expect(x).toBeCloseTo(30 + 60, 4);
    expect(fieldLines).toHaveLength(8);
    expect(lineCurrent_A).toBeCloseTo(1.5 / 2250 / 8, 10);
  });

  it('leave the positive metal in the number asked for; floating metal sends its own on, and takes no current in all', () => {
    const found = solved(
      `
      paper 240 mm × 160 mm, 5 kΩ per square
      supply cell 1.5 V
      bar N 10 mm × 120 mm at (60, 80) mm negative
      bar P 10 mm × 120 mm at (180, 80) mm positive
      ring R diameter 50 mm, wall 4 mm at (120, 75) mm floating
      field-lines 12
      `,
      1e-6,
      true,
    );
    const starts = found.traces.fieldLines.map(({ points }) => ({ x: points[0] ?? 0, y: points[1] ?? 0 }));
    const onP = starts.filter(({ x }) => x > 174);
    expect(onP).toHaveLength(12);
    const others = starts.filter((start) => !onP.includes(start));
    expect(others.length).toBeGreaterThan(0);
    for (const { x, y } of others) expect(Math.hypot(x - 120, y - 75)).toBeCloseTo(25, 3);
    expect(electrode(found, 'R')?.current_A).toBe(0);
  });
});
