/**
 * The told values: what the sheet gives everyone by `!{…}` and by `draw … for pupils`, finished for print. The only place where
 * something solved is made ready for pupils.
 */
import { type Planned, planFigures } from './figure-plan.ts';
import { needsSolution } from './figures.ts';
import { drawWith } from './solved-figure.ts';
import { solvedBlock, solvedInsert } from './solved-print.ts';
import type { Solutions } from './solved-values.ts';
import type { Figure, Printed, Told } from './view.ts';

export function tell(planned: Planned, solutions: Solutions): Told {
  const { sheet, bound, setups } = planned;
  const audience = 'pupils';
  const plan = planFigures(planned, audience, drawWith(solutions, audience));
  const source = { setups, solutions, audience, plan } as const;
  const inserts = new Map<number, Printed>();
  for (const each of bound) {
    const { told, number, readers } = each.insert;
    if (told && readers.includes(audience)) inserts.set(number, solvedInsert(each, source));
  }
  const blocks = new Map<number, Figure>();
  for (const [number, { readers }] of sheet.blocks.entries()) {
    const parts = setups[number]?.draw.pupils ?? [];
    if (!readers.includes(audience) || !parts.some(needsSolution)) continue;
    const figure = solvedBlock(number, source);
    if (figure !== null) blocks.set(number, figure);
  }
  return { inserts, blocks, plan };
}
