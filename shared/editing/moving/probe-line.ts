/** Adds a probe at a place of the paper: its line, with the next free letter. */
import { reservedNames } from '../../block/words.ts';
import type { Draft } from '../../checks/examine.ts';
import type { Point } from '../../field/geometry/outline.ts';
import { unreadable } from '../../setup/metal.ts';
import { nameGiven } from '../../setup/references.ts';
import { descendants, lastOf, lineage } from './given.ts';
import type { Moving } from './move.ts';
import { addedLine } from './new-line.ts';
import { pairText } from './numbers.ts';

/** `at` in mm on the paper; the probe stands on whole mm. */
export function probeLine(draft: Draft, number: number, at: Point): Moving {
  const blocks = draft.sheet.blocks.map(({ block }) => block);
  const [block, setup] = [blocks[number], draft.setups[number]];
  if (block === undefined || setup === undefined) return { refusal: 'There is no block here.' };
  if (setup.paper === null) return { refusal: 'There is no paper yet to stand a probe on.' };
  const to = { x: Math.round(at.x) + 0, y: Math.round(at.y) + 0 };
  const trouble = unreadable(setup, to);
  if (trouble !== null) return { refusal: `A probe would stand ${trouble}.` };
  const taken = new Set(
    descendants(blocks, number).flatMap((member) => [
      ...(blocks[member]?.statements ?? []).flatMap((statement) => nameGiven(statement)?.text ?? []),
      ...namesIn(draft, member),
    ]),
  );
  const name = freeLetter(setup.probes.map((probe) => probe.name).at(-1) ?? null, taken);
  const place = pairText(to.x, to.y);
  const behind =
    lastOf(block.statements, ({ kind }) => kind === 'probe') ??
    lastOf(block.statements, ({ kind }) => kind === 'shape' || kind === 'row');
  const models = lineage(blocks, number).flatMap((at) => (at === number ? [] : (blocks[at] ?? [])));
  const line = addedLine({ source: draft.sheet.source.text, block, models }, behind, {
    word: 'probe',
    name,
    body: `at ${place}`,
  });
  return { edits: [line], handle: `probe ${name}`, said: `probe ${name} at ${place} is new` };
}

function namesIn({ setups }: Draft, number: number): readonly string[] {
  const setup = setups[number];
  if (setup === undefined) return [];
  const named = [...setup.electrodes, ...setup.probes, ...setup.rows].map(({ name }) => name);
  return [...named, ...setup.lost];
}

/** I and O look like numbers, N and P are read as negative and positive, V is the unit. */
const letters = [...'ABCDEFGHJKLMQRSTUWXYZ'];

/** The next letter behind that of the last probe, round the alphabet; then letters with numbers. */
function freeLetter(last: string | null, taken: ReadonlySet<string>): string {
  const start = last === null ? 0 : letters.indexOf(last) + 1;
  const ordered = [...letters.slice(start), ...letters.slice(0, start)];
  const free = (name: string): boolean => !taken.has(name) && !reservedNames.includes(name);
  for (let round = 0; ; round++) {
    const found = ordered.map((letter) => (round === 0 ? letter : `${letter}${round}`)).find(free);
    if (found !== undefined) return found;
  }
}
