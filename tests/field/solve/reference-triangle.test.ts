/** The reference triangle against polynomials, whose derivatives and integrals are known. */
import { describe, expect, test } from 'vitest';
import { gaussLobattoPoints, gaussRule } from '../../../shared/field/solve/gauss.ts';
import { barycentric, referenceTriangle } from '../../../shared/field/solve/reference-triangle.ts';

const ORDERS = [1, 2, 3, 4, 6, 8, 10, 12];

test('Gauss rules integrate even powers exactly: ∫ x^2m = 2/(2m + 1)', () => {
  for (let count = 1; count <= 15; count++) {
    const { points, weights } = gaussRule(count);
    for (let m = 0; 2 * m <= 2 * count - 1; m++) {
      const sum = points.reduce((total, x, i) => total + (weights[i] ?? 0) * x ** (2 * m), 0);
      expect(sum).toBeCloseTo(2 / (2 * m + 1), 13);
    }
  }
});

test('Gauss-Lobatto points of order 4 are 0, ±√(3/7), ±1 (Abramowitz & Stegun, table 25.6)', () => {
  const root = Math.sqrt(3 / 7);
  expect([...gaussLobattoPoints(4)]).toEqual([-1, -root, 0, root, 1].map((x) => expect.closeTo(x, 14)));
});

describe.each(ORDERS)('order %i', (order) => {
  const triangle = referenceTriangle(order);
  const values = new Float64Array(triangle.count);
  const byR = new Float64Array(triangle.count);
  const byS = new Float64Array(triangle.count);
  /** A polynomial of full degree and its derivatives. */
  const f = (r: number, s: number): number => (1 + 0.3 * r - 0.4 * s) ** order + r;
  const fr = (r: number, s: number): number => 0.3 * order * (1 + 0.3 * r - 0.4 * s) ** (order - 1) + 1;
  const fs = (r: number, s: number): number => -0.4 * order * (1 + 0.3 * r - 0.4 * s) ** (order - 1);
  const nodal = triangle.r.map((r, k) => f(r, triangle.s[k] ?? 0));
  const dot = (a: Float64Array): number => a.reduce((sum, value, k) => sum + value * (nodal[k] ?? 0), 0);

  test('each basis function is 1 at its node and 0 at the others', () => {
    for (let k = 0; k < triangle.count; k++) {
      triangle.basis(triangle.r[k] ?? 0, triangle.s[k] ?? 0, values);
      values.forEach((value, i) => {
        expect(Math.abs(value - (i === k ? 1 : 0))).toBeLessThan(1e-12);
      });
    }
  });

  test('polynomials of the order and their gradients are reproduced', () => {
    for (const [r, s] of [
      [-0.2, -0.7],
      [0.1, -0.3],
      [-1, 1],
      [0.99, -1],
    ] as const) {
      triangle.basis(r, s, values);
      triangle.gradient(r, s, byR, byS);
      expect(dot(values)).toBeCloseTo(f(r, s), 11);
      expect(dot(byR)).toBeCloseTo(fr(r, s), 9);
      expect(dot(byS)).toBeCloseTo(fs(r, s), 9);
    }
  });

  test('nodes along every edge are the Gauss-Lobatto points', () => {
    const points = gaussLobattoPoints(order);
    for (let edge = 0; edge < 3; edge++) {
      for (let i = 1; i < order; i++) {
        const k = 3 + edge * (order - 1) + i - 1;
        const l = barycentric(triangle.r[k] ?? 0, triangle.s[k] ?? 0);
        expect((l[(edge + 1) % 3] ?? 0) - (l[edge] ?? 0)).toBeCloseTo(points[i] ?? 0, 14);
        expect(l[(edge + 2) % 3]).toBeCloseTo(0, 14);
      }
    }
  });

  test('energies of r, s and r + s: ∫ 1 = 2, and 4 for the mixed piece', () => {
    const r = triangle.r;
    const s = triangle.s;
    const energy = (piece: Float64Array, u: Float64Array): number =>
      piece.reduce((sum, value, ij) => {
        const i = Math.floor(ij / triangle.count);
        return sum + value * (u[i] ?? 0) * (u[ij % triangle.count] ?? 0);
      }, 0);
    const both = r.map((value, k) => value + (s[k] ?? 0));
    expect(energy(triangle.rr, r)).toBeCloseTo(2, 11);
    expect(energy(triangle.rr, s)).toBeCloseTo(0, 11);
    expect(energy(triangle.ss, s)).toBeCloseTo(2, 11);
    expect(energy(triangle.rs, r)).toBeCloseTo(0, 11);
    expect(energy(triangle.rs, both)).toBeCloseTo(4, 11);
  });
});
