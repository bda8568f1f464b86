/** The view of teachers and technicians: every value, every expected picture. */
import type { Audience } from '../../block/tree.ts';
import { type SolvedSource, solvedBlock, solvedInsert } from './solved-print.ts';
import { noPrint, type View } from './view.ts';

export function solvedView(source: SolvedSource, audience: Exclude<Audience, 'pupils'>): View {
  return {
    audience,
    insert(number) {
      const bound = source.bound[number];
      return bound === undefined ? noPrint : solvedInsert(bound, source, audience);
    },
    block: (number) => solvedBlock(number, source, audience),
  };
}
