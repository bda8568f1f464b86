/** The view of teachers and technicians: every value, every expected picture. */
import type { Audience } from '../../block/tree.ts';
import { type Planned, planFigures } from './figure-plan.ts';
import { drawWith } from './solved-figure.ts';
import { solvedBlock, solvedInsert } from './solved-print.ts';
import type { Solutions } from './solved-values.ts';
import { noPrint, type View } from './view.ts';

export function solvedView(
  planned: Planned,
  solutions: Solutions,
  audience: Exclude<Audience, 'pupils'>,
): View {
  const plan = planFigures(planned, audience, drawWith(solutions, audience));
  const source = { setups: planned.setups, solutions, audience, plan };
  return {
    audience,
    insert(number) {
      const bound = planned.bound[number];
      return bound === undefined ? noPrint : solvedInsert(bound, source);
    },
    block: (number) => solvedBlock(number, source),
  };
}
