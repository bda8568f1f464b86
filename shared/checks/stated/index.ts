/** Numbers that the text states against the solution, in the order in which they are looked at. A new kind is one file and one line here. */
import type { Rule } from '../rule.ts';
import { statedCurrents } from './currents.ts';
import { statedReadings } from './readings.ts';
import { statedStrengths } from './strengths.ts';
import { statedSums } from './sums.ts';
import { statedSheetResistances, statedSupplies } from './supplies.ts';
import { statedTables } from './tables.ts';

const kinds: readonly Rule[] = [
  statedReadings,
  statedTables,
  statedStrengths,
  statedSums,
  statedCurrents,
  statedSupplies,
  statedSheetResistances,
];

export const statedNumbers: Rule = (subject) =>
  subject.solutions.size === 0 ? [] : kinds.flatMap((kind) => kind(subject));
