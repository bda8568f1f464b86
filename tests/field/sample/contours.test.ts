import { describe, expect, it } from 'vitest';
import { equipotentialLines } from '../../../shared/field/sample/contours.ts';
import { sampler } from '../../../shared/field/sample/sampler.ts';
import { cornerField, ELL, FRAME, handmadeSpace, interpolated } from './handmade.ts';
import { along } from './lines.ts';

describe('equipotentialLines on interpolated fields', () => {
  it('draws straight lines of a linear field from edge to edge, with two points each', () => {
    const space = handmadeSpace(ELL, 4);
    const [lines] = equipotentialLines(
      interpolated(space, (x) => x),
      [-20],
    );
    expect(lines).toHaveLength(1);
    expect(lines![0]!.closed).toBe(false);
    expect(lines![0]!.points).toHaveLength(4);
    const ys = [lines![0]!.points[1]!, lines![0]!.points[3]!].sort((a, b) => a - b);
    expect(ys[0]).toBeCloseTo(-30, 9);
    expect(ys[1]).toBeCloseTo(30, 9);
  });

  it('closes circles around the hollow and stays within 0.02 mm of them', () => {
    const field = (x: number, y: number): number => x * x + y * y;
    const [inner, cut] = equipotentialLines(interpolated(handmadeSpace(FRAME, 4), field), [15 * 15, 21 * 21]);
    expect(inner).toHaveLength(1);
    expect(inner![0]!.closed).toBe(true);
    for (const [x, y] of along(inner![0]!)) expect(Math.abs(Math.hypot(x, y) - 15)).toBeLessThan(0.02);
    // 21 mm leaves the square of half-side 20 mm: four arcs in the corners.
    expect(cut).toHaveLength(4);
    for (const line of cut!) {
      expect(line.closed).toBe(false);
      for (const [x, y] of along(line)) expect(Math.abs(Math.hypot(x, y) - 21)).toBeLessThan(0.02);
    }
  });

  it('passes through a saddle without losing or crossing a line', () => {
    const lines = equipotentialLines(
      interpolated(handmadeSpace(ELL, 4), (x, y) => (x + 20) * (y - 20)),
      [0],
    );
    expect(lines[0]!.length).toBeGreaterThanOrEqual(2);
    for (const line of lines[0]!) {
      for (const [x, y] of along(line)) {
        // At the saddle itself the line's bend is a corner.
        if (Math.hypot(x + 20, y - 20) < 0.1) continue;
        expect(Math.min(Math.abs(x + 20), Math.abs(y - 20))).toBeLessThan(0.02);
      }
    }
  });

  it('bends around a singular corner and draws nothing along the metal itself', () => {
    const levels = [0, 0.05, 1, 4];
    const field = interpolated(handmadeSpace(ELL, 6), cornerField);
    const all = equipotentialLines(field, levels);
    const samples = sampler(field);
    expect(all[0]).toHaveLength(0);
    for (const i of [1, 2, 3]) {
      expect(all[i]).toHaveLength(1);
      for (const [x, y] of along(all[i]![0]!)) {
        const { value, gradient } = samples.at(x, y)!;
        expect(Math.abs(value - levels[i]!) / Math.hypot(...gradient)).toBeLessThan(0.02);
      }
    }
  });

  it('gives the same bytes twice', () => {
    const draw = (): string =>
      JSON.stringify(
        equipotentialLines(interpolated(handmadeSpace(ELL, 4), cornerField), [1, 2, 3]).map((lines) =>
          lines.map((line) => [...line.points]),
        ),
      );
    expect(draw()).toBe(draw());
  });
});
