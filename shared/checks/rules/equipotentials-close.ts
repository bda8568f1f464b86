/** Neighbouring equipotentials that differ by less than the resolution that the block gives its meter. */
import { finding } from '../../findings/finding.ts';
import { printQuantity } from '../../quantity/print.ts';
import type { Rule } from '../rule.ts';
import { oncePerPlace } from './gathered.ts';

export const equipotentialsClose: Rule = ({ setups }) =>
  oncePerPlace(
    setups.flatMap(({ equipotentials: { span, values_V }, meter }) => {
      const resolution = meter?.resolution_V ?? null;
      if (span === null || resolution === null) return [];
      const steps = values_V.slice(1).map((value, i) => value - (values_V[i] ?? value));
      const least = Math.min(...steps);
      if (!(least < resolution * (1 - 1e-9))) return [];
      const [step, shown] = [Number(least.toPrecision(6)), printQuantity(resolution, 'potential')];
      return [
        finding('equipotentials-close', {
          span,
          message: `These equipotentials lie ${printQuantity(step, 'potential')} apart, and the meter shows steps of ${shown}: it cannot tell them apart.`,
          hints: ['Choose wider steps, or a range of the meter that shows finer ones.'],
        }),
      ];
    }),
  );
