/** A thread seen from outside: it takes one task at a time, answers it or is lost. */
import { Worker } from 'node:worker_threads';
import type { Result, Task } from './task.ts';

export interface Thread {
  post(task: Task): void;
  /** No answer comes after this. */
  end(): void;
}

export interface Listener {
  answered(result: Result): void;
  /** Died without an answer. */
  lost(): void;
}

/** Starts this program again as a thread. It keeps nothing alive when the editor has gone. */
export function startThread(program: URL, listener: Listener): Thread {
  const worker = new Worker(program);
  let over = false;
  const lose = (): void => {
    if (!over) listener.lost();
    over = true;
  };
  worker.unref();
  worker.on('message', (result: Result) => {
    if (!over) listener.answered(result);
  });
  worker.on('error', lose);
  worker.on('exit', lose);
  return {
    post: (task) => worker.postMessage(task),
    end() {
      over = true;
      void worker.terminate();
    },
  };
}
