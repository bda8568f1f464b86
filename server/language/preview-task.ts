/** Makes parts of a preview, with what the desk has solved already. */
import {
  type PieceWork,
  previewPieces,
  type ReadyPiece,
  type SolvedSetup,
  type Stages,
} from '../../shared/index.ts';
import type { Desk } from './desk.ts';
import type { Problem } from './problem.ts';

export interface PreviewTask {
  readonly work: PieceWork;
  /** Those whose solutions are shown. */
  readonly problems: readonly Problem[];
  /** Number of the block, and why it has no solution. */
  readonly trouble: readonly (readonly [number, string])[];
}

export interface MadePieces {
  readonly pieces: readonly ReadyPiece[];
  /** From a rough solution. */
  readonly rough: boolean;
}

export function* madePieces({ work, problems, trouble }: PreviewTask, desk: Desk): Stages<MadePieces> {
  const solutions = new Map<number, SolvedSetup>();
  const drawn = work.wanted.some(({ form }) => form === 'figure');
  let anyRough = false;
  for (const problem of problems) {
    const { outcome, rough } = yield* drawn ? desk.soonWithLines(problem) : desk.soon(problem);
    if (outcome.solved !== null) solutions.set(problem.setup.block, outcome.solved);
    if (rough) anyRough = true;
  }
  yield;
  return { pieces: previewPieces(work, solutions, new Map(trouble)), rough: anyRough };
}
