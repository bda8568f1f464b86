/** Cases that are formulas rather than sheets: checked against each other, so that the tests that use them stand on firm ground. */
import { describe, expect, it } from 'vitest';
import { completeK, partialContactsSquares, sn } from '../field/elliptic.ts';

describe('elliptic functions', () => {
  it('K(1/√2) = Γ(1/4)² / 4√π (Abramowitz & Stegun 17.3.9)', () => {
    expect(completeK(Math.SQRT1_2)).toBeCloseTo(1.854074677301372, 14);
  });

  it('sn(K/2) = 1/√(1 + k′) (Abramowitz & Stegun 16.5)', () => {
    const k = 0.6;
    expect(sn(completeK(k) / 2, k)).toBeCloseTo(1 / Math.sqrt(1 + Math.sqrt(1 - k * k)), 14);
  });
});

describe('A06 contacts on opposite edges', () => {
  it.each([
    [10, 2.629323777131854],
    [20, 2.193550403927158],
    [40, 1.774439864790817],
    [60, 1.553895739444814],
    [80, 1.42488707717134],
    [100, 1.355402500759452],
  ])('c = %d mm: R/Rs = %d', (c, squares) => {
    expect(partialContactsSquares(160, 120, c)).toBeCloseTo(squares, 11);
  });
});

/** F. M. Smits, Bell Syst. Tech. J. 37, 711 (1958): Rs = C V/I for four equally spaced points in line, in the middle of a circle. */
describe('A09 four points in line on a circle', () => {
  const formula = (d: number): number => Math.PI / (Math.LN2 + Math.log((d * d + 3) / (d * d - 3)));

  /** Potential at x, on the diameter, of a current source at x0 in an insulated circle of radius R: the source and its image at R²/x0. */
  const byImages = (d: number): number => {
    const radius = d / 2;
    const from = (x: number, x0: number): number =>
      -Math.log(Math.abs(x - x0)) - Math.log(Math.abs(x - (radius * radius) / x0));
    const potential = (x: number): number => (from(x, -1.5) - from(x, 1.5)) / (2 * Math.PI);
    return 1 / (potential(-0.5) - potential(0.5));
  };

  it.each([
    [4, 2.928850331217789],
    [5, 3.362476285057535],
    [10, 4.171186738457744],
    [20, 4.436353758182121],
    [40, 4.507971507726739],
  ])('d/s = %d: C = %d', (d, value) => {
    expect(formula(d)).toBeCloseTo(value, 12);
    expect(byImages(d)).toBeCloseTo(value, 12);
  });
});

/** J. C. Maxwell, Treatise, art. 202 (number from memory): z = (d/2π)(1 + w + e^w), |E| = V0 / (d |1 + e^w|). */
describe('A19 edge of a pair of long plates', () => {
  const [gap, voltage] = [0.04, 1.5];
  /** On the mid-line w = u is real: x = (d/2π)(1 + u + e^u) is solved for u by Newton's method. */
  const strengthAt = (x: number): number => {
    let u = Math.min((2 * Math.PI * x) / gap, 1);
    for (let step = 0; step < 60; step++)
      u -= (1 + u + Math.exp(u) - (2 * Math.PI * x) / gap) / (1 + Math.exp(u));
    return voltage / gap / (1 + Math.exp(u));
  };

  it.each([
    [-40, 37.47427307533838],
    [0, 29.3320610355075],
    [20, 14.18152061403198],
  ])('at x = %d mm on the mid-line |E| = %d V/m', (x, value) => {
    expect(strengthAt(x / 1000)).toBeCloseTo(value, 9);
  });

  it('is half the inner strength at d/π outside the edge', () => {
    expect(strengthAt(gap / (2 * Math.PI) + gap / (2 * Math.PI))).toBeCloseTo(voltage / gap / 2, 9);
  });
});
