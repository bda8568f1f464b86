/** What is solved, in which order, and what is kept; with a thread that answers when it is told to. */
import { describe, expect, it, test } from 'vitest';
import { type Problem, problemFor, Solutions } from '../../../server/language/solutions.ts';
import { Solver } from '../../../server/language/solver.ts';
import type { Result, Task } from '../../../server/language/task.ts';
import type { Listener } from '../../../server/language/thread.ts';
import { askOf, draftSheet } from '../../../shared/index.ts';
import { twoSetups } from '../../editing/cursor.ts';

/** Threads that remember their tasks. */
class Threads {
  readonly tasks: Task[] = [];
  started = 0;
  private listener: Listener | null = null;

  readonly start = (listener: Listener) => {
    this.listener = listener;
    this.started++;
    return {
      post: (task: Task): void => void this.tasks.push(task),
      end: (): void => {
        this.listener = null;
      },
    };
  };

  answer(bytes = 100): void {
    const last = this.tasks.at(-1);
    const result: Result =
      last?.kind === 'draw'
        ? { kind: 'draw', drawing: { svg: 'drawn', title: '', description: '' }, bytes }
        : { kind: 'solve', outcome: { solved: null, trouble: { kind: 'no-paper' } }, bytes };
    this.listener?.answered(result);
  }

  die(): void {
    this.listener?.lost();
  }

  /** Names of the setups that were to be solved. */
  get solved(): readonly string[] {
    return this.tasks.map(({ kind, setup }) => `${kind} ${setup.name}`);
  }
}

function desk(most?: number) {
  const threads = new Threads();
  return { threads, solutions: new Solutions(new Solver(threads.start), most) };
}

/** The setups of a text: `bars` and, like it, `swapped`. */
function problems(text: string): readonly Problem[] {
  const draft = draftSheet({ name: 'sheet.md', text });
  return draft.setups.map((setup) => problemFor(setup, askOf(draft, setup)));
}
const bars = problems(twoSetups);
const wider = problems(twoSetups.replace('100 mm right', '110 mm right'));
const further = problems(twoSetups.replace('100 mm right', '115 mm right'));
const settled = (): Promise<void> => new Promise((later) => setImmediate(later));

describe('the solver', () => {
  it('takes the newest text first and leaves out what no text needs any more', async () => {
    const { threads, solutions } = desk();
    solutions.need('a', bars);
    solutions.need('a', wider);
    solutions.need('a', further);
    threads.answer();
    await settled();
    threads.answer();
    await settled();
    expect(threads.tasks.map(({ setup }) => setup)).toEqual([
      bars[0]?.setup,
      further[0]?.setup,
      further[1]?.setup,
    ]);
  });

  it('tells who waited for the old text that it is gone', async () => {
    const { solutions } = desk();
    solutions.need('a', bars);
    const [, second] = bars;
    const waiting = second === undefined ? null : solutions.outcome(second);
    solutions.need('a', wider);
    expect(await waiting).toBe(null);
  });

  it('replaces a thread that is long busy with what nobody needs', async () => {
    const { threads, solutions } = desk();
    solutions.need('a', bars);
    solutions.need('a', wider);
    await new Promise((later) => setTimeout(later, 400));
    expect(threads.started).toBe(2);
    expect(threads.tasks.at(-1)?.setup).toEqual(wider[0]?.setup);
  });

  it('makes a finding of a thread that dies, and starts another', async () => {
    const { threads, solutions } = desk();
    const [first] = bars;
    if (first === undefined) throw new Error('no setup');
    solutions.need('a', bars);
    threads.die();
    await settled();
    expect(threads.started).toBe(2);
    expect(await solutions.outcome(first)).toEqual({
      solved: null,
      trouble: { kind: 'numerical', detail: 'the solver stopped over it' },
    });
    expect(threads.solved).toEqual(['solve bars', 'solve swapped']);
  });

  it('solves what is needed again before it was told that it is not', async () => {
    const { threads, solutions } = desk();
    const [, second] = bars;
    if (second === undefined) throw new Error('no setup');
    solutions.need('a', bars);
    const waiting = solutions.outcome(second);
    solutions.need('a', []);
    solutions.need('a', [second]);
    threads.answer();
    await settled();
    threads.answer();
    expect(await waiting).not.toBe(null);
  });
});

describe('solutions', () => {
  test('an edit of the prose solves nothing', async () => {
    const { threads, solutions } = desk();
    solutions.need('a', bars);
    threads.answer();
    await settled();
    threads.answer();
    await settled();
    solutions.need('a', problems(`# Another heading\n\n${twoSetups}`));
    await settled();
    expect(threads.tasks.length).toBe(2);
  });

  test('two texts share what is the same; closing one leaves it to the other, closing both frees it', async () => {
    const { threads, solutions } = desk();
    const [first] = bars;
    if (first === undefined) throw new Error('no setup');
    solutions.need('a', [first]);
    solutions.need('b', [first]);
    threads.answer();
    await settled();
    solutions.release('a');
    expect(await solutions.outcome(first)).not.toBe(null);
    expect(threads.tasks.length).toBe(1);
    solutions.release('b');
    solutions.need('c', [first]);
    expect(threads.tasks.length).toBe(2);
  });

  test('a drawing is made once', async () => {
    const { threads, solutions } = desk();
    const [first] = bars;
    if (first === undefined) throw new Error('no setup');
    solutions.need('a', [first]);
    threads.answer();
    await settled();
    const drawn = solutions.drawing(first);
    await settled();
    threads.answer();
    expect((await drawn)?.svg).toBe('drawn');
    expect((await solutions.drawing(first))?.svg).toBe('drawn');
    expect(threads.solved).toEqual(['solve bars', 'draw bars']);
  });

  test('what was not asked for longest goes when room is short', async () => {
    const { threads, solutions } = desk(250);
    const all = [...bars, ...wider].filter((_, i) => i !== 3);
    solutions.need('a', all);
    for (const _ of all) {
      threads.answer(100);
      await settled();
    }
    solutions.need('a', [...all].reverse());
    expect(threads.tasks.length).toBe(4);
    expect(threads.tasks.at(-1)?.setup).toEqual(all[0]?.setup);
  });
});
