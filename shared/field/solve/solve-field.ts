/** The solver's door: from a field problem, or from a domain of bare paper, to bounded conductances. */
import type { FieldOutcome } from '../field.ts';
import { domainOf } from '../geometry/domain.ts';
import type { FieldProblem } from '../problem.ts';
import { type SolveSettings, solveDomain } from './solve-domain.ts';

export { type SolveSettings, solveDomain } from './solve-domain.ts';

/** Never throws: what cannot be solved comes back as trouble. Conductors must not touch (`surveyProblem` tells where they do). */
export function solveField(problem: FieldProblem, settings: SolveSettings): FieldOutcome {
  return solveDomain(domainOf(problem), settings);
}
