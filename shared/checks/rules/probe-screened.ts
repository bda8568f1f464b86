/** Probes inside closed hollow metal, in a sheet that says nothing of hollow metal: one place there is as good as another. */

import { hypot } from '../../field/maths.ts';
import { finding } from '../../findings/finding.ts';
import type { Setup } from '../../setup/setup.ts';
import { shownReading } from '../../setup/shown-reading.ts';
import { proseIn } from '../prose/known.ts';
import { type Rule, solvedSetups } from '../rule.ts';
import { isInHollow } from '../stated/whereabouts.ts';
import { oncePerPlace } from './gathered.ts';

/** The sheet means it. */
const onPurpose =
  /\b(?:hollow|inside|within|screen\w*|shield\w*|faraday|no field|field is (?:zero|0)|cage)\b/iu;

/** Of the field that the supply would make across the paper: what rounding and bounds leave of none at all. */
const noughtPart = 1e-3;

export const probeScreened: Rule = (subject) => {
  const found = solvedSetups(subject).flatMap(({ setup, solution: { readings } }) =>
    setup.probes.flatMap(({ name, span, at, on }, i) => {
      const reading = readings.probes[i];
      const around = setup.electrodes.find((electrode) => isInHollow(at, electrode));
      if (
        on !== null ||
        around === undefined ||
        reading?.strength_V_per_m == null ||
        reading.reading_V === null
      )
        return [];
      if (hypot(...reading.strength_V_per_m) > noughtPart * fieldAcross(setup)) return [];
      const shown = shownReading(reading.reading_V, setup, reading.uncertainty_V ?? 0);
      return [
        finding('probe-screened', {
          span,
          message: `${name} stands inside ${around.name}, where there is no field: it reads ${shown}\u00a0V anywhere there.`,
        }),
      ];
    }),
  );
  if (found.length === 0 || proseIn(subject.sheet).runs.some(({ text }) => onPurpose.test(text))) return [];
  return oncePerPlace(found);
};

/** V/m, of the supply's voltage along the paper's diagonal. */
function fieldAcross({ supply, paper }: Setup): number {
  return (1000 * Math.abs(supply?.emf_V ?? 1)) / hypot(paper?.width_mm ?? 1, paper?.height_mm ?? 1);
}
