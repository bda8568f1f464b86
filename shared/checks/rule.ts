/** A rule looks at a sheet that has been read and solved, and says what it finds. One file a rule, in `rules/`. */
import type { Finding } from '../findings/finding.ts';
import type { SolvedSetup } from '../setup/readings.ts';
import type { Setup } from '../setup/setup.ts';
import { type Department, usualDepartment } from '../sheet/department/department.ts';
import type { Sheet } from '../sheet/sheet.ts';

/** What a sheet is examined against, beside itself. */
export interface Standards {
  readonly department: Department;
  /** `2026-03-12`. Null where nobody says: then nothing is out of date. */
  readonly today: string | null;
}

export const usualStandards: Standards = { department: usualDepartment, today: null };

export interface Subject extends Standards {
  readonly sheet: Sheet;
  readonly setups: readonly Setup[];
  /** By number of the block; a setup that could not be solved is missing. */
  readonly solutions: ReadonlyMap<number, SolvedSetup>;
}

export type Rule = (subject: Subject) => readonly Finding[];

/** Every setup that was solved, with its solution. */
export function solvedSetups({
  setups,
  solutions,
}: Subject): readonly { setup: Setup; solution: SolvedSetup }[] {
  return setups.flatMap((setup) => {
    const solution = solutions.get(setup.block);
    return solution ? [{ setup, solution }] : [];
  });
}
