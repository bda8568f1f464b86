/** The solver's door: from a field problem, or from a domain of bare paper, to bounded conductances. */
import type { FieldOutcome, FieldRest } from '../field.ts';
import { domainOf } from '../geometry/domain.ts';
import type { FieldProblem } from '../problem.ts';
import { type SolveSettings, solvingDomain } from './solve-domain.ts';
import { drained, type Stages } from './stages.ts';

export { type SolveSettings, solveDomain } from './solve-domain.ts';

/** Never throws: what cannot be solved comes back as trouble. Conductors must not touch (`surveyProblem` tells where they do). */
export function solveField(problem: FieldProblem, settings: SolveSettings): FieldOutcome {
  return drained(solvingField(problem, settings));
}

/** The same in stages. */
export function solvingField(
  problem: FieldProblem,
  settings: SolveSettings,
): Stages<FieldOutcome, FieldRest> {
  return solvingDomain(domainOf(problem), settings);
}
