/** Probes that stand on metal: what they read does not depend on where. */
import { finding } from '../../findings/finding.ts';
import { printQuantity } from '../../quantity/print.ts';
import { shownReading } from '../../setup/shown-reading.ts';
import { type Rule, solvedSetups } from '../rule.ts';
import { oncePerPlace } from './gathered.ts';

export const probeOnMetal: Rule = (subject) =>
  oncePerPlace(
    solvedSetups(subject).flatMap(({ setup, solution: { readings } }) =>
      setup.probes.flatMap(({ name, span, on }, i) => {
        const reading = readings.probes[i];
        if (on === null || reading?.reading_V == null) return [];
        const shown = shownReading(reading.reading_V, setup, reading.uncertainty_V ?? 0);
        return [
          finding('probe-on-metal', {
            span,
            message: `${name} stands on the metal of ${on}: it reads ${shown}\u00a0V anywhere there, and the field strength is ${printQuantity(0, 'strength')}.`,
            hints: ['To read the paper, place the probe beside the metal.'],
          }),
        ];
      }),
    ),
  );
