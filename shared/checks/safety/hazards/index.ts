/** The table of hazards, in the order in which their notes are told. */
import type { Hazard } from '../hazard.ts';
import { benchHazards } from './bench.ts';
import { demonstrationHazards } from './demonstration.ts';
import { materialHazards } from './materials.ts';
import { metalHazards } from './metal.ts';
import { supplyHazards } from './supply.ts';

export const hazards: readonly Hazard[] = [
  ...supplyHazards,
  ...metalHazards,
  ...benchHazards,
  ...materialHazards,
  ...demonstrationHazards,
];
