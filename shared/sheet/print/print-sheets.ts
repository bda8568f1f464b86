/** All prints that a sheet's readers get: one document a reader, and one a tier for pupils where the sheet has tiers. */
import type { Audience } from '../../block/tree.ts';
import { type PrintInput, printSheet } from './print-sheet.ts';

export interface Print {
  readonly audience: Audience;
  /** Last part of a file's name: `pupils`, `pupils-core`, `teachers`. */
  readonly suffix: string;
  readonly html: string;
}

export const audiences: readonly Audience[] = ['pupils', 'teachers', 'technicians'];

export function printSheets(input: PrintInput, wanted: readonly Audience[]): readonly Print[] {
  return wanted.flatMap((audience) => {
    const common = printSheet(input, audience);
    if (!common) return [];
    const tiers = audience === 'pupils' ? common.tiers : [];
    const copies = tiers.flatMap((tier) => {
      const copy = printSheet(input, audience, tier);
      return copy ? [{ audience, suffix: `${audience}-${tier}`, html: copy.html }] : [];
    });
    return [{ audience, suffix: audience, html: common.html }, ...copies];
  });
}
