/** Moves what a setup has on its paper by editing the line that gives its place, and makes sure that it then stands there. */
import type { Block, MoveStatement, Shape, Statement } from '../../block/tree.ts';
import type { Draft } from '../../checks/examine.ts';
import type { Point } from '../../field/geometry/outline.ts';
import type { TextEdit } from '../../findings/finding.ts';
import { unreadable } from '../../setup/metal.ts';
import type { Setup } from '../../setup/setup.ts';
import { inTheirColumns } from './columns.ts';
import { type Given, givenAs, lastOf, lineage } from './given.ts';
import { type Handle, handlesOf } from './handles.ts';
import { movedMove, movedPiece, movedPieces, newMove } from './metal.ts';
import { addedLine } from './new-line.ts';
import { movedEnd, movedProbe, probePlace, rowLine, rowText } from './readings.ts';
import { type Reworded, type Rewording, refused, type Wish } from './rewording.ts';
import { supposedSetup } from './supposed.ts';
import { arrival, companions } from './whereabouts.ts';

/** Edits, the handle they are about, and the same in words; or why nothing can be done. */
export type Moving =
  | { readonly edits: readonly TextEdit[]; readonly handle: string; readonly said: string }
  | { readonly refusal: string };

/**
 * Moves a handle by whole mm; parts of a mm are rounded off. What stands in relation to others keeps that relation as far as the
 * move allows: a gap grows, a probe slides along its row; otherwise it gets coordinates.
 */
export function moveHandle(
  draft: Draft,
  block: number,
  id: string,
  by_mm: readonly [number, number],
): Moving {
  const scene = sceneOf(draft, block, id);
  if (scene === null) return { refusal: `There is no ${id} here.` };
  const { handle } = scene;
  const by = { x: Math.round(by_mm[0]) + 0, y: Math.round(by_mm[1]) + 0 };
  if (by.x === 0 && by.y === 0) return { edits: [], handle: id, said: `${handle.label} stays` };
  const reworded = rewordedBy({ source: scene.source, label: handle.label, by }, scene);
  if (reworded.kind === 'refused') return { refusal: reworded.refusal };
  const edits = inTheirColumns(scene.block, reworded.edits);
  const after = supposedSetup(draft, block, edits);
  const refusal = after === null ? 'The block is gone.' : refusalOf(scene, after, reworded.by);
  if (after === null || refusal !== null) return { refusal: refusal ?? 'The block is gone.' };
  const along = companions(scene.setup, after, handle.name);
  return { edits, handle: id, said: saidOf(handle, reworded, along) };
}

interface Scene {
  readonly source: string;
  readonly blocks: readonly Block[];
  readonly number: number;
  readonly block: Block;
  readonly setup: Setup;
  readonly handle: Handle;
  readonly given: Given;
}

function sceneOf(draft: Draft, number: number, id: string): Scene | null {
  const blocks = draft.sheet.blocks.map(({ block }) => block);
  const [block, setup] = [blocks[number], draft.setups[number]];
  const handle = handlesOf(draft, number).find((one) => one.id === id);
  if (block === undefined || setup === undefined || handle === undefined) return null;
  const given = givenAs(blocks, number, handle.name);
  return given === null
    ? null
    : { source: draft.sheet.source.text, blocks, number, block, setup, handle, given };
}

function rewordedBy(wish: Wish, scene: Scene): Reworded {
  const [first] = scene.given.lines;
  if (first.kind === 'probe') return probeReworded(wish, scene);
  if (first.kind === 'row') return rowReworded(wish, scene);
  return metalReworded(wish, scene);
}

/** The line of this block that moves the thing; null where none does. */
const ownMove = ({ given, number }: Scene): MoveStatement | null =>
  given.moveBlock === number ? given.move : null;

function metalReworded(wish: Wish, scene: Scene): Reworded {
  const { setup, handle, given, number } = scene;
  const electrode = setup.electrodes.find(({ name }) => name === handle.name);
  if (electrode === undefined) return refused(`${wish.label} has no place.`);
  const metal = { setup, electrode };
  const shapes = given.lines.filter((line): line is Shape => line.kind === 'shape');
  const own = ownMove(scene);
  if (own !== null) return movedMove(wish, own, metal);
  const [only] = shapes;
  if (given.block === number && only !== undefined) {
    return shapes.length === 1 ? movedPiece(wish, only, metal) : movedPieces(wish, shapes, metal);
  }
  const reworded = newMove(wish, shapes, metal, given.move);
  return reworded.kind === 'refused' ? reworded : inMoveLine(scene, reworded, reworded.becomes);
}

function probeReworded(wish: Wish, scene: Scene): Reworded {
  const { setup, handle, given, number } = scene;
  const probe = setup.probes.find(({ name }) => name === handle.name);
  const line = given.lines[0];
  const where = line.kind === 'probe' ? probePlace(line, given.move) : null;
  if (probe === undefined || where === null) return refused(`${wish.label} has no place.`);
  const reworded = movedProbe(wish, where, probe, setup);
  const inherited = given.block !== number && ownMove(scene) === null;
  if (reworded.kind === 'refused' || !inherited) return reworded;
  return inMoveLine(scene, reworded, `at ${reworded.becomes}`);
}

function rowReworded(wish: Wish, scene: Scene): Reworded {
  const { setup, handle, given, number } = scene;
  const row = setup.rows.find(({ name }) => name === handle.name);
  const line = given.lines[0];
  const runs = line.kind === 'row' ? rowLine(line, given.move) : null;
  if (row === undefined || runs === null) return refused(`${wish.label} has no place.`);
  const which = handle.id.endsWith('first end') ? 'first' : 'last';
  const reworded = movedEnd(wish, runs, row, which);
  const inherited = given.block !== number && ownMove(scene) === null;
  if (reworded.kind === 'refused' || !inherited) return reworded;
  return inMoveLine(scene, reworded, rowText(wish.source, runs, which, reworded.becomes));
}

/** The rewording as a `move` line of this block. */
function inMoveLine(scene: Scene, reworded: Rewording, body: string): Rewording {
  const { block, blocks, handle, number } = scene;
  const models = lineage(blocks, number).flatMap((at) => (at === number ? [] : (blocks[at] ?? [])));
  const varies = ({ kind }: Statement): boolean => kind === 'move' || kind === 'change' || kind === 'without';
  const moves = lastOf(block.statements, ({ kind }) => kind === 'move');
  const behind = moves ?? lastOf(block.statements, varies) ?? lastOf(block.statements, () => true);
  return {
    ...reworded,
    edits: [addedLine({ block, models }, behind, { word: 'move', name: handle.name, body })],
  };
}

/** Why the setup after the edits is not what was asked for. */
function refusalOf({ setup, handle, given }: Scene, after: Setup, by: Point): string | null {
  const { label, name } = handle;
  if (handle.kind !== 'electrode') {
    const to = { x: handle.point.x + by.x, y: handle.point.y + by.y };
    const trouble = unreadable({ ...after, holes: handle.kind === 'probe' ? after.holes : [] }, to);
    if (trouble !== null) return `${label} would stand ${trouble}.`;
  }
  const gone = after.findings.find(
    ({ code, message }) => code === 'off-paper' && setup.findings.every((old) => old.message !== message),
  );
  if (gone !== undefined) return gone.message;
  if (arrival(setup, after, handle, by)) return null;
  const stands = given.lines.some((line) => 'tip' in line && line.tip.kind === 'on');
  return stands
    ? `There is no metal for ${name} to stand on there.`
    : `${label} cannot be moved there by its line.`;
}

function saidOf({ label, kind }: Handle, rewording: Rewording, along: readonly string[]): string {
  const { becomes, by } = rewording;
  const was = kind === 'electrode' ? rewording.was : `at ${rewording.was}`;
  const told =
    rewording.was === ''
      ? `${label} moves ${wayText(by)}`
      : `${label} ${was} becomes ${was.startsWith('at ') ? becomes.replace(/^at /u, '') : becomes}`;
  if (along.length === 0) return told;
  const few = along.slice(0, 4);
  const more = along.length > few.length ? ` and ${along.length - few.length} more` : '';
  return `${told}; ${few.join(', ')}${more} ${along.length === 1 ? 'goes' : 'go'} along`;
}

/** `3 mm right, 2 mm down`. */
function wayText({ x, y }: Point): string {
  const part = (mm: number, more: string, less: string): readonly string[] =>
    mm === 0 ? [] : [`${Math.abs(mm)} mm ${mm > 0 ? more : less}`];
  return [...part(x, 'right', 'left'), ...part(y, 'up', 'down')].join(', ');
}
