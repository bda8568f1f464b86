/**
 * The told values: what the sheet gives everyone by `!{…}` and by `draw … for pupils`, finished for print. The only place where
 * something solved is made ready for pupils.
 */
import type { Sheet } from '../sheet.ts';
import { needsSolution } from './figures.ts';
import { type SolvedSource, solvedBlock, solvedInsert } from './solved-print.ts';
import type { Figure, Printed, Told } from './view.ts';

export function tell(sheet: Sheet, source: SolvedSource): Told {
  const inserts = new Map<number, Printed>();
  for (const bound of source.bound) {
    const { told, number, readers } = bound.insert;
    if (told && readers.includes('pupils')) inserts.set(number, solvedInsert(bound, source, 'pupils'));
  }
  const blocks = new Map<number, Figure>();
  for (const [number, { readers }] of sheet.blocks.entries()) {
    const parts = source.setups[number]?.draw.pupils ?? [];
    if (!readers.includes('pupils') || !parts.some(needsSolution)) continue;
    const figure = solvedBlock(number, source, 'pupils');
    if (figure !== null) blocks.set(number, figure);
  }
  return { inserts, blocks };
}
