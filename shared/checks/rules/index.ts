/** The rules, in the order in which they speak. A new rule is one file and one line here. */
import { siWriting } from '../prose/index.ts';
import type { Rule } from '../rule.ts';
import { boundsWide } from './bounds-wide.ts';
import { equipotentialMissed } from './equipotential-missed.ts';
import { meterRange } from './meter-range.ts';
import { supplyLimit } from './supply-limit.ts';

export const rules: readonly Rule[] = [supplyLimit, meterRange, equipotentialMissed, boundsWide, siWriting];
