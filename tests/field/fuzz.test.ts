/** Random scenes, overlapping, touching, off the paper: whatever has a solution has a sound one, and nothing throws. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Field } from '../../shared/field/field.ts';
import { domainOf } from '../../shared/field/geometry/domain.ts';
import type { Outline } from '../../shared/field/geometry/outline.ts';
import { surveyProblem } from '../../shared/field/geometry/survey.ts';
import type { Domain, FieldProblem, Piece } from '../../shared/field/problem.ts';
import { equipotentialLines } from '../../shared/field/sample/contours.ts';
import { pointResponse } from '../../shared/field/sample/point-response.ts';
import { sampler } from '../../shared/field/sample/sampler.ts';
import { fieldLines } from '../../shared/field/sample/streamlines.ts';
import { solveDomain } from '../../shared/field/solve/solve-domain.ts';
import { disc, piece, polygon, rectangle, slit } from './geometry/shapes.ts';

/** Half on a grid of 5 mm, where things touch, line up and coincide. */
const place = fc.oneof(
  fc.integer({ min: -4, max: 40 }).map((n) => 5 * n),
  fc.double({ min: -20, max: 200, noNaN: true }),
);
const length = fc.oneof(
  fc.integer({ min: 1, max: 12 }).map((n) => 5 * n),
  fc.double({ min: 0.01, max: 60, noNaN: true }),
);

const star = (x: number, y: number, radius: number, points: number): Outline =>
  polygon(
    ...Array.from({ length: 2 * points }, (_, i): [number, number] => {
      const reach = i % 2 === 0 ? radius : 0.4 * radius;
      return [x + reach * Math.cos((Math.PI * i) / points), y + reach * Math.sin((Math.PI * i) / points)];
    }),
  );
const shape: fc.Arbitrary<Piece> = fc.oneof(
  fc.tuple(place, place, length).map(([x, y, r]) => piece(disc(x, y, r))),
  fc.tuple(place, place, length).map(([x, y, r]) => piece(disc(x, y, r), disc(x, y, 0.8 * r))),
  fc.tuple(place, place, length, length).map(([x, y, w, h]) => piece(rectangle(x, y, x + w, y + h))),
  fc
    .tuple(place, place, place, place, place, place)
    .map(([a, b, c, d, e, f]) => piece(polygon([a, b], [c, d], [e, f]))),
  fc
    .tuple(place, place, length, fc.integer({ min: 3, max: 9 }))
    .map(([x, y, r, points]) => piece(star(x, y, r, points))),
);
const scene: fc.Arbitrary<FieldProblem> = fc.record({
  paper: fc.constant(rectangle(0, 0, 180, 120)),
  holes: fc.array(
    shape.map(({ outer }) => outer),
    { maxLength: 1 },
  ),
  slits: fc.array(
    fc.tuple(place, place, place, place).map((ends) => slit(...ends)),
    { maxLength: 3 },
  ),
  conductors: fc.array(fc.array(shape, { minLength: 1, maxLength: 2 }), { minLength: 2, maxLength: 3 }),
  sheet_ohm: fc.constantFrom([1000, 1000] as const, [1000, 1700] as const),
});

function fieldAt(domain: Domain, order: number): Field | null {
  const outcome = solveDomain(domain, { gap: 1e-9, maxUnknowns: 60_000, order });
  if (!outcome.ok) expect(['short', 'no-metal', 'no-paper', 'too-large']).toContain(outcome.trouble.kind);
  return outcome.ok ? outcome.field : null;
}

it('bounds are in order and nested, currents sum to zero, potentials keep within those of the metal', () => {
  let solved = 0;
  fc.assert(
    fc.property(scene, (problem) => {
      const domain = domainOf(problem);
      const coarse = fieldAt(domain, 3);
      const field = coarse && fieldAt(domain, 5);
      if (!coarse || !field) {
        surveyProblem(problem);
        return;
      }
      solved++;
      expectBounds(coarse, field);
      expectPotentials(field);
    }),
    { seed: 1, numRuns: 60 },
  );
  expect(solved).toBeGreaterThan(25);
});

function expectBounds(coarse: Field, { upper_S, lower_S, gap }: Field): void {
  const n = coarse.domain.conductors;
  const largest = Math.max(...upper_S);
  expect(gap).toBeLessThan(1e-4);
  for (let i = 0; i < n; i++) {
    const own = i * n + i;
    const sides = [coarse.lower_S, lower_S, upper_S, coarse.upper_S].map((matrix) => matrix[own] ?? NaN);
    expect([...sides].sort((a, b) => a - b)).toEqual(sides);
    for (const matrix of [upper_S, lower_S]) {
      const sum = matrix.slice(i * n, (i + 1) * n).reduce((total, value) => total + value, 0);
      expect(Math.abs(sum)).toBeLessThanOrEqual(1e-11 * largest);
    }
  }
}

/** At all potentials from 0 to 1 V. */
function expectPotentials(field: Field): void {
  const n = field.domain.conductors;
  const v = Float64Array.from({ length: n }, (_, k) => k / Math.max(1, n - 1));
  const potential = field.primal.potential(v);
  const samples = sampler(potential);
  const allowed = 0.5 * Math.sqrt(field.gap) + 1e-9;
  let asked = 0;
  for (let y = 3; y < 120; y += 19) {
    for (let x = 3; x < 180; x += 19) {
      const sample = samples.at(x, y);
      if (sample === null) continue;
      expect(sample.value).toBeGreaterThan(-allowed);
      expect(sample.value).toBeLessThan(1 + allowed);
      expect(Math.hypot(...sample.gradient)).toBeLessThan(Infinity);
      if (++asked % 16 === 0) expectResponse(field, x, y);
    }
  }
  const drawn = [...equipotentialLines(potential, [0.3, 0.7]).flat(), ...fieldLines(field, v, 6).lines];
  for (const { points } of drawn) expect(points.every(Number.isFinite)).toBe(true);
}

function expectResponse(field: Field, x: number, y: number): void {
  const response = pointResponse(field, x, y, 0.5);
  if (response === null) return;
  expect(response.self_ohm).toBeGreaterThanOrEqual(0);
  expect(response.weights.reduce((sum, weight) => sum + weight, 0)).toBeCloseTo(1, 8);
}
