/** Names and solutions of a sheet, as checks of stated numbers ask for them. */
import type { Setup } from '../../setup/setup.ts';
import type { Subject } from '../rule.ts';
import type { Names } from './skeleton.ts';
import type { Solution } from './solved.ts';

const known = new WeakMap<readonly Setup[], Names>();

export function namesOf({ setups }: Pick<Subject, 'setups'>): Names {
  const made = known.get(setups) ?? {
    spots: new Set(
      setups.flatMap(({ electrodes, probes }) => [...electrodes, ...probes].map(({ name }) => name)),
    ),
    rows: new Set(setups.flatMap(({ rows }) => rows.map(({ name }) => name))),
  };
  known.set(setups, made);
  return made;
}

/** Null where one of the setups is not solved: it might be the one that is meant. */
export function solutionsOf({ solutions }: Subject, setups: readonly Setup[]): readonly Solution[] | null {
  const found = setups.flatMap((setup) => {
    const solution = solutions.get(setup.block);
    return solution === undefined ? [] : [{ setup, solution }];
  });
  return found.length === setups.length && found.length > 0 ? found : null;
}
