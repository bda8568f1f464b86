/** Setups of two parallel bars: where a text that says no more means the field between them. */
import { hypot } from '../../field/maths.ts';
import type { GapReading } from '../../setup/readings.ts';
import type { Setup } from '../../setup/setup.ts';
import type { Solution } from './solved.ts';

/** Strengths along the middle line between two bars, V/m, its ends left out; null for another setup. */
export interface BarField {
  readonly low: number;
  readonly high: number;
  /** Difference of potential over distance. */
  readonly mean: number;
  readonly length_mm: number;
}

/** Two bars alone on the paper, side by side, one lead each. */
export function areTwoBars({ electrodes }: Setup): boolean {
  const [a, b] = electrodes;
  if (a === undefined || b === undefined || electrodes.length !== 2) return false;
  const plain = [a, b].every(
    ({ pieces, connection }) =>
      pieces.length === 1 &&
      pieces[0]?.shape.shape === 'bar' &&
      connection !== null &&
      connection.kind !== 'floating',
  );
  if (!plain) return false;
  const [w, h] = [a, b]
    .map(({ box }) => box)
    .reduce(([x, y], { x0, x1, y0, y1 }) => [x + x1 - x0, y + y1 - y0], [0, 0]);
  const level = (low: 'x0' | 'y0', high: 'x1' | 'y1'): boolean =>
    Math.abs(a.box[low] + a.box[high] - b.box[low] - b.box[high]) < 1;
  return w < h ? level('y0', 'y1') : level('x0', 'x1');
}

/** Parts of the gap's length at both ends that are left out. */
const endPart = 0.05;

export function fieldAcross({ length_mm, points }: GapReading): BarField | null {
  const inner = points.filter(
    ({ distance_mm }) => distance_mm >= endPart * length_mm && distance_mm <= (1 - endPart) * length_mm,
  );
  const sizes = inner.flatMap(({ strength_V_per_m }) =>
    strength_V_per_m === null ? [] : [hypot(...strength_V_per_m)],
  );
  const [first, last] = [inner[0], inner.at(-1)];
  if (first?.potential_V == null || last?.potential_V == null || sizes.length < inner.length) return null;
  const mean =
    (1000 * Math.abs(last.potential_V - first.potential_V)) / (last.distance_mm - first.distance_mm);
  return { low: Math.min(...sizes), high: Math.max(...sizes), mean, length_mm };
}

/** The field between two bars; null for another setup. */
export function barField({ setup, solution }: Solution): BarField | null {
  const [gap] = solution.gaps;
  return areTwoBars(setup) && gap !== undefined ? fieldAcross(gap) : null;
}
