/** Charge that a lesson takes from a cell, against the department's limit, or a fair part of what a cell of that size gives. */
import { finding } from '../../findings/finding.ts';
import { printNumber } from '../../quantity/print.ts';
import type { Supply } from '../../setup/setup.ts';
import type { Department } from '../../sheet/department/department.ts';
import { usualLimits } from '../../sheet/department/limits.ts';
import { type Rule, solvedSetups } from '../rule.ts';
import { capacityOf, fairPart } from './cell-capacities.ts';
import { oncePerPlace } from './gathered.ts';

/** Of a lesson whose length the front matter does not say. */
const usualLesson_min = 60;

export const cellDrain: Rule = (subject) =>
  oncePerPlace(
    solvedSetups(subject).flatMap(({ setup: { supply }, solution: { readings } }) => {
      const current_A = readings.current_bounds_A?.[0] ?? readings.current_A;
      if (supply?.source !== 'cell' || current_A === null) return [];
      const minutes = subject.sheet.front.minutes ?? usualLesson_min;
      // In series each cell gives the whole current.
      const drain_mAh = 1000 * Math.abs(current_A) * (minutes / 60);
      const { limit_mAh, why } = limitOf(supply, subject.department);
      if (drain_mAh <= limit_mAh) return [];
      return [
        finding('cell-drain', {
          span: supply.span,
          message: `In ${minutes} min this takes ${printNumber(drain_mAh, { digits: 2 })}\u00a0mA\u00a0h from ${supply.cells === 1 ? 'the cell' : 'each cell'}, more than ${printNumber(limit_mAh)}\u00a0mA\u00a0h (${why}).`,
          hints: ['Check the sheet resistance, or take off one lead between readings.'],
        }),
      ];
    }),
  );

function limitOf(
  { cellSize, chemistry }: Supply,
  { limits }: Department,
): { readonly limit_mAh: number; readonly why: string } {
  const { value, source } = limits['cell-drain'];
  const capacity = capacityOf(cellSize, chemistry);
  // What a department has decided stands.
  if (capacity === null || value !== usualLimits['cell-drain'].value)
    return { limit_mAh: value, why: source };
  const limit_mAh = Number((capacity.capacity_mAh * fairPart).toPrecision(2));
  return {
    limit_mAh,
    why: `a twentieth of what ${/^A/u.test(capacity.name) ? 'an' : 'a'} ${capacity.name} cell of this kind gives, from memory`,
  };
}
