import { describe, expect, it } from 'vitest';
import { sampler } from '../../../shared/field/sample/sampler.ts';
import { cornerField, ELL, FRAME, handmadeSpace, interpolated } from './handmade.ts';

describe('sampler', () => {
  it('gives a linear scalar and its gradient exactly, in triangles and fans', () => {
    for (const made of [FRAME, ELL]) {
      const s = sampler(interpolated(handmadeSpace(made, 4), (x, y) => 3 + 2 * x - 5 * y));
      for (const [x, y] of [
        [-15, 3],
        [11, 11],
        [-12.3, -17],
        [-20, 20],
      ] as const) {
        const sample = s.at(x, y)!;
        expect(sample.value).toBeCloseTo(3 + 2 * x - 5 * y, 10);
        expect(sample.gradient[0]).toBeCloseTo(2, 10);
        expect(sample.gradient[1]).toBeCloseTo(-5, 10);
      }
    }
  });

  it('knows where there is no bare paper, and counts the boundary as paper', () => {
    const s = sampler(interpolated(handmadeSpace(FRAME, 3), (x) => x));
    expect(s.at(0, 0)).toBeNull();
    expect(s.at(25, 0)).toBeNull();
    expect(s.at(20 + 1e-8, 0)).toBeNull();
    expect(s.at(20, 0)?.value).toBeCloseTo(20, 10);
    expect(s.at(20 + 5e-10, 0)?.value).toBeCloseTo(20, 8);
    expect(s.at(-10, 5)?.value).toBeCloseTo(-10, 10);
    const l = sampler(interpolated(handmadeSpace(ELL, 3), (x) => x));
    expect(l.at(1e-3, -1e-3)).toBeNull();
    expect(l.at(-1e-3, -1e-3)?.value).toBeCloseTo(-1e-3, 9);
    expect(l.at(0, 0)?.value).toBeCloseTo(0, 9);
  });

  it('follows a singular field down into its corner', () => {
    const s = sampler(interpolated(handmadeSpace(ELL, 6), cornerField));
    for (const r of [9, 2, 0.1, 1e-4]) {
      const [x, y] = [r * Math.cos(2), r * Math.sin(2)];
      const sample = s.at(x, y)!;
      const scale = Math.cbrt(r * r);
      expect(Math.abs(sample.value - cornerField(x, y)) / scale).toBeLessThan(1e-4);
      // grad r^λ sin λθ = λ r^(λ-1) (sin((λ-1)θ), cos((λ-1)θ))
      const strength = ((2 / 3) * scale) / r;
      expect(Math.abs(sample.gradient[0] / strength - Math.sin(-2 / 3))).toBeLessThan(2e-3);
      expect(Math.abs(sample.gradient[1] / strength - Math.cos(-2 / 3))).toBeLessThan(2e-3);
    }
  });
});
