import { describe, expect, it } from 'vitest';
import { equipotentialLines } from '../../../shared/field/sample/contours.ts';
import { sampler } from '../../../shared/field/sample/sampler.ts';
import { discInRing, domainOfLoops, ringBetweenBars, slit, twoBars } from '../scenes.ts';
import { cornerField, ELL, FRAME, handmadeSpace, interpolated } from './handmade.ts';
import { along, firstPoint, lastPoint } from './lines.ts';
import { potentials, solved } from './solved.ts';

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

describe('equipotentialLines on solved fields', () => {
  it('are circles around a disc in a ring, at the radii of the logarithm', () => {
    // V = V0 ln(b/r)/ln(b/a) between coaxial cylinders (textbook).
    const field = solved(discInRing);
    const levels = [0.2, 0.5, 1, 1.4];
    const all = equipotentialLines(field.primal.potential(Float64Array.of(1.5, 0)), levels);
    levels.forEach((level, i) => {
      const radius = 60 * Math.exp((-level / 1.5) * Math.log(6));
      expect(all[i]).toHaveLength(1);
      expect(all[i]![0]!.closed).toBe(true);
      for (const [x, y] of along(all[i]![0]!)) expect(Math.abs(Math.hypot(x, y) - radius)).toBeLessThan(0.02);
    });
  });

  it('end on the edge of the paper, square to it', () => {
    const field = solved(twoBars);
    const lines = equipotentialLines(field.primal.potential(Float64Array.of(0, 1.5)), [0.3, 0.75, 1.2]);
    for (const line of lines.flat()) {
      expect(line.closed).toBe(false);
      const { points } = line;
      const n = points.length;
      for (const [end, inner] of [
        [firstPoint(line), points.subarray(2, 4)],
        [lastPoint(line), points.subarray(n - 4, n - 2)],
      ] as const) {
        expect(Math.min(end[1], 160 - end[1])).toBeCloseTo(0, 9);
        // The edge is straight, the line a curve: its last chord leans by half the turn along it.
        const lean = Math.atan2(Math.abs(inner[0]! - end[0]), Math.abs(inner[1]! - end[1]));
        expect(lean / (Math.PI / 180)).toBeLessThan(2.5);
      }
    }
  });

  it('at the potential of a floating ring come up to it and stop', () => {
    const field = solved(ringBetweenBars);
    const v = potentials(field, [0, 1, null]);
    const [atRing, atBars] = equipotentialLines(field.primal.potential(v), [v[2]!, 1]);
    expect(atBars).toHaveLength(0);
    expect(atRing).toHaveLength(2);
    for (const line of atRing!) {
      const ends = [firstPoint(line), lastPoint(line)].sort(
        (a, b) => Math.abs(a[1] - 80) - Math.abs(b[1] - 80),
      );
      expect(Math.abs(Math.hypot(ends[0]![0] - 120, ends[0]![1] - 80) - 30)).toBeLessThan(0.01);
      expect(Math.abs(ends[0]![0] - 120)).toBeLessThan(0.1);
      for (const [x] of along(line)) expect(Math.abs(x - 120)).toBeLessThan(0.1);
    }
  });

  it('end on either side of a slit', () => {
    const field = solved(domainOfLoops([...twoBars.loops, slit([120, 0.5], [120, 150])]));
    const all = equipotentialLines(field.primal.potential(Float64Array.of(0, 1.5)), [0.3, 1.2]);
    all.forEach((lines, i) => {
      expect(lines).toHaveLength(2);
      for (const line of lines) {
        for (const [x] of along(line))
          expect(i === 0 ? x : -x).toBeLessThan(i === 0 ? 120 + 1e-9 : -120 + 1e-9);
      }
    });
  });

  it('are none where all the paper is at one potential', () => {
    const potential = solved(twoBars).primal.potential(Float64Array.of(1, 1));
    expect(equipotentialLines(potential, [0.5, 1])).toEqual([[], []]);
  });
});
