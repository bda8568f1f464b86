/** Threads that answer when they are told to, and one that works in the test's own. */
import type { Desk } from '../../../server/language/desk.ts';
import type { Listener, Order, Reply, Thread } from '../../../server/language/orders.ts';
import { type Problem, problemFor } from '../../../server/language/problem.ts';
import { solvingThread } from '../../../server/language/solving-thread.ts';
import type { ResultOf, Task, TaskKind } from '../../../server/language/tasks.ts';
import { askOf, draftSheet } from '../../../shared/index.ts';

/** Two setups that can be solved, the second like the first. */
export const twoSolvable = `
\`\`\`electrodes bars
paper   240 mm × 160 mm, 5 kΩ per square
supply  cell 1.5 V, internal 0.5 Ω
meter   10 MΩ, resolution 0.01 V, black lead on N
bar     N  10 mm × 120 mm at (60, 80) mm                negative
bar     P  10 mm × 120 mm, 100 mm right of N            positive
probe   M  at (115, 80) mm
\`\`\`

\`\`\`electrodes swapped like bars
reverse supply
\`\`\`
`;

/** The setups of a text. */
export function problems(text: string): readonly Problem[] {
  const draft = draftSheet({ name: 'sheet.md', text });
  return draft.setups.map((setup) => problemFor(setup, askOf(draft, setup)));
}

export function only<T>(list: readonly T[]): T {
  const [first] = list;
  if (first === undefined) throw new Error('nothing there');
  return first;
}

export const settled = (): Promise<void> => new Promise((later) => setImmediate(later));

/** Remember their orders. */
export class SlowThreads {
  readonly orders: Order[] = [];
  started = 0;
  private listener: Listener | null = null;

  readonly start = (listener: Listener): Thread => {
    this.listener = listener;
    this.started++;
    return {
      post: (order) => void this.orders.push(order),
      end: () => {
        this.listener = null;
      },
    };
  };

  get tasks(): readonly Task[] {
    return this.orders.flatMap((order) => (order.kind === 'task' ? [order.task] : []));
  }

  /** Kinds of the tasks and names of their setups. */
  get asked(): readonly string[] {
    return this.tasks.map((task) =>
      'problem' in task.ask ? `${task.kind} ${task.ask.problem.setup.name}` : task.kind,
    );
  }

  /** The last task is done. */
  answer(rough = false, bytes = 100): void {
    const { id, task } = this.last();
    const result: ResultOf<TaskKind> =
      task.kind === 'draw'
        ? { drawing: { svg: 'drawn', title: '', description: '' }, rough }
        : { outcome: { solved: null, trouble: { kind: 'no-paper' } }, rough };
    this.reply({ kind: 'done', id, result, bytes });
  }

  /** The last task is left where it stands. */
  leave(): void {
    this.reply({ kind: 'stopped', id: this.last().id });
  }

  fail(): void {
    this.reply({ kind: 'failed', id: this.last().id, detail: 'a mistake' });
  }

  die(): void {
    this.listener?.lost();
  }

  private reply(reply: Reply): void {
    this.listener?.replied(reply);
  }

  private last(): Extract<Order, { kind: 'task' }> {
    const tasks = this.orders.filter((order) => order.kind === 'task');
    const last = tasks.at(-1);
    if (last === undefined) throw new Error('no task yet');
    return last;
  }
}

/** Starts a thread that works at a desk in the test's own thread, one stage a turn. */
export const startOwn =
  (desk: Desk) =>
  (listener: Listener): Thread => {
    let over = false;
    const take = solvingThread(
      {
        // What really goes between threads is copied.
        post: (reply) => void (over || listener.replied(structuredClone(reply))),
        later: (next) => void setImmediate(() => over || next()),
      },
      desk,
    );
    return {
      post: (order) => void setImmediate(() => over || take(structuredClone(order))),
      end: () => {
        over = true;
      },
    };
  };
