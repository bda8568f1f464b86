/**
 * The told values: what the sheet gives everyone by `!{…}` and by `draw … for pupils`, finished for print. The only place where
 * something solved is made ready for pupils.
 */
import type { Readers } from '../sheet.ts';
import type { Planned } from './figure-plan.ts';
import { needsSolution } from './figures.ts';
import { solvedBlock, solvedInsert } from './solved-print.ts';
import type { Solutions } from './solved-values.ts';
import type { Figure, FigurePlan, Printed, Told } from './view.ts';

/** Of a sheet this much is needed: who reads its blocks. */
export interface Tellable extends Pick<Planned, 'bound' | 'setups'> {
  readonly sheet: { readonly blocks: readonly { readonly readers: Readers }[] };
}

export function tell({ sheet, bound, setups }: Tellable, solutions: Solutions, plan: FigurePlan): Told {
  const audience = 'pupils';
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
