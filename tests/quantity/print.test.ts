import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type PrintOptions, printNumber, printQuantity, printWithin } from '../../shared/quantity/print.ts';
import type { Dimension } from '../../shared/quantity/quantity.ts';
import { parseQuantity } from '../../shared/quantity/read.ts';

/** With plain spaces, for reading. */
const spaced = (text: string | null) => text?.replaceAll('\u00a0', ' ') ?? null;

describe('printing', () => {
  test.each<[number, Dimension, PrintOptions, string]>([
    [57, 'length', {}, '57 mm'],
    [57, 'length', { unit: 'cm' }, '5.7 cm'],
    [0.75, 'potential', { decimals: 2 }, '0.75 V'],
    [0.5, 'potential', { decimals: 2 }, '0.50 V'],
    [0.0005, 'potential', {}, '0.0005 V'],
    [3000, 'potential', {}, '3 kV'],
    [-0.25, 'potential', {}, '−0.25 V'],
    [-0.001, 'potential', { decimals: 2 }, '0.00 V'],
    [-0, 'potential', {}, '0 V'],
    [2566.05, 'resistance', { digits: 4 }, '2.566 kΩ'],
    [999.96, 'resistance', { digits: 4 }, '1.000 kΩ'],
    [999.94, 'resistance', { digits: 4 }, '999.9 Ω'],
    [1e7, 'resistance', {}, '10 MΩ'],
    [0.000585, 'current', { digits: 3 }, '585 µA'],
    [0.0585, 'current', {}, '58.5 mA'],
    [0, 'current', {}, '0 A'],
    [5000, 'contact', {}, '50 Ω cm²'],
    [-30, 'angle', {}, '−30°'],
    [15, 'strength', {}, '15 V/m'],
    [0.0000005, 'strength', {}, '0.0000005 V/m'],
    [12, 'number', {}, '12'],
    [1.234e30, 'length', {}, '1.23 × 10³⁰ mm'],
    [123456, 'number', { digits: 2 }, '120000'],
  ])('%s %s %o', (value, dimension, options, text) => {
    expect(spaced(printQuantity(value, dimension, options))).toBe(text);
  });
  test('the space before a unit does not break', () => {
    expect(printQuantity(57, 'length')).toBe('57\u00a0mm');
    expect(printQuantity(5000, 'contact')).toBe('50\u00a0Ω\u00a0cm²');
  });
  test('numbers alone', () => {
    expect(printNumber(-1.5, { decimals: 2 })).toBe('\u22121.50');
    expect(printNumber(Number.NaN)).toBe('not a number');
    expect(printNumber(Number.NEGATIVE_INFINITY)).toBe('\u2212∞');
  });
});

describe('only the digits that stand', () => {
  test.each<[readonly [number, number], Dimension, object, string | null]>([
    [[2566.03, 2566.07], 'resistance', { unit: 'Ω' }, '2566.0 Ω'],
    [[2565.99, 2566.01], 'resistance', { unit: 'Ω' }, '2566.0 Ω'],
    [[2566.03, 2566.07], 'resistance', {}, '2.5660 kΩ'],
    [[0.5841, 0.5849], 'potential', {}, '0.584 V'],
    [[0.4999, 0.5001], 'potential', {}, '0.500 V'],
    [[0.75, 0.75], 'potential', { decimals: 2 }, '0.75 V'],
    [[-0.5849, -0.5841], 'potential', {}, '−0.584 V'],
    [[-1e-9, 1e-9], 'potential', { decimals: 3 }, '0.000 V'],
    [[1, 9], 'potential', {}, null],
    [[-1, 1], 'potential', {}, null],
    [[1e16, 1e16], 'strength', {}, null],
    [[Number.NaN, 1], 'potential', {}, null],
    [[0.5, Number.POSITIVE_INFINITY], 'potential', {}, null],
    [[1 / 3, 1 / 3], 'potential', { digits: 4 }, '0.3333 V'],
    [[0.00058499, 0.00058501], 'current', {}, '585.0 µA'],
  ])('%s', (bounds, dimension, options, text) => {
    expect(spaced(printWithin(bounds, dimension, options))).toBe(text);
  });
  test('what is printed is within one unit of its last digit of both bounds', () => {
    const bounds = fc.tuple(
      fc.double({ min: -1e3, max: 1e3, noNaN: true }),
      fc.double({ min: 0, max: 1, noNaN: true }),
    );
    fc.assert(
      fc.property(bounds, ([low, gap]) => {
        const text = printWithin([low, low + gap], 'potential', { unit: 'V' });
        if (text === null) return;
        const digits = text.replace('\u2212', '-').replace('\u00a0V', '');
        const unit = 10 ** -(digits.split('.')[1]?.length ?? 0);
        expect(Math.abs(Number(digits) - low)).toBeLessThanOrEqual(unit * (1 + 1e-9));
        expect(Math.abs(Number(digits) - low - gap)).toBeLessThanOrEqual(unit * (1 + 1e-9));
        expect(text).not.toMatch(/^\u22120(\.0*)?\u00a0/u);
      }),
    );
  });
});

test('what is printed in full reads back as the same number', () => {
  const dimensions: readonly Dimension[] = [
    'length',
    'potential',
    'resistance',
    'current',
    'contact',
    'angle',
    'strength',
    'time',
  ];
  // Doubles of at most 12 significant digits, as they come from a sheet.
  const values = fc
    .tuple(fc.integer({ min: -1e9, max: 1e9 }), fc.integer({ min: -9, max: 3 }))
    .map(([n, e]) => Number(`${n}e${e}`));
  fc.assert(
    fc.property(values, fc.constantFrom(...dimensions), (value, dimension) => {
      const reading = parseQuantity(printQuantity(value, dimension), dimension);
      expect(reading).toMatchObject({ kind: 'read', quantity: { value: value === 0 ? 0 : value } });
    }),
  );
});
