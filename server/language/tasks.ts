/**
 * What the solving thread does: one table, from the kind of a task to how it is carried out at the desk, by stages. Asked and answered in
 * plain data.
 */
import { editing, type Outcome, type Stages } from '../../shared/index.ts';
import { atOnce, type Desk, type Solved } from './desk.ts';
import { madePieces } from './preview-task.ts';
import { printed } from './print-task.ts';
import type { Problem } from './problem.ts';

interface OfProblem {
  readonly problem: Problem;
}

export interface Drawn {
  readonly drawing: editing.EditorDrawing | null;
  /** Of a rough outcome. */
  readonly rough: boolean;
}

/** The panel's picture, of the outlines alone where there is no solution. */
export interface Pictured {
  readonly picture: editing.PanelPicture | null;
  readonly solved: boolean;
  readonly trouble: Outcome['trouble'];
  readonly rough: boolean;
}

const tasks = {
  /** The first outcome of a problem, soon. */
  solve: ({ problem }: OfProblem, desk: Desk): Stages<Solved> => desk.soon(problem),
  /** The outcome that is to stand. */
  *refine({ problem }: OfProblem, desk: Desk): Stages<Solved> {
    return { outcome: yield* desk.whole(problem), rough: false };
  },
  *draw({ problem }: OfProblem, desk: Desk): Stages<Drawn> {
    const { outcome, rough } = yield* desk.soonWithLines(problem);
    const drawing = yield* atOnce(() => editing.editorDrawing(problem.setup, outcome.solved));
    return { drawing, rough };
  },
  /** What the slip says of a place of the paper, mm. */
  *slip(
    { problem, x, y }: OfProblem & { readonly x: number; readonly y: number },
    desk: Desk,
  ): Stages<editing.Slip> {
    const reader = yield* desk.reader(problem);
    return editing.slipAt(problem.setup, reader, { x, y });
  },
  *panel({ problem }: OfProblem, desk: Desk): Stages<Pictured> {
    const { outcome, rough } = yield* desk.soonWithLines(problem);
    const picture = yield* atOnce(() => editing.panelPicture(problem.setup, outcome.solved));
    return { picture, solved: outcome.solved !== null, trouble: outcome.trouble, rough };
  },
  /** Parts of a preview. */
  preview: madePieces,
  print: printed,
};

type Tasks = typeof tasks;
export type TaskKind = keyof Tasks;
/** What a task is asked with. */
export type AskOf<K extends TaskKind> = Parameters<Tasks[K]>[0];
export type ResultOf<K extends TaskKind> = ReturnType<Tasks[K]> extends Stages<infer R> ? R : never;
export type Task<K extends TaskKind = TaskKind> = {
  readonly [Each in K]: { readonly kind: Each; readonly ask: AskOf<Each> };
}[K];

export function carryOut<K extends TaskKind>({ kind, ask }: Task<K>, desk: Desk): Stages<ResultOf<K>> {
  // The table pairs each kind with its own ask, which the compiler cannot follow through a union.
  const task = tasks[kind] as (ask: AskOf<K>, desk: Desk) => Stages<ResultOf<K>>;
  return task(ask, desk);
}
