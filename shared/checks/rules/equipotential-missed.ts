/** An equipotential asked for by the block, within the supply's voltage, of which no line lies on the paper. */
import { finding } from '../../findings/finding.ts';
import { printQuantity } from '../../quantity/print.ts';
import { type Rule, solvedSetups } from '../rule.ts';

export const equipotentialMissed: Rule = (subject) =>
  solvedSetups(subject).flatMap(({ setup: { equipotentials, supply }, solution: { traces } }) => {
    const { span } = equipotentials;
    const emf = supply?.emf_V ?? 0;
    if (!span) return [];
    return traces.equipotentials
      .filter(({ value_V, lines }) => lines.length === 0 && value_V > 0 && value_V < emf)
      .map(({ value_V }) =>
        finding('equipotential-missed', {
          span,
          message: `No place on the paper is at ${printQuantity(value_V, 'potential')}: this equipotential cannot be plotted.`,
          hints: [
            'The clips and the resistance inside the supply take their share of its voltage. Choose a value between the electrodes’.',
          ],
        }),
      );
  });
