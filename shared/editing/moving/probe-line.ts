/** Adds a probe at a place of the paper: its line, with the next free letter. */
import type { Draft } from '../../checks/examine.ts';
import type { Point } from '../../field/geometry/outline.ts';
import { unreadable } from '../../setup/metal.ts';
import { lastOf, lineage } from './given.ts';
import { freeLetter, namesTaken } from './letters.ts';
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
  const name = freeLetter(setup.probes.at(-1)?.name ?? null, namesTaken(draft, number));
  const place = pairText(to.x, to.y);
  const behind =
    lastOf(block.statements, ({ kind }) => kind === 'probe') ??
    lastOf(block.statements, ({ kind }) => kind === 'shape' || kind === 'row');
  const models = lineage(blocks, number).flatMap((one) => (one === number ? [] : (blocks[one] ?? [])));
  const bench = { block, models };
  const line = addedLine(bench, behind, { word: 'probe', name, body: `at ${place}` });
  return { edits: [line], handle: `probe ${name}`, said: `probe ${name} at ${place} is new` };
}
