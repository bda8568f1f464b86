/** Dense kernels against plain multiplication. */
import { describe, expect, test } from 'vitest';
import { inverse, partialCholesky, solveLower, solveUpper } from '../../../shared/field/solve/dense.ts';

/** A symmetric matrix with a heavy diagonal from a fixed sequence. */
function heavy(n: number): Float64Array {
  let seed = 12345;
  const matrix = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      seed = (seed * 16807) % 2147483647;
      const value = seed / 2147483647 - 0.5 + (i === j ? n : 0);
      matrix[i * n + j] = value;
      matrix[j * n + i] = value;
    }
  }
  return matrix;
}

describe.each([1, 2, 3, 5, 8, 33, 70])('n = %i', (n) => {
  const a = heavy(n);

  test('a whole factorisation solves a system', () => {
    const l = a.slice();
    expect(partialCholesky(l, 0, n, n)).toBe(true);
    const wanted = Float64Array.from({ length: n }, (_, i) => 1 + i / n);
    const b = wanted.map((_, i) => wanted.reduce((sum, x, j) => sum + (a[i * n + j] ?? 0) * x, 0));
    solveLower(l, n, b);
    solveUpper(l, n, b);
    b.forEach((x, i) => {
      expect(x).toBeCloseTo(wanted[i] ?? 0, 11);
    });
  });

  test('what a partial factorisation leaves is the inverse of a block of the inverse', () => {
    const k = Math.floor(n / 2);
    const offset = 3;
    const work = new Float64Array(offset + n * n);
    work.set(a, offset);
    expect(partialCholesky(work, offset, n, k)).toBe(true);
    const whole = inverse(a, n);
    const rest = n - k;
    const block = new Float64Array(rest * rest);
    for (let i = 0; i < rest; i++) {
      for (let j = 0; j < rest; j++) block[i * rest + j] = whole[(k + i) * n + k + j] ?? 0;
    }
    const complement = inverse(block, rest);
    for (let i = 0; i < rest; i++) {
      for (let j = 0; j <= i; j++) {
        expect(work[offset + (k + i) * n + k + j]).toBeCloseTo(complement[i * rest + j] ?? 0, 10);
      }
    }
  });
});

test('a matrix that is not positive definite is refused, and so is one with a NaN', () => {
  expect(partialCholesky(Float64Array.from([1, 0, 2, 1]), 0, 2, 2)).toBe(false);
  expect(partialCholesky(Float64Array.from([1, 0, Number.NaN, 1]), 0, 2, 2)).toBe(false);
});
