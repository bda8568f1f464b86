/** Numbers as they are handed on: doubles to 12 significant digits, positions to 1e-9 mm, no negative zero. */
import type { Interval } from './bounds.ts';

export const rounded = (value: number): number => Number(value.toPrecision(12)) + 0;

export const roundedPosition = (mm: number): number => Math.round(mm * 1e9) / 1e9 + 0;

/** An interval that still holds its bounds: each is moved outward by half a unit of the last digit. */
export function roundedPair(interval: Interval | null): Interval | null {
  if (interval === null) return null;
  const outward = (value: number, way: number): number => rounded(value + way * 6e-13 * Math.abs(value));
  return [outward(interval[0], -1), outward(interval[1], 1)];
}
