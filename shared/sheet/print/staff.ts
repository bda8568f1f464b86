/** The view of teachers and technicians: every value, every expected picture. */
import type { Audience } from '../../block/tree.ts';
import type { Planned } from './figure-plan.ts';
import { solvedBlock, solvedInsert } from './solved-print.ts';
import type { Solutions } from './solved-values.ts';
import { type FigurePlan, noPrint, type View } from './view.ts';

export function solvedView(
  { bound, setups }: Pick<Planned, 'bound' | 'setups'>,
  solutions: Solutions,
  audience: Exclude<Audience, 'pupils'>,
  plan: FigurePlan,
): View {
  const source = { setups, solutions, audience, plan };
  return {
    audience,
    insert(number) {
      const asked = bound[number];
      return asked === undefined ? noPrint : solvedInsert(asked, source);
    },
    block: (number) => solvedBlock(number, source),
  };
}
