/** Digits of readings: those that the meter shows and the uncertainty allows. */
import { describe, expect, it } from 'vitest';
import { readingDecimals, readingStep, shownReading, toStep } from '../../shared/setup/shown-reading.ts';
import { setupsOf } from './blocks.ts';

describe('decimals of a reading', () => {
  it('are those of the resolution', () => {
    expect(readingDecimals(0.01, 1e-7)).toBe(2);
    expect(readingDecimals(0.001, 1e-7)).toBe(3);
    expect(readingDecimals(0.005, 1e-7)).toBe(3);
    expect(readingDecimals(10, 0)).toBe(0);
    expect(readingDecimals(1e-7, 0)).toBe(7);
  });
  it('are fewer where the uncertainty leaves the last one open', () => {
    expect(readingDecimals(0.001, 0.0005)).toBe(3);
    expect(readingDecimals(0.001, 0.0006)).toBe(2);
    expect(readingDecimals(0.001, 0.3)).toBe(0);
  });
});

it('a meter shows whole steps of its resolution', () => {
  expect(toStep(0.7512, 0.005)).toBeCloseTo(0.75, 12);
  expect(toStep(0.7531, 0.005)).toBeCloseTo(0.755, 12);
});

describe('where the meter does not say its resolution', () => {
  const setup = (lines: string) => {
    const [found] = setupsOf(lines);
    if (found === undefined) throw new Error('no setup');
    return found;
  };
  // 2000 counts on the range that holds the supply (common practice, no source).
  it.each([
    ['supply cell 1.5 V', 0.001, '0.751'],
    ['supply power-pack 6 V', 0.01, '0.75'],
    ['supply power-pack 6 V\nmeter 10 MΩ, resolution 0.1 V', 0.1, '0.8'],
  ])('%s', (lines, step, shown) => {
    expect(readingStep(setup(lines))).toBe(step);
    expect(shownReading(0.7512, setup(lines), 1e-6)).toBe(shown);
  });
});
