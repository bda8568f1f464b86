/** The thread that solves and draws, one task after the other, so that the editor never waits for a field. */
import { serialize } from 'node:v8';
import { parentPort } from 'node:worker_threads';
import { editing, outcomeOf } from '../../shared/index.ts';
import type { Result, Task } from './task.ts';

export function serveTasks(): void {
  parentPort?.on('message', (task: Task) => parentPort?.postMessage(carriedOut(task)));
}

function carriedOut(task: Task): Result {
  if (task.kind === 'solve') {
    const outcome = outcomeOf(task.setup, task.ask);
    return { kind: 'solve', outcome, bytes: serialize(outcome).byteLength };
  }
  const drawing = editing.editorDrawing(task.setup, task.solved);
  return { kind: 'draw', drawing, bytes: serialize(drawing).byteLength };
}
