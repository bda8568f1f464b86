/** Holes and slits that part the paper between the terminals: nothing flows, and every piece stands at one potential. */
import { hypot } from '../../field/maths.ts';
import { finding } from '../../findings/finding.ts';
import type { GapReading } from '../../setup/readings.ts';
import { type Rule, solvedSetups } from '../rule.ts';

/** Of the mean field that would be there: what rounding leaves of none. */
const noughtPart = 1e-6;

export const noCurrent: Rule = (subject) =>
  solvedSetups(subject).flatMap(({ setup, solution: { gaps, readings } }) => {
    const emf = Math.abs(setup.supply?.emf_V ?? 0);
    const drawn = readings.current_A;
    const still = gaps.filter((gap) => isStill(gap, emf));
    const [first] = still;
    if (first === undefined || still.length < gaps.length || emf === 0) return [];
    if (drawn !== null && Math.abs(drawn) > noughtPart * (emf / (setup.paper?.resistance_ohm?.[0] ?? 1)))
      return [];
    const [cut] = [...setup.slits, ...setup.holes];
    return [
      finding('no-current', {
        span: cut?.span ?? setup.span,
        message: `No current flows: the paper does not join ${first.to} and ${first.from}. Each part of it stands at one potential.`,
        hints: ['Leave a bridge of paper beside the cut, or join both parts with metal.'],
      }),
    ];
  });

/** Somewhere there is paper, and nowhere is there a field. */
function isStill({ points, length_mm }: GapReading, emf: number): boolean {
  const known = points.flatMap(({ strength_V_per_m }) =>
    strength_V_per_m === null ? [] : [hypot(...strength_V_per_m)],
  );
  return known.length > 0 && known.every((strength) => strength < (noughtPart * 1000 * emf) / length_mm);
}
