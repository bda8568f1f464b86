/** A current limit that would act: the drawn current is above it. The solution stays as if it did not act. */
import { finding } from '../../findings/finding.ts';
import { printQuantity } from '../../quantity/print.ts';
import { type Rule, solvedSetups } from '../rule.ts';

export const supplyLimit: Rule = (subject) =>
  solvedSetups(subject).flatMap(({ setup: { supply }, solution }) => {
    const drawn = solution.readings.current_A;
    if (!supply || supply.limit_A === null || drawn === null || Math.abs(drawn) <= supply.limit_A) return [];
    const told = [
      printQuantity(Math.abs(drawn), 'current', { digits: 2 }),
      printQuantity(supply.limit_A, 'current'),
    ];
    return [
      finding('supply-limit', {
        span: supply.span,
        message: `The paper would draw ${told[0]}, more than the limit of ${told[1]}: the supply would lower its voltage.`,
        hints: [
          'Lower the voltage, or say the limit that the supply really has. The readings are solved as if it did not act.',
        ],
      }),
    ];
  });
