/** What is solved, in which order, and what is kept; with a thread that answers when it is told to. */
import { describe, expect, it, test } from 'vitest';
import { Solutions } from '../../../server/language/solutions.ts';
import { Solver } from '../../../server/language/solver.ts';
import { only, problems, SlowThreads, settled, twoSolvable } from './threads.ts';

function desk(most?: number) {
  const threads = new SlowThreads();
  const solver = new Solver(threads.start);
  return { threads, solver, solutions: new Solutions(solver, most) };
}

/** The setups of a text: `bars` and, like it, `swapped`. */
const bars = problems(twoSolvable);
const wider = problems(twoSolvable.replace('100 mm right', '110 mm right'));
const further = problems(twoSolvable.replace('100 mm right', '115 mm right'));
const [first, second] = [only(bars), only(bars.slice(1))];

describe('the solver', () => {
  it('takes the newest text first and stops what no text needs any more', async () => {
    const { threads, solutions } = desk();
    solutions.need('a', bars);
    solutions.need('a', wider);
    solutions.need('a', further);
    expect(threads.orders.slice(1)).toEqual([{ kind: 'stop', id: 1 }]);
    threads.leave();
    await settled();
    threads.answer();
    await settled();
    const setups = threads.tasks.map((task) => task.kind === 'solve' && task.ask.problem.setup);
    expect(setups).toEqual([first.setup, further[0]?.setup, further[1]?.setup]);
  });

  it('tells who waited for the old text that it is gone', async () => {
    const { solutions } = desk();
    solutions.need('a', bars);
    const waiting = solutions.outcome(second);
    solutions.need('a', wider);
    expect(await waiting).toBe(null);
  });

  it('replaces a thread that does not come to the end of a stage that nobody needs', async () => {
    const { threads, solutions } = desk();
    solutions.need('a', bars);
    solutions.need('a', wider);
    await new Promise((later) => setTimeout(later, 400));
    expect(threads.started).toBe(2);
    const last = threads.tasks.at(-1);
    expect(last?.kind === 'solve' && last.ask.problem.setup).toEqual(wider[0]?.setup);
  });

  const stopped = { kind: 'numerical', detail: 'the solver stopped over it' };
  it('makes a finding of a thread that dies, and starts another', async () => {
    const { threads, solutions } = desk();
    solutions.need('a', bars);
    threads.die();
    await settled();
    expect(threads.started).toBe(2);
    expect(await solutions.outcome(first)).toEqual({ solved: null, trouble: stopped });
    expect(threads.asked).toEqual(['solve bars', 'solve swapped']);
  });

  it('makes a finding of a mistake of ours, and tells it', async () => {
    const { threads, solver, solutions } = desk();
    const told: string[] = [];
    solver.onFailure = (detail) => told.push(detail);
    solutions.need('a', bars);
    threads.fail();
    await settled();
    expect(told).toEqual(['a mistake']);
    expect(threads.started).toBe(1);
    expect(await solutions.outcome(first)).toEqual({ solved: null, trouble: stopped });
  });

  it('solves what is needed again before it was told that it is not', async () => {
    const { threads, solutions } = desk();
    solutions.need('a', bars);
    const waiting = solutions.outcome(second);
    solutions.need('a', []);
    solutions.need('a', [second]);
    threads.leave();
    await settled();
    threads.answer();
    expect(await waiting).not.toBe(null);
  });

  it('does short things at once, between the stages of what is under way', async () => {
    const { threads, solver, solutions } = desk();
    solutions.need('a', bars);
    const ask = { problem: first, x: 10, y: 10 };
    const slip = solver.ask({ kind: 'slip', ask, wanted: () => true, when: 'now' });
    expect(threads.asked).toEqual(['solve bars', 'slip bars']);
    threads.answer();
    expect(await slip).toHaveProperty('result');
    expect(threads.asked).toEqual(['solve bars', 'slip bars']);
  });
});

describe('a large setup', () => {
  it('is shown rough, and refined when nothing else is to be done', async () => {
    const { threads, solutions } = desk();
    solutions.need('a', bars);
    threads.answer(true);
    await settled();
    expect(await solutions.outcome(first)).not.toBe(null);
    expect(solutions.isToCome(first)).toBe(true);
    threads.answer();
    await settled();
    expect(threads.asked).toEqual(['solve bars', 'solve swapped', 'refine bars']);
    threads.answer();
    await settled();
    expect(solutions.isToCome(first)).toBe(false);
  });

  it('makes room for an edit while it is refined, and is taken up again', async () => {
    const { threads, solutions } = desk();
    solutions.need('a', [first]);
    threads.answer(true);
    await settled();
    solutions.need('b', [second]);
    expect(threads.orders.at(-1)).toEqual({ kind: 'stop', id: 2 });
    threads.leave();
    expect(threads.asked).toEqual(['solve bars', 'refine bars', 'solve swapped']);
    threads.answer();
    await settled();
    expect(threads.asked.at(-1)).toBe('refine bars');
  });

  it('is no more refined when its text is closed', async () => {
    const { threads, solutions } = desk();
    solutions.need('a', [first]);
    threads.answer(true);
    await settled();
    const whole = solutions.whole(first);
    solutions.release('a');
    threads.leave();
    expect(await whole).toBe(null);
    expect(threads.asked).toEqual(['solve bars', 'refine bars']);
  });

  it('is drawn anew when it is refined', async () => {
    const { threads, solutions } = desk();
    const solved: string[] = [];
    solutions.onSolved = (key) => solved.push(key);
    solutions.need('a', [first]);
    threads.answer(true);
    await settled();
    const drawn = solutions.drawing(first);
    await settled();
    threads.leave();
    threads.answer(true);
    await drawn;
    threads.answer();
    await settled();
    expect(solved).toEqual([first.key, first.key]);
    void solutions.drawing(first);
    await settled();
    expect(threads.asked.filter((asked) => asked === 'draw bars').length).toBe(2);
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
    solutions.need('a', problems(`# Another heading\n\n${twoSolvable}`));
    await settled();
    expect(threads.tasks.length).toBe(2);
  });

  test('two texts share what is the same; closing one leaves it to the other, closing both frees it', async () => {
    const { threads, solutions } = desk();
    solutions.need('a', [first]);
    solutions.need('b', [first]);
    threads.answer();
    await settled();
    solutions.release('a');
    expect(await solutions.outcome(first)).not.toBe(null);
    expect(threads.tasks.length).toBe(1);
    solutions.release('b');
    expect(solutions.counts).toEqual({ kept: 0, bytes: 0, texts: 0 });
    expect(threads.orders.at(-1)).toEqual({ kind: 'keep', keys: [] });
    solutions.need('c', [first]);
    expect(threads.tasks.length).toBe(2);
  });

  test('a drawing is made once', async () => {
    const { threads, solutions } = desk();
    solutions.need('a', [first]);
    threads.answer();
    await settled();
    const drawn = solutions.drawing(first);
    await settled();
    threads.answer();
    expect((await drawn)?.svg).toBe('drawn');
    expect((await solutions.drawing(first))?.svg).toBe('drawn');
    expect(threads.asked).toEqual(['solve bars', 'draw bars']);
  });

  test('a drawing that no text needs any more is stopped', async () => {
    const { threads, solutions } = desk();
    solutions.need('a', [first]);
    threads.answer();
    await settled();
    const drawn = solutions.drawing(first);
    await settled();
    solutions.need('a', []);
    expect(threads.orders.at(-1)).toEqual({ kind: 'stop', id: 2 });
    threads.leave();
    expect(await drawn).toBe(null);
  });

  test('what was not asked for longest goes when room is short', async () => {
    const { threads, solutions } = desk(250);
    const all = [...bars, ...wider].filter((_, i) => i !== 3);
    solutions.need('a', all);
    for (const _ of all) {
      threads.answer();
      await settled();
    }
    solutions.need('a', [...all].reverse());
    expect(threads.asked.length).toBe(4);
    expect(threads.asked.at(-1)).toBe('solve bars');
  });
});
