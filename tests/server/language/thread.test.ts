/** Threads on both platforms: what comes of one that dies, and of a browser that lets no worker start another. */
import { describe, expect, it } from 'vitest';
import type { Listener, Reply } from '../../../server/language/orders.ts';
import { startThread } from '../../../server/language/thread.ts';
import { serveTasksOn, startWebThread, type WebWorker } from '../../../server/language/web-thread.ts';
import { outcomeOf } from '../../../shared/index.ts';
import { only, problems, twoSolvable } from './threads.ts';

const problem = only(problems(twoSolvable));
const order = { kind: 'task', id: 7, task: { kind: 'solve', ask: { problem } } } as const;
const solved = { outcome: outcomeOf(problem.setup, problem.ask), rough: false };

/** What a thread says first. */
function firstWord(start: (listener: Listener) => void): Promise<Reply | 'lost'> {
  return new Promise((said) => start({ replied: said, lost: () => said('lost') }));
}

describe('a thread on Node', () => {
  it('is lost when it dies', async () => {
    const program = new URL('data:text/javascript,process.exit(1)');
    expect(await firstWord((listener) => startThread(program, listener))).toBe('lost');
  });

  it('is lost when it cannot be started', async () => {
    const program = new URL('file:///nowhere/at-all.mjs');
    expect(await firstWord((listener) => startThread(program, listener))).toBe('lost');
  });

  it('is not lost when it was ended', async () => {
    const program = new URL('data:text/javascript,setInterval(() => {}, 1000)');
    const word = firstWord((listener) => startThread(program, listener).end());
    const waited = new Promise((later) => setTimeout(() => later('nothing'), 300));
    expect(await Promise.race([word, waited])).toBe('nothing');
  });
});

/** A worker of a browser that works in the test's own thread. */
function fakeWorker(): WebWorker {
  const outside: WebWorker = {
    onmessage: null,
    onerror: null,
    postMessage: (data) => setImmediate(() => inside.onmessage?.({ data: structuredClone(data) })),
    terminate: () => {},
  };
  const inside: Parameters<typeof serveTasksOn>[0] = {
    onmessage: null,
    postMessage: (data) => setImmediate(() => outside.onmessage?.({ data: structuredClone(data) })),
  };
  serveTasksOn(inside);
  return outside;
}

describe('a thread in a browser', () => {
  const done = { kind: 'done', id: 7, result: solved };

  it('solves in a worker', async () => {
    const said = await firstWord((listener) => startWebThread(fakeWorker, listener).post(order));
    expect(said).toMatchObject(done);
  });

  it('solves by itself where no worker can be made', async () => {
    const refused = () => {
      throw new Error('refused');
    };
    const said = await firstWord((listener) => startWebThread(refused, listener).post(order));
    expect(said).toMatchObject(done);
  });

  it('solves by itself what it was asked before it knew that its worker does not start', async () => {
    const failing = (): WebWorker => {
      const worker: WebWorker = {
        onmessage: null,
        onerror: null,
        postMessage: () => {},
        terminate: () => {},
      };
      setImmediate(() => worker.onerror?.({}));
      return worker;
    };
    const said = await firstWord((listener) => startWebThread(failing, listener).post(order));
    expect(said).toMatchObject(done);
  });

  it('is lost when its worker dies later', async () => {
    let worker: WebWorker | null = null;
    const said = await firstWord((listener) => {
      startWebThread(() => {
        worker = fakeWorker();
        return worker;
      }, listener);
      setTimeout(() => worker?.onerror?.({}), 50);
    });
    expect(said).toBe('lost');
  });
});
