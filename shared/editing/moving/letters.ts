/** Letters for things that are added to a setup. */
import { reservedNames } from '../../block/words.ts';
import type { Draft } from '../../checks/examine.ts';
import { nameGiven } from '../../setup/references.ts';
import { descendants } from './given.ts';

/** Names of a setup and of those that are like it: a new thing must have none of them. */
export function namesTaken(draft: Draft, number: number): ReadonlySet<string> {
  const blocks = draft.sheet.blocks.map(({ block }) => block);
  const names = descendants(blocks, number).flatMap((member) => [
    ...(blocks[member]?.statements ?? []).flatMap((statement) => nameGiven(statement)?.text ?? []),
    ...namesIn(draft, member),
  ]);
  return new Set(names);
}

function namesIn({ setups }: Draft, number: number): readonly string[] {
  const setup = setups[number];
  if (setup === undefined) return [];
  const named = [...setup.electrodes, ...setup.probes, ...setup.rows].map(({ name }) => name);
  return [...named, ...setup.lost];
}

/** I and O look like numbers, N and P are read as negative and positive, V is the unit. */
const letters = [...'ABCDEFGHJKLMQRSTUWXYZ'];

/** The next letter behind that of the last thing of its kind, round the alphabet; then letters with numbers. */
export function freeLetter(last: string | null, taken: ReadonlySet<string>): string {
  const start = last === null ? 0 : letters.indexOf(last) + 1;
  const ordered = [...letters.slice(start), ...letters.slice(0, start)];
  const free = (name: string): boolean => !taken.has(name) && !reservedNames.includes(name);
  for (let round = 0; ; round++) {
    const found = ordered.map((letter) => (round === 0 ? letter : `${letter}${round}`)).find(free);
    if (found !== undefined) return found;
  }
}
