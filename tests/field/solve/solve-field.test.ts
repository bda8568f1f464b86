/** From a field problem: pieces laid on paper, as a setup hands them over. */
import { expect, test } from 'vitest';
import type { Outline } from '../../../shared/field/geometry/outline.ts';
import type { FieldProblem } from '../../../shared/field/problem.ts';
import { solveField } from '../../../shared/field/solve/solve-field.ts';

function box(x0: number, y0: number, x1: number, y1: number): Outline {
  const corners: [number, number][] = [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ];
  return { edges: corners.map(([x, y]) => ({ from: { x, y }, arc: null })) };
}

function circle(x: number, y: number, radius: number): Outline {
  const arc = { centre: { x, y }, anticlockwise: true };
  return {
    edges: [
      { from: { x: x + radius, y }, arc },
      { from: { x: x - radius, y }, arc },
    ],
  };
}

const piece = (outer: Outline, hollows: Outline[] = []) => ({ outer, hollows });
const settings = { gap: 1e-8, maxUnknowns: 100_000 };

test('bars across a sheet, past its edges: R = Rs L/W (definition of resistance per square)', () => {
  const problem: FieldProblem = {
    paper: box(0, 0, 240, 160),
    holes: [],
    slits: [],
    conductors: [[piece(box(-5, -5, 20, 165))], [piece(box(220, -5, 245, 165))]],
    sheet_ohm: [2000, 2000],
  };
  const outcome = solveField(problem, settings);
  if (!outcome.ok) throw new Error(outcome.trouble.kind);
  expect(1 / (outcome.field.upper_S[0] ?? 0)).toBeCloseTo((2000 * 200) / 160, 6);
});

test('disc in a ring: R = Rs ln(b/a)/2π (coaxial, textbook); the paper outside the ring carries nothing', () => {
  const problem: FieldProblem = {
    paper: box(0, 0, 240, 240),
    holes: [],
    slits: [],
    conductors: [[piece(circle(120, 120, 10))], [piece(circle(120, 120, 85), [circle(120, 120, 80)])]],
    sheet_ohm: [1000, 1000],
  };
  const outcome = solveField(problem, settings);
  if (!outcome.ok) throw new Error(outcome.trouble.kind);
  const { upper_S, lower_S, gap } = outcome.field;
  const exact = (1000 * Math.log(8)) / (2 * Math.PI);
  expect(gap).toBeLessThan(1e-8);
  expect(1 / (upper_S[0] ?? 0)).toBeLessThan(exact);
  expect(1 / (lower_S[0] ?? 0)).toBeGreaterThan(exact);
});
