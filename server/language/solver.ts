/**
 * Hands tasks to the solving thread: the newest text first, and nothing that no text asks for any more. A thread that is busy with such
 * a task is given some time, since its result may be asked for again, and is then replaced.
 */
import type { Result, Task } from './task.ts';
import type { Listener, Thread } from './thread.ts';

/** `dropped`: not wanted any more. `lost`: the thread died over it. */
export type Answer = Result | 'dropped' | 'lost';

export interface Work {
  readonly task: Task;
  /** Asked before the task begins, and when others wait for it to end. */
  wanted(): boolean;
}

interface Waiting {
  readonly work: Work;
  readonly answer: (answer: Answer) => void;
}

/** Time for a task that nobody wants any more while others wait, ms. */
const patience_ms = 300;

export class Solver {
  /** The newest batch first. */
  private readonly waiting: Waiting[] = [];
  private running: Waiting | null = null;
  private thread: Thread | null = null;
  private replacing: NodeJS.Timeout | null = null;
  private readonly start: (listener: Listener) => Thread;

  constructor(start: (listener: Listener) => Thread) {
    this.start = start;
  }

  /** Tasks that belong together, the most urgent first; they go before all that wait already. */
  submit(batch: readonly Work[]): readonly Promise<Answer>[] {
    const entries: Waiting[] = [];
    const answers = batch.map((work) => new Promise<Answer>((answer) => entries.push({ work, answer })));
    this.waiting.unshift(...entries);
    this.advance();
    return answers;
  }

  /** Looks again at what is wanted. */
  advance(): void {
    for (let i = this.waiting.length - 1; i >= 0; i--) {
      if (this.waiting[i]?.work.wanted() === false) this.waiting.splice(i, 1)[0]?.answer('dropped');
    }
    if (this.running === null) this.next();
    else if (this.blocked()) this.replaceLater();
  }

  end(): void {
    this.thread?.end();
    this.thread = null;
  }

  private next(): void {
    const next = this.waiting.shift();
    if (next === undefined) return;
    this.running = next;
    this.thread ??= this.hire();
    this.thread.post(next.work.task);
    if (this.blocked()) this.replaceLater();
  }

  private blocked(): boolean {
    return this.running !== null && !this.running.work.wanted() && this.waiting.length > 0;
  }

  private hire(): Thread {
    return this.start({
      answered: (result) => this.finish(result),
      lost: () => {
        this.thread = null;
        this.finish('lost');
      },
    });
  }

  private finish(answer: Answer): void {
    const done = this.running;
    this.running = null;
    if (this.replacing !== null) clearTimeout(this.replacing);
    this.replacing = null;
    done?.answer(answer);
    this.advance();
  }

  private replaceLater(): void {
    this.replacing ??= setTimeout(() => {
      this.replacing = null;
      if (!this.blocked()) return;
      this.thread?.end();
      this.thread = null;
      this.finish('dropped');
    }, patience_ms);
  }
}
