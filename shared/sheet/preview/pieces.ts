/**
 * Makes the parts of a preview that its reader has to wait for, by the views of the print: what pupils get here is what pupils get
 * there. Works on plain data, so that another thread can do it.
 */
import type { Audience } from '../../block/tree.ts';
import type { Setup } from '../../setup/setup.ts';
import type { BoundInsert } from '../inserts/bound.ts';
import { isNothing } from '../print/html.ts';
import { pupilsView } from '../print/pupils.ts';
import type { Solutions } from '../print/solved-values.ts';
import { solvedView } from '../print/staff.ts';
import { tell } from '../print/told.ts';
import type { FigurePlan, Placing, View } from '../print/view.ts';
import type { Readers } from '../sheet.ts';
import type { ReadyPiece } from './lookup.ts';
import type { Meant } from './screen-plan.ts';
import type { Wanted } from './wishes.ts';

/** All that is needed to make some parts, but for the solutions. */
export interface PieceWork {
  readonly audience: Audience;
  readonly wanted: readonly Wanted[];
  /** Inserts that are wanted. */
  readonly bound: readonly BoundInsert[];
  /** Setups that are needed. */
  readonly setups: readonly Setup[];
}

export function pieceWork(meant: Meant, audience: Audience, wanted: readonly Wanted[]): PieceWork {
  const inserts = new Set(wanted.flatMap(({ of, number }) => (of === 'insert' ? [number] : [])));
  const blocks = new Set(wanted.flatMap(({ setups }) => setups));
  return {
    audience,
    wanted,
    bound: meant.bound.filter(({ insert }) => inserts.has(insert.number)),
    setups: meant.setups.filter(({ block }) => blocks.has(block)),
  };
}

/** `trouble`: by number of the block, why it has no solution. */
export function previewPieces(
  work: PieceWork,
  solutions: Solutions,
  trouble: ReadonlyMap<number, string>,
): readonly ReadyPiece[] {
  const view = viewOf(work, solutions);
  return work.wanted.map((wanted) => ({
    key: wanted.key,
    html: htmlOf(view, wanted),
    message: wanted.solved ? troubleOf(wanted, solutions, trouble) : null,
  }));
}

function viewOf({ audience, wanted, bound, setups }: PieceWork, solutions: Solutions): View {
  const plan = planOf(wanted);
  const source = { bound: byNumber(bound, ({ insert }) => insert.number), setups: byNumber(setups, blockOf) };
  if (audience !== 'pupils') return solvedView(source, solutions, audience, plan);
  // Only what is wanted is told.
  const blocks = byNumber(
    wanted.filter(({ of }) => of === 'block'),
    ({ number }) => number,
  );
  const readers = (wish: Wanted | undefined): Readers => (wish === undefined ? [] : [audience]);
  const sheet = { blocks: Array.from(blocks, (wish) => ({ readers: readers(wish) })) };
  return pupilsView(source, tell({ ...source, bound, sheet }, solutions, plan));
}

const blockOf = ({ block }: Setup): number => block;

/** An array with gaps, as the views count in whole sheets. */
function byNumber<T>(all: readonly T[], numberOf: (each: T) => number): readonly T[] {
  const array: T[] = [];
  for (const each of all) array[numberOf(each)] = each;
  return array;
}

function planOf(wanted: readonly Wanted[]): FigurePlan {
  const placingOf = (of: Wanted['of'], number: number): Placing => {
    const found = wanted.find((wish) => wish.of === of && wish.number === number);
    if (found === undefined) throw new Error(`${of} ${number} is not wanted`);
    return found.placing;
  };
  return {
    ofInsert: (number) => placingOf('insert', number),
    ofBlock: (number) => placingOf('block', number),
  };
}

function htmlOf(view: View, { of, number }: Wanted): string {
  if (of === 'block') return view.block(number)?.svg.markup ?? '';
  const printed = view.insert(number);
  switch (printed.form) {
    case 'figure':
      return printed.figure.svg.markup;
    case 'nothing':
      return '';
    default:
      return isNothing(printed.html) ? '' : printed.html.markup;
  }
}

function troubleOf(
  { setups }: Wanted,
  solutions: Solutions,
  trouble: ReadonlyMap<number, string>,
): string | null {
  const unsolved = setups.find((block) => !solutions.has(block));
  return unsolved === undefined ? null : (trouble.get(unsolved) ?? 'This setup is not solved.');
}
