/** Inserts that are understood but not printed by this version. */
import { finding } from '../../findings/finding.ts';
import type { Rule } from '../rule.ts';

export const printedLater: Rule = ({ sheet }) =>
  sheet.inserts.flatMap(({ head, span }) =>
    head.kind === 'later'
      ? [
          finding('printed-later', {
            span,
            message: `\`${head.word}\` is not printed by this version.`,
            hints: ['Teachers and technicians get a labelled placeholder, pupils nothing.'],
          }),
        ]
      : [],
  );
