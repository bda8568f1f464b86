/** Values made for print: the line of best fit, an amount in another unit. */
import { describe, expect, it } from 'vitest';
import { amountIn, leastSquaresSlope } from '../../../shared/sheet/print/values.ts';

describe('line of best fit', () => {
  it('goes through points on a straight line', () => {
    expect(
      leastSquaresSlope([
        [0, 1],
        [0.1, 2.5],
        [0.4, 7],
      ]),
    ).toBeCloseTo(15, 12);
  });
  it('weighs scattered points by least squares', () => {
    // Worked by hand: mean x 1, mean y 2; sum of products 2, sum of squares 2.
    expect(
      leastSquaresSlope([
        [0, 1],
        [1, 2],
        [2, 3],
        [1, 2],
      ]),
    ).toBeCloseTo(1, 12);
    expect(
      leastSquaresSlope([
        [0, 0],
        [1, 2],
        [2, 1],
      ]),
    ).toBeCloseTo(0.5, 12);
  });
  it('needs two places', () => {
    expect(leastSquaresSlope([])).toBe(null);
    expect(
      leastSquaresSlope([
        [3, 1],
        [3, 2],
      ]),
    ).toBe(null);
  });
});

describe('an amount in the unit of its column', () => {
  const moved = (number: string, unit: string, other: string) => amountIn({ number, unit }, other)?.number;
  it('keeps its digits', () => {
    expect(moved('0.75', 'V', 'mV')).toBe('750');
    expect(moved('\u22120.585', 'mA', 'µA')).toBe('\u2212585');
    expect(moved('0.585', 'mA', 'A')).toBe('0.000585');
    expect(moved('12.50', 'V', 'kV')).toBe('0.01250');
    expect(moved('2.57', 'kΩ', 'Ω')).toBe('2570');
    expect(moved('0.75', 'V', 'V')).toBe('0.75');
  });
  it('is not of another kind', () => expect(moved('0.75', 'V', 'mA')).toBe(undefined));
});
