/** Element stiffness and the whole system against polynomials, whose energies are known. */
import { describe, expect, test } from 'vitest';
import type { Field } from '../../../shared/field/field.ts';
import type { Domain } from '../../../shared/field/problem.ts';
import { solveDomain } from '../../../shared/field/solve/solve-domain.ts';
import { discInRing, fullWidthBars } from '../scenes.ts';

type Polynomial = (x: number, y: number) => number;

function solved(domain: Domain, order: number): Field {
  const outcome = solveDomain(domain, { gap: 1e-9, maxUnknowns: 100_000, order });
  if (!outcome.ok) throw new Error(outcome.trouble.kind);
  return outcome.field;
}

/** Values of a polynomial at the nodes of triangle t. */
function nodal({ primal }: Field, t: number, u: Polynomial): Float64Array {
  const { mesh, reference, curved } = primal.space;
  const [a, b, c] = [0, 1, 2].map((j) => mesh.corners[3 * t + j] ?? 0) as [number, number, number];
  const nodes = curved(t);
  return Float64Array.from({ length: reference.count }, (_, k) => {
    const [r, s] = [reference.r[k] ?? 0, reference.s[k] ?? 0];
    const between = (p: Float64Array): number =>
      (-(r + s) * (p[a] ?? 0) + (1 + r) * (p[b] ?? 0) + (1 + s) * (p[c] ?? 0)) / 2;
    return u(nodes?.x[k] ?? between(mesh.x), nodes?.y[k] ?? between(mesh.y));
  });
}

function energy(field: Field, u: Polynomial): number {
  const { primal } = field;
  let sum = 0;
  for (let t = 0; t < primal.space.mesh.corners.length / 3; t++) {
    const values = nodal(field, t, u);
    const n = values.length;
    primal.stiffness(t).forEach((k, ij) => {
      sum += k * (values[Math.floor(ij / n)] ?? 0) * (values[ij % n] ?? 0);
    });
  }
  return sum;
}

describe('energy ∫ σ |grad u|² over a sheet of 240 mm × 160 mm', () => {
  test.each([
    [1, 'x', (x: number) => x, 240 * 160],
    [2, 'x² - y²', (x: number, y: number) => x * x - y * y, (4 / 3) * 240 * 160 * (240 ** 2 + 160 ** 2)],
    [
      3,
      'x y²',
      (x: number, y: number) => x * y * y,
      240 * (160 ** 5 / 5) + 4 * (240 ** 3 / 3) * (160 ** 3 / 3),
    ],
  ])('order %i: %s', (order, _name, u, exact) => {
    expect(energy(solved(fullWidthBars, order), u) / exact).toBeCloseTo(1, 12);
    const grain = solved({ ...fullWidthBars, sheet_ohm: [4, 4] }, order);
    expect((4 * energy(grain, u)) / exact).toBeCloseTo(1, 12);
  });

  test('grain: ∫ (u_x²/R_x + u_y²/R_y) for u = x + 2y', () => {
    const field = solved({ ...fullWidthBars, sheet_ohm: [2, 5] }, 3);
    expect(energy(field, (x, y) => x + 2 * y) / (240 * 160)).toBeCloseTo(1 / 2 + 4 / 5, 12);
  });
});

test('curved triangles fill the ring between two circles: ∫ |grad x|² is its area', () => {
  const area = Math.PI * (60 ** 2 - 10 ** 2);
  expect(energy(solved(discInRing, 8), (x) => x) / area).toBeCloseTo(1, 10);
  expect(Math.abs(energy(solved(discInRing, 4), (x) => x) / area - 1)).toBeLessThan(1e-6);
});

test('between full-width bars the potential is linear and the stream function too, at every node', () => {
  for (const order of [1, 2, 5]) {
    const field = solved(fullWidthBars, order);
    const potential = field.primal.potential(Float64Array.of(2, 5));
    const stream = field.stream(Float64Array.of(2, 5));
    const start = (stream?.triangle(0)[0] ?? 0) + (3 / 240) * (nodal(field, 0, (_, y) => y)[0] ?? 0);
    for (let t = 0; t < field.primal.space.mesh.corners.length / 3; t++) {
      const v = nodal(field, t, (x) => 2 + (3 * x) / 240);
      // J = -σ grad V = (∂ψ/∂y, -∂ψ/∂x).
      const psi = nodal(field, t, (_, y) => start - (3 * y) / 240);
      potential.triangle(t).forEach((value, k) => {
        expect(value).toBeCloseTo(v[k] ?? 0, 12);
      });
      stream?.triangle(t).forEach((value, k) => {
        expect(value).toBeCloseTo(psi[k] ?? 0, 11);
      });
    }
  }
});
