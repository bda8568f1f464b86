/**
 * Heat in the paper, E²/R for each area with R the sheet resistance, where it is greatest among the places that are looked at, and at
 * clips. At a sharp corner E²/R has no limit, so that no place within 1 mm of metal counts. A current limit that
 * acts lowers all of it by the square of the current; an extra-high-tension supply collapses, and heats nothing.
 */

import { distanceToCurve } from '../../field/geometry/curve.ts';
import type { Point } from '../../field/geometry/outline.ts';
import { finding } from '../../findings/finding.ts';
import { printNumber } from '../../quantity/print.ts';
import { curvesOfPieces } from '../../setup/plane.ts';
import type { SolvedSetup } from '../../setup/readings.ts';
import type { Setup } from '../../setup/setup.ts';
import { type Rule, solvedSetups } from '../rule.ts';
import { oncePerPlace } from './gathered.ts';

/** What a clip's jaws hold, cm² (common practice, no source). */
const clip_cm2 = 1;
const nearest_mm = 1;

export const paperHeat: Rule = (subject) =>
  oncePerPlace(
    solvedSetups(subject).flatMap(({ setup, solution }) => {
      const heat = heatOf(setup, solution);
      const limit = subject.department.limits.heat;
      if (heat === null || setup.supply === null || setup.supply.source === 'eht') return [];
      const greatest = Math.max(heat.paper_mW_cm2, heat.clip_mW_cm2);
      if (greatest <= limit.value) return [];
      const where = heat.clip_mW_cm2 > heat.paper_mW_cm2 ? 'at a clip' : 'where the field is strongest';
      const print = (value: number): string => printNumber(value, { digits: 2 });
      return [
        finding('paper-heat', {
          span: setup.supply.span,
          message: `The paper turns ${power(heat.whole_mW)} into heat, ${print(heat.mean_mW_cm2)}\u00a0mW/cm² on average and ${print(greatest)}\u00a0mW/cm² ${where}, more than ${printNumber(limit.value)}\u00a0mW/cm² (${limit.source}).`,
          hints: [
            'Check the sheet resistance, or lower the voltage: half of it makes a quarter of the heat.',
          ],
        }),
      ];
    }),
  );

const power = (mW: number): string =>
  mW < 1000 ? `${printNumber(mW, { digits: 2 })}\u00a0mW` : `${printNumber(mW / 1000, { digits: 2 })}\u00a0W`;

export interface Heat {
  readonly whole_mW: number;
  readonly mean_mW_cm2: number;
  readonly paper_mW_cm2: number;
  readonly clip_mW_cm2: number;
}

/** Null without a sheet resistance. */
export function heatOf(setup: Setup, { readings, gaps, samples }: SolvedSetup): Heat | null {
  const { paper, electrodes } = setup;
  const { current_A, resistance_ohm } = readings;
  if (paper?.resistance_ohm == null || current_A === null || resistance_ohm === null) return null;
  const [along_x, along_y] = paper.resistance_ohm;
  const limit_A = setup.supply?.limit_A ?? null;
  const part = limit_A === null || limit_A >= Math.abs(current_A) ? 1 : (limit_A / current_A) ** 2;
  const whole_mW = part * 1000 * current_A * current_A * resistance_ohm;
  const curves = curvesOfPieces(electrodes.flatMap(({ pieces }) => pieces.map(({ geometry }) => geometry)));
  const isClear = ({ x, y }: Point): boolean =>
    curves.every((curve) => distanceToCurve(curve, x, y) > nearest_mm);
  // V²/m² over Ω is W/m², a tenth of a mW/cm².
  const here = [
    ...gaps.flatMap(({ points }) => points),
    ...readings.probes,
    ...samples,
    ...readings.rows.flatMap(({ points }) => points),
  ]
    .flatMap(({ x_mm, y_mm, strength_V_per_m: strength }) =>
      strength !== null && isClear({ x: x_mm, y: y_mm }) ? [strength] : [],
    )
    .map(([x, y]) => (x * x) / along_x / 10 + (y * y) / along_y / 10);
  const clips = electrodes.map(
    ({ clip_ohm }, i) => (1000 * clip_ohm * (readings.electrodes[i]?.current_A ?? 0) ** 2) / clip_cm2,
  );
  return {
    whole_mW,
    mean_mW_cm2: whole_mW / ((paper.width_mm * paper.height_mm) / 100),
    paper_mW_cm2: part * Math.max(0, ...here),
    clip_mW_cm2: part * Math.max(0, ...clips),
  };
}
