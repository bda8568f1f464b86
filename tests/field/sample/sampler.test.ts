import { describe, expect, it } from 'vitest';
import type { Domain } from '../../../shared/field/problem.ts';
import { sampler } from '../../../shared/field/sample/sampler.ts';
import { twoBars } from '../scenes.ts';
import { cornerField, ELL, FRAME, handmadeSpace, interpolated } from './handmade.ts';
import { eccentric, eccentricForm, solved } from './solved.ts';

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

  it('gives the strength around an eccentric disc in a ring, on the metal and deep in the paper', () => {
    const v = solved(eccentric, 1e-8).primal.potential(Float64Array.of(1.5, 0));
    const s = sampler(v);
    const step = 1e-3;
    for (const [x, y] of [
      [19.9, 0],
      [30, 10.05],
      [45, 20],
      [-60, 30],
      [0, 79.9],
    ] as const) {
      const by = (dx: number, dy: number): number =>
        (eccentricForm.potential(x + dx, y + dy) - eccentricForm.potential(x - dx, y - dy)) / (2 * step);
      const exact = [by(step, 0), by(0, step)] as const;
      const { gradient } = s.at(x, y)!;
      const off = Math.hypot(gradient[0] - exact[0], gradient[1] - exact[1]);
      expect(off / Math.hypot(...exact)).toBeLessThan(1e-4);
    }
  });

  it('gives the strength on paper with a grain: an even sheet stretched by the root of the resistances', () => {
    const stretch = Math.sqrt(1.3);
    const stretched = {
      ...twoBars,
      loops: twoBars.loops.map(({ edges }) => ({
        edges: edges.map((edge) => ({ ...edge, x: edge.x * stretch })),
      })),
    };
    const potentialOf = (domain: Domain) =>
      sampler(solved(domain, 1e-8).primal.potential(Float64Array.of(0, 1.5)));
    const grain = potentialOf({ ...twoBars, sheet_ohm: [1300, 1000] });
    const even = potentialOf(stretched);
    for (const [x, y] of [
      [120, 80],
      [40, 75],
      [70, 150],
      [200, 12],
    ] as const) {
      const a = grain.at(x, y)!;
      const b = even.at(x * stretch, y)!;
      expect(Math.abs(a.value - b.value)).toBeLessThan(1.5e-5);
      const size = Math.hypot(...a.gradient);
      expect(Math.abs(a.gradient[0] - b.gradient[0] * stretch)).toBeLessThan(1e-3 * size);
      expect(Math.abs(a.gradient[1] - b.gradient[1])).toBeLessThan(1e-3 * size);
    }
  });
});
