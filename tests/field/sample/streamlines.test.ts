import { describe, expect, it } from 'vitest';
import { equipotentialLines } from '../../../shared/field/sample/contours.ts';
import { sampler } from '../../../shared/field/sample/sampler.ts';
import { fieldLines } from '../../../shared/field/sample/streamlines.ts';
import { discInRing, eightElectrodes, ringBetweenBars, twoBars } from '../scenes.ts';
import { along, crossings, firstPoint, lastPoint } from './lines.ts';
import { eccentric, eccentricForm, potentials, solved } from './solved.ts';

const turn = 2 * Math.PI;
const wrapped = (angle: number): number => angle - turn * Math.round(angle / turn);

describe('fieldLines', () => {
  it('of an eccentric disc in a ring follow the closed form, neighbours one current apart', () => {
    const field = solved(eccentric, 1e-7);
    const { lines, current } = fieldLines(field, Float64Array.of(1.5, 0), 24);
    expect(lines).toHaveLength(24);
    expect(current / (eccentricForm.current_A / 24)).toBeCloseTo(1, 5);
    const angles = lines.map((line) => eccentricForm.angle(...firstPoint(line)));
    lines.forEach((line, i) => {
      for (const [x, y] of along(line)) {
        // 0.02 mm across the line, at a spacing of lines of at least 2 mm.
        expect(Math.abs(wrapped(eccentricForm.angle(x, y) - angles[i]!))).toBeLessThan(0.01 * (turn / 24));
      }
    });
    const sorted = angles.map((a) => wrapped(a)).sort((a, b) => a - b);
    sorted.slice(1).forEach((angle, i) => {
      expect(angle - sorted[i]!).toBeCloseTo(turn / 24, 4);
    });
    // Mirrored in the axis: as many above as below, at equal angles.
    sorted.forEach((angle, i) => {
      expect(angle + sorted[23 - i]!).toBeCloseTo(0, 4);
    });
  });

  it('of a centred disc are radii', () => {
    const { lines } = fieldLines(solved(discInRing), Float64Array.of(3, 0), 18);
    expect(lines).toHaveLength(18);
    for (const line of lines) {
      const [x0, y0] = firstPoint(line);
      expect(Math.hypot(x0, y0)).toBeCloseTo(10, 6);
      expect(Math.hypot(...lastPoint(line))).toBeCloseTo(60, 6);
      for (const [x, y] of along(line)) expect(Math.abs(x0 * y - y0 * x) / 10).toBeLessThan(0.02);
    }
  });

  it('between long bars are straight, parallel and evenly spaced in the middle (common practice, no source)', () => {
    const { lines } = fieldLines(solved(twoBars), Float64Array.of(0, 1.5), 24);
    const middle = lines
      .filter((line) => firstPoint(line)[0] < 177.01 && Math.abs(firstPoint(line)[1] - 80) < 30)
      .sort((a, b) => firstPoint(a)[1] - firstPoint(b)[1]);
    expect(middle.length).toBeGreaterThan(6);
    for (const line of middle) {
      const y = firstPoint(line)[1];
      for (const point of along(line)) expect(Math.abs(point[1] - y)).toBeLessThan(2.5);
    }
    const gaps = middle.slice(1).map((line, i) => firstPoint(line)[1] - firstPoint(middle[i]!)[1]);
    expect(Math.max(...gaps) / Math.min(...gaps)).toBeLessThan(1.05);
  });

  it('end on a floating ring in the same number as leave it, and none is inside', () => {
    const field = solved(ringBetweenBars);
    const { lines } = fieldLines(field, potentials(field, [0, 1, null]), 24);
    const toRing = ([x, y]: [number, number]): number => Math.abs(Math.hypot(x - 120, y - 80) - 30);
    const arriving = lines.filter((line) => toRing(lastPoint(line)) < 1e-3);
    const leaving = lines.filter((line) => toRing(firstPoint(line)) < 1e-3);
    expect(arriving.length).toBeGreaterThan(4);
    expect(leaving).toHaveLength(arriving.length);
    const fromBar = lines.filter((line) => firstPoint(line)[0] > 200);
    expect(fromBar).toHaveLength(24);
    expect(lines.filter((line) => lastPoint(line)[0] < 40)).toHaveLength(24);
    for (const line of lines) {
      for (const [x, y] of along(line)) expect(Math.hypot(x - 120, y - 80)).toBeGreaterThan(29.9);
    }
  });

  it('of eight electrodes neither cross nor get lost, and fall in potential', () => {
    const field = solved(eightElectrodes);
    const v = Float64Array.of(0, 1, 0.376, 0.5, 0.584, 1, 0.878, 0);
    const { lines } = fieldLines(field, v, 30);
    const potential = sampler(field.primal.potential(v));
    expect(lines.length).toBeGreaterThanOrEqual(30);
    expect(crossings(lines)).toBe(0);
    for (const line of lines) {
      const values = along(line)
        .map(([x, y]) => potential.at(x, y)?.value)
        .filter((value) => value !== undefined);
      for (let i = 1; i < values.length; i++) expect(values[i]!).toBeLessThan(values[i - 1]! + 1e-4);
      for (const end of [firstPoint(line), lastPoint(line)]) {
        const value = potential.at(...end)?.value ?? Number.NaN;
        expect(Math.min(...Array.from(v, (of) => Math.abs(of - value)))).toBeLessThan(1e-5);
      }
    }
  });

  it('carry a barb at the half-way potential', () => {
    const field = solved(ringBetweenBars);
    const v = potentials(field, [0, 1, null]);
    const potential = sampler(field.primal.potential(v));
    for (const { points, half } of fieldLines(field, v, 12).lines) {
      const value = potential.at(points[2 * half]!, points[2 * half + 1]!)?.value ?? Number.NaN;
      expect(Math.min(...[0.25, 0.5, 0.75].map((wanted) => Math.abs(value - wanted)))).toBeLessThan(2e-4);
    }
  });

  it('carry one current each: between neighbours flows, by the potential alone, what they say', () => {
    const field = solved(twoBars, 1e-7);
    const v = Float64Array.of(0, 1.5);
    const { lines, current } = fieldLines(field, v, 24);
    const samples = sampler(field.primal.potential(v));
    const crossings = lines.flatMap((line) => {
      const points = along(line);
      const i = points.findIndex(([x], k) => k > 0 && (x - 120) * (points[k - 1]![0] - 120) <= 0);
      return i < 0 ? [] : [points[i]![1]];
    });
    const heights = crossings.sort((a, b) => a - b);
    expect(heights.length).toBeGreaterThan(15);
    heights.slice(1).forEach((top, i) => {
      const bottom = heights[i]!;
      // Simpson's rule on 20 steps; twoBars has 1 Ω per square.
      let flux = 0;
      for (let k = 0; k <= 20; k++) {
        const weight = k === 0 || k === 20 ? 1 : k % 2 === 1 ? 4 : 2;
        flux +=
          (weight * samples.at(120, bottom + ((top - bottom) * k) / 20)!.gradient[0] * (top - bottom)) / 60;
      }
      // Points of lines may be 0.02 mm off, of some 5 mm between neighbours.
      expect(Math.abs(flux / current - 1)).toBeLessThan(0.01);
    });
  });

  it('meet equipotentials at right angles', () => {
    const field = solved(eccentric);
    const v = Float64Array.of(1.5, 0);
    const potential = field.primal.potential(v);
    const samples = sampler(potential);
    const levels = [0.3, 0.6, 0.9, 1.2];
    const directions = (
      line: { points: Float64Array },
      each: (x: number, y: number, d: [number, number]) => void,
    ) => {
      for (let i = 0; i + 3 < line.points.length; i += 2) {
        const [ax, ay, bx, by] = [0, 1, 2, 3].map((k) => line.points[i + k]!) as [
          number,
          number,
          number,
          number,
        ];
        const length = Math.hypot(bx - ax, by - ay);
        if (length > 0.5) each((ax + bx) / 2, (ay + by) / 2, [(bx - ax) / length, (by - ay) / length]);
      }
    };
    const angleToField = (x: number, y: number, [dx, dy]: [number, number]): number => {
      const [gx, gy] = samples.at(x, y)!.gradient;
      return Math.abs(Math.atan2(dx * gy - dy * gx, dx * gx + dy * gy)) / (Math.PI / 180);
    };
    let seen = 0;
    for (const line of equipotentialLines(potential, levels).flat()) {
      directions(line, (x, y, d) => {
        seen++;
        expect(Math.abs(angleToField(x, y, d) - 90)).toBeLessThan(1.5);
      });
    }
    for (const line of fieldLines(field, v, 16).lines) {
      directions(line, (x, y, d) => {
        seen++;
        expect(Math.abs(angleToField(x, y, d) - 180)).toBeLessThan(1.5);
      });
    }
    expect(seen).toBeGreaterThan(100);
  });

  it('are the same, by integration, where there is no stream function', () => {
    const field = solved(eccentric, 1e-7);
    const { lines, current } = fieldLines({ ...field, stream: () => null }, Float64Array.of(1.5, 0), 12);
    expect(lines).toHaveLength(12);
    expect(current / (eccentricForm.current_A / 12)).toBeCloseTo(1, 3);
    for (const line of lines) {
      const start = eccentricForm.angle(...firstPoint(line));
      expect(Math.hypot(...lastPoint(line))).toBeCloseTo(80, 4);
      for (const [x, y] of along(line)) {
        expect(Math.abs(wrapped(eccentricForm.angle(x, y) - start))).toBeLessThan(0.01 * (turn / 12));
      }
    }
  });
});
