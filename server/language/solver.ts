/**
 * Hands tasks to the solving thread: the newest text first, and nothing that no text asks for any more. What has become unwanted while it
 * is worked on is stopped between two stages; a thread that does not come to the end of its stage is replaced after a while.
 */
import type { Listener, Reply, Thread } from './orders.ts';
import type { AskOf, ResultOf, Task, TaskKind } from './tasks.ts';

/** `dropped`: not wanted any more. `lost`: the thread died over it, or a mistake of ours came out. */
export type Answer<R> = { readonly result: R; readonly bytes: number } | 'dropped' | 'lost';

export interface Work<K extends TaskKind = TaskKind> {
  readonly kind: K;
  readonly ask: AskOf<K>;
  /** Asked before the task begins, and while others wait for it to end. */
  wanted(): boolean;
  /**
   * `now`: short, and done between the stages of what is under way. `idle`: when nothing else is to be done; it makes room for anything
   * else, and is taken up again where it was left.
   */
  readonly when?: 'now' | 'idle';
}

/** Something that has been submitted. */
interface Entry {
  readonly work: Work;
  readonly answer: (answer: Answer<ResultOf<TaskKind>>) => void;
}

interface Running extends Entry {
  readonly id: number;
  stopping: boolean;
}

/** Time for a stage that nobody waits for any more while others wait, ms. */
const patience_ms = 300;

export class Solver {
  /** The newest batch first. */
  private readonly waiting: Entry[] = [];
  private readonly waitingIdle: Entry[] = [];
  private running: Running | null = null;
  /** Short tasks that are under way besides. */
  private readonly between = new Map<number, Entry>();
  private thread: Thread | null = null;
  private replacing: ReturnType<typeof setTimeout> | null = null;
  private lastId = 0;
  private readonly start: (listener: Listener) => Thread;
  /** Told whenever work begins or ends. */
  onBusy: (busy: boolean) => void = () => {};
  /** Told of mistakes of ours that came out over a task. */
  onFailure: (detail: string) => void = () => {};
  /** Asked when all work is done: keys of the problems whose fields are to be kept, null where that is as it was. */
  toKeep: () => readonly string[] | null = () => null;

  constructor(start: (listener: Listener) => Thread) {
    this.start = start;
  }

  /** Tasks that belong together, the most urgent first; they go before all that wait already. */
  submit<K extends TaskKind>(batch: readonly Work<K>[]): readonly Promise<Answer<ResultOf<K>>>[] {
    const entries: Entry[] = [];
    const answers = batch.map(
      (work) =>
        new Promise<Answer<ResultOf<K>>>((answer) => {
          // The thread answers a task with the result of its kind, which the compiler cannot follow through the queue.
          entries.push({ work, answer } as unknown as Entry);
        }),
    );
    const now = entries.filter(({ work }) => work.when === 'now');
    this.waitingIdle.unshift(...entries.filter(({ work }) => work.when === 'idle'));
    this.waiting.unshift(...entries.filter(({ work }) => work.when === undefined));
    for (const entry of now) this.between.set(this.post(entry), entry);
    this.advance();
    return answers;
  }

  /** One task. */
  ask<K extends TaskKind>(work: Work<K>): Promise<Answer<ResultOf<K>>> {
    const [answer] = this.submit([work]);
    return answer ?? Promise.resolve('dropped');
  }

  /** Looks again at what is wanted. */
  advance(): void {
    for (const list of [this.waiting, this.waitingIdle]) {
      for (let i = list.length - 1; i >= 0; i--) {
        if (list[i]?.work.wanted() === false) list.splice(i, 1)[0]?.answer('dropped');
      }
    }
    if (this.running === null) this.next();
    else this.makeRoom();
  }

  end(): void {
    this.forgetThread();
  }

  private next(): void {
    const next = this.waiting.shift() ?? this.waitingIdle.shift();
    if (next === undefined) {
      this.rest();
      return;
    }
    this.onBusy(true);
    this.running = { ...next, id: this.post(next), stopping: false };
    this.makeRoom();
  }

  private rest(): void {
    if (this.between.size > 0) return;
    this.onBusy(false);
    const keys = this.toKeep();
    if (keys !== null) this.thread?.post({ kind: 'keep', keys });
  }

  private post({ work: { kind, ask } }: Entry): number {
    const id = ++this.lastId;
    this.thread ??= this.hire();
    this.thread.post({ kind: 'task', id, task: { kind, ask } as Task });
    return id;
  }

  /** True where others wait for what is under way, and should not. */
  private inTheWay({ work }: Running): boolean {
    const others = this.waiting.length > 0;
    return work.wanted() ? work.when === 'idle' && others : others || this.waitingIdle.length > 0;
  }

  /** Stops what is under way if it is not wanted, or not now. */
  private makeRoom(): void {
    const { running } = this;
    if (running === null || (running.work.wanted() && !this.inTheWay(running))) return;
    if (!running.stopping) this.thread?.post({ kind: 'stop', id: running.id });
    running.stopping = true;
    this.replacing ??= setTimeout(() => {
      this.replacing = null;
      if (this.running !== running || !this.inTheWay(running)) return;
      this.forgetThread();
      this.finish('dropped');
    }, patience_ms);
  }

  private hire(): Thread {
    const listener = {
      replied: (reply: Reply) => this.replied(reply),
      lost: () => {
        this.thread = null;
        this.failed();
      },
    };
    return this.start(listener);
  }

  private replied(reply: Reply): void {
    if (reply.kind === 'failed') this.onFailure(reply.detail);
    const answer = answerOf(reply);
    if (this.running?.id === reply.id) this.finish(answer);
    else {
      this.between.get(reply.id)?.answer(answer);
      this.between.delete(reply.id);
      if (this.running === null) this.next();
    }
  }

  private failed(): void {
    for (const { answer } of this.between.values()) answer('lost');
    this.between.clear();
    this.finish('lost');
  }

  private finish(answer: Answer<ResultOf<TaskKind>>): void {
    const done = this.running;
    this.running = null;
    if (this.replacing !== null) clearTimeout(this.replacing);
    this.replacing = null;
    if (done !== null) {
      // What only made room is taken up again.
      if (answer === 'dropped' && done.work.when === 'idle' && done.work.wanted())
        this.waitingIdle.unshift(done);
      else done.answer(answer);
    }
    this.advance();
  }

  private forgetThread(): void {
    this.thread?.end();
    this.thread = null;
    for (const { answer } of this.between.values()) answer('dropped');
    this.between.clear();
  }
}

function answerOf(reply: Reply): Answer<ResultOf<TaskKind>> {
  if (reply.kind === 'done') return { result: reply.result, bytes: reply.bytes };
  return reply.kind === 'stopped' ? 'dropped' : 'lost';
}
