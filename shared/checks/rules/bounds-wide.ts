/** A solution whose bounds stayed wider than asked for, at the limit of the work allowed. */
import { finding } from '../../findings/finding.ts';
import { type Rule, solvedSetups } from '../rule.ts';

/** Relative width above which fewer than four digits of the resistance stand. */
const wide = 1e-4;

export const boundsWide: Rule = (subject) =>
  solvedSetups(subject).flatMap(({ setup, solution }) =>
    solution.work.gap <= wide
      ? []
      : [
          finding('bounds-wide', {
            span: setup.span,
            message:
              'This setup is so fine or so large that its solution is only roughly bounded; fewer digits are printed.',
            hints: ['Very narrow gaps and very many electrodes cost most.'],
          }),
        ],
  );
