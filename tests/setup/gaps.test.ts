/** Gaps between metal of different terminals: where they begin and end, and the field along them against closed forms. */
import { describe, expect, it } from 'vitest';
import { gapsOf } from '../../shared/setup/gaps.ts';
import type { GapReading } from '../../shared/setup/readings.ts';
import { resolveSetups } from '../../shared/setup/resolve.ts';
import type { Setup } from '../../shared/setup/setup.ts';
import { solveSetup } from '../../shared/setup/solve-setup.ts';
import { readSheet } from '../../shared/sheet/read-sheet.ts';

function setupOf(lines: string): Setup {
  const sheet = readSheet({ name: 'sheet.md', text: `\`\`\`electrodes\n${lines}\n\`\`\`\n` });
  const [setup] = resolveSetups(sheet.blocks.map(({ block }) => block));
  if (setup === undefined) throw new Error('no block');
  return setup;
}

function gapOf(lines: string): GapReading {
  const { solved } = solveSetup(setupOf(lines), { gap: 1e-7, traces: false, samples: [] });
  const [gap] = solved?.gaps ?? [];
  if (gap === undefined) throw new Error('no gap');
  return gap;
}

const ends = (lines: string): readonly string[] =>
  gapsOf(setupOf(lines)).map(
    ({ from, to, start, end }) => `${from} ${start.x},${start.y} to ${to} ${end.x},${end.y}`,
  );

const bench = 'paper 200 mm × 100 mm, 1 kΩ per square\nsupply cell 1.5 V\n';

describe('where gaps run', () => {
  it('from the lower to the higher potential, between facing edges', () => {
    const bars = 'bar P 10 mm × 60 mm at (160, 50) mm positive\nbar N 10 mm × 60 mm at (40, 50) mm negative';
    expect(ends(bench + bars)).toEqual(['N 45,50 to P 155,50']);
  });

  it('from the tip of a spike', () => {
    const spike =
      'bar N 10 mm × 60 mm at (40, 50) mm negative\nspike S base 20 mm, length 50 mm, tip at (100, 50) mm pointing left positive';
    expect(ends(bench + spike)).toEqual(['N 45,50 to S 100,50']);
  });

  it('to the right where both have one centre', () => {
    const rings =
      'disc D radius 5 mm at centre positive\nring R diameter 90 mm, wall 5 mm at centre negative';
    expect(ends(bench + rings)).toEqual(['R 140,50 to D 105,50']);
  });

  it('not between floating metal, nor between metal of one terminal', () => {
    const lines =
      'bar N 10 mm × 60 mm at (40, 50) mm negative\nbar M 10 mm × 60 mm at (20, 50) mm negative\ndisc F radius 5 mm at centre floating';
    expect(ends(bench + lines)).toEqual([]);
  });

  it('between metal held at different potentials', () => {
    const lines =
      'disc A radius 5 mm at (40, 50) mm held at 1 V\ndisc B radius 5 mm at (160, 50) mm held at 0.5 V';
    expect(ends(bench + lines)).toEqual(['B 155,50 to A 45,50']);
  });
});

describe('what the paper stands at', () => {
  // Bars across the whole paper: V = V₀ x/d, E = V₀/d (exact).
  it('between bars across the paper the field is the same all along', () => {
    const gap = gapOf(
      `${bench}bar N 10 mm × 100 mm at (45, 50) mm negative\nbar P 10 mm × 100 mm, 100 mm right of N positive`,
    );
    expect(gap.length_mm).toBeCloseTo(100, 9);
    for (const { distance_mm, potential_V, strength_V_per_m, uncertainty_V } of gap.points) {
      expect(potential_V).toBeCloseTo(0.015 * distance_mm, 7);
      expect(strength_V_per_m?.[0]).toBeCloseTo(-15, 4);
      expect(uncertainty_V).toBeLessThan(1e-4);
    }
  });

  // Disc in a ring: V = V₀ ln(b/r)/ln(b/a) (coaxial conductors, exact); a = 10 mm, b = 40 mm.
  it('between disc and ring the potential goes with the logarithm', () => {
    const gap = gapOf(
      `${bench}disc D radius 10 mm at centre positive\nring R inside diameter 80 mm, wall 5 mm at centre negative`,
    );
    expect(gap.points.length).toBe(39);
    for (const { x_mm, potential_V } of gap.points) {
      expect(potential_V).toBeCloseTo((1.5 * Math.log(40 / (x_mm - 100))) / Math.log(4), 4);
    }
  });

  it('nothing is said of other metal in the way', () => {
    const gap = gapOf(
      `${bench}bar N 10 mm × 60 mm at (45, 50) mm negative\nbar P 10 mm × 60 mm, 100 mm right of N positive\ndisc F radius 10 mm at centre floating`,
    );
    const middle = gap.points.filter(({ distance_mm }) => Math.abs(distance_mm - 50) <= 10);
    expect(middle.length).toBeGreaterThan(5);
    for (const { potential_V, strength_V_per_m } of middle)
      expect([potential_V, strength_V_per_m]).toEqual([null, null]);
  });
});
