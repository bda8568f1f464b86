/** The solving thread on Node: this program started again in a worker of its own. */
import { parentPort, Worker } from 'node:worker_threads';
import type { Listener, Order, Reply, Thread } from './orders.ts';
import { solvingThread } from './solving-thread.ts';

/** Keeps nothing alive when the editor has gone. */
export function startThread(program: URL, listener: Listener): Thread {
  const worker = new Worker(program);
  let over = false;
  const lose = (): void => {
    if (!over) listener.lost();
    over = true;
  };
  worker.unref();
  worker.on('message', (reply: Reply) => {
    if (!over) listener.replied(reply);
  });
  worker.on('error', lose);
  worker.on('exit', lose);
  return {
    post: (order) => worker.postMessage(order),
    end() {
      over = true;
      void worker.terminate();
    },
  };
}

/** To be called in that worker. */
export function serveTasks(): void {
  const take = solvingThread({
    post: (reply) => parentPort?.postMessage(reply),
    later: (next) => void setImmediate(next),
  });
  parentPort?.on('message', (order: Order) => take(order));
}
