/**
 * The solving thread in a browser: this program started again in a worker of its own, and where none can be made, the server's own thread,
 * which then solves between its answers.
 */
import type { Listener, Order, Reply, Thread } from './orders.ts';
import { solvingThread } from './solving-thread.ts';

/** Of a browser's worker, what is needed here. */
export interface WebPort {
  postMessage(message: unknown): void;
  onmessage: ((event: { readonly data: unknown }) => void) | null;
}
export interface WebWorker extends WebPort {
  onerror: ((event: unknown) => void) | null;
  terminate(): void;
}

/** First word of a worker: that it is there. */
const ready = 'ready';

/** To be called in that worker. */
export function serveTasksOn(port: WebPort): void {
  const take = solvingThread({ post: (reply) => port.postMessage(reply), later: nextTurn() });
  port.onmessage = ({ data }) => take(data as Order);
  port.postMessage(ready);
}

/** `make` throws, or its worker fails before its first word, where the browser does not let a worker start another. */
export function startWebThread(make: () => WebWorker, listener: Listener): Thread {
  let thread: Thread;
  /** Orders since the start, until the worker is known to be there. */
  let early: Order[] | null = [];
  const instead = (): void => {
    thread = ownThread(listener);
    for (const order of early ?? []) thread.post(order);
    early = null;
  };
  try {
    thread = workerThread(make(), {
      ready: () => {
        early = null;
      },
      replied: listener.replied,
      lost: () => (early === null ? listener.lost() : instead()),
    });
  } catch {
    instead();
  }
  return {
    post: (order) => {
      early?.push(order);
      thread.post(order);
    },
    end: () => thread.end(),
  };
}

function workerThread(worker: WebWorker, listener: Listener & { ready(): void }): Thread {
  let over = false;
  const end = (): void => {
    over = true;
    worker.terminate();
  };
  worker.onmessage = ({ data }) => {
    if (over) return;
    if (data === ready) listener.ready();
    else listener.replied(data as Reply);
  };
  worker.onerror = () => {
    if (over) return;
    end();
    listener.lost();
  };
  return { post: (order) => worker.postMessage(order), end };
}

/** Never lost, and never replaced while it is in a stage, since nobody else can act meanwhile. */
function ownThread(listener: Listener): Thread {
  let over = false;
  const later = nextTurn();
  const take = solvingThread({
    post: (reply) => {
      if (!over) listener.replied(reply);
    },
    later: (next) => later(() => over || next()),
  });
  return {
    // Not at once: who posts is not answered before it has got to its end.
    post: (order) => later(() => over || take(order)),
    end: () => {
      over = true;
    },
  };
}

/** Runs what is given in the order of giving, each after the messages that have come meanwhile. */
function nextTurn(): (next: () => void) => void {
  // The types at hand are those of Node, whose ports have the same members.
  const { port1, port2 } = new MessageChannel() as unknown as { port1: WebPort; port2: WebPort };
  const waiting: (() => void)[] = [];
  port1.onmessage = () => waiting.shift()?.();
  return (next) => {
    waiting.push(next);
    port2.postMessage(null);
  };
}
