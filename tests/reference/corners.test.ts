/**
 * A12: at a metal corner of included angle α the potential goes as r^λ with λ = π / (2π − α), the strength as r^(λ − 1)
 * (J. D. Jackson, Classical Electrodynamics, section 2.11, number from memory).
 */
import { describe, expect, it } from 'vitest';
import { solveBlock } from './solve.ts';

/** A spike of 60° facing a bar; strengths on its axis to about six digits, by finite elements. */
const axis: readonly (readonly [number, number])[] = [
  [0.01, 313.6193],
  [0.02, 237.6827],
  [0.05, 164.7581],
  [0.1, 124.8766],
  [0.2, 94.66247],
  [0.5, 65.67308],
  [1, 49.85664],
  [2, 37.93351],
];

describe('A12 strength in front of a spike of 60°', () => {
  const { samples } = solveBlock(
    `
paper   240 mm × 160 mm, 2 kΩ per square
supply  power-pack 1.5 V
bar     B  10 mm × 120 mm at (25, 80) mm  negative
outline S  (120, 80) (200, 33.811978464829934) (200, 126.18802153517007) mm  positive`,
    axis.map(([r]) => ({ x: 120 - r, y: 80 })),
  );
  const strengths = samples.map(({ strength_V_per_m }) =>
    Math.hypot(...(strength_V_per_m ?? [Number.NaN, Number.NaN])),
  );

  it.each(axis.map(([r, value], index) => ({ r, value, index })))(
    'E at $r mm from the tip = $value V/m',
    ({ value, index }) => {
      expect(Math.abs((strengths[index] ?? Number.NaN) / value - 1)).toBeLessThan(1e-3);
    },
  );

  it('falls as r^-0.4 close to the tip', () => {
    const slope = Math.log((strengths[1] ?? 0) / (strengths[0] ?? 1)) / Math.log(2);
    expect(Math.abs(slope - -0.4)).toBeLessThan(2e-3);
  });
});
