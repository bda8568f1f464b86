/** The rules, in the order in which they speak. A new rule is one file and one line here. */
import { siWriting } from '../prose/index.ts';
import type { Rule } from '../rule.ts';
import { safetyNotes } from '../safety/index.ts';
import { statedNumbers } from '../stated/index.ts';
import { boundsWide } from './bounds-wide.ts';
import { cellDrain } from './cell-drain.ts';
import { edgeNear } from './edge-near.ts';
import { equipotentialMissed } from './equipotential-missed.ts';
import { equipotentialsClose } from './equipotentials-close.ts';
import { fieldNotUniform } from './field-not-uniform.ts';
import { meterLoading } from './meter-loading.ts';
import { meterRange } from './meter-range.ts';
import { noCurrent } from './no-current.ts';
import { paperHeat } from './paper-heat.ts';
import { paperTiled } from './paper-tiled.ts';
import { probeOnMetal } from './probe-on-metal.ts';
import { probeScreened } from './probe-screened.ts';
import { radialLaw } from './radial-law.ts';
import { supplyLimit } from './supply-limit.ts';

export const rules: readonly Rule[] = [
  supplyLimit,
  meterRange,
  equipotentialMissed,
  noCurrent,
  cellDrain,
  paperHeat,
  meterLoading,
  equipotentialsClose,
  probeOnMetal,
  probeScreened,
  paperTiled,
  boundsWide,
  edgeNear,
  fieldNotUniform,
  radialLaw,
  statedNumbers,
  siWriting,
  safetyNotes,
];
