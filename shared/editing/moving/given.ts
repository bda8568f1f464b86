/** The lines that give an electrode, a probe or a row its place in a setup: its own, inherited ones, and `move` lines. */
import type {
  Block,
  MoveStatement,
  ProbeStatement,
  RowStatement,
  Shape,
  Statement,
} from '../../block/tree.ts';
import { nameGiven } from '../../setup/references.ts';

export type Named = Shape | ProbeStatement | RowStatement;

export interface Given {
  /** The lines that make it, one for each piece; all of one block. */
  readonly lines: readonly [Named, ...Named[]];
  /** Number of the block in which they stand. */
  readonly block: number;
  /** The `move` that holds in this setup. */
  readonly move: MoveStatement | null;
  /** Number of the block in which it stands. */
  readonly moveBlock: number | null;
}

/** Null where no line gives the name. */
export function givenAs(blocks: readonly Block[], number: number, name: string): Given | null {
  let move: MoveStatement | null = null;
  let moveBlock: number | null = null;
  for (const at of lineage(blocks, number)) {
    const statements = blocks[at]?.statements ?? [];
    if (move === null) {
      const found = statements.filter((s): s is MoveStatement => s.kind === 'move' && s.name.text === name);
      move = found.at(-1) ?? null;
      moveBlock = move === null ? null : at;
    }
    const [first, ...others] = statements.filter((s): s is Named => nameGiven(s)?.text === name);
    if (first !== undefined) return { lines: [first, ...others], block: at, move, moveBlock };
  }
  return null;
}

const setupName = ({ head }: Block): string => head.name?.text ?? 'setup';

/** The block that another one is like, the first of that name; null where there is none. */
function baseOf(blocks: readonly Block[], number: number): number | null {
  const like = blocks[number]?.head.like?.text;
  if (like === undefined) return null;
  const found = blocks.findIndex((block) => setupName(block) === like);
  return found < 0 ? null : found;
}

/** A block, the one it is like, and so on; ends where the blocks run in a circle. */
export function lineage(blocks: readonly Block[], number: number): readonly number[] {
  const seen: number[] = [];
  for (let at: number | null = number; at !== null && !seen.includes(at); at = baseOf(blocks, at)) {
    seen.push(at);
  }
  return seen;
}

/** The block itself and all that are like it, at one remove or more. */
export function descendants(blocks: readonly Block[], number: number): readonly number[] {
  return blocks.flatMap((_, other) => (lineage(blocks, other).includes(number) ? [other] : []));
}

/** The last statement of a block that fits. */
export function lastOf(
  statements: readonly Statement[],
  fits: (statement: Statement) => boolean,
): Statement | null {
  return statements.filter(fits).at(-1) ?? null;
}
