/**
 * Outcomes and drawings of setups by their meaning: an edit of the prose, or one that is taken back, solves nothing. Large problems have a
 * rough outcome first, which is shown until the one that stands follows. Bounded in bytes; what has not been asked for longest goes first,
 * and what belonged to a closed text alone goes at once.
 */
import type { editing, Outcome } from '../../shared/index.ts';
import type { Solved } from './desk.ts';
import type { Problem } from './problem.ts';
import { Shelf } from './shelf.ts';
import type { Answer, Solver, Work } from './solver.ts';

export { type Problem, problemFor } from './problem.ts';

type Drawing = editing.EditorDrawing | null;

interface Kept extends Solved {
  readonly drawing: Drawing | undefined;
  readonly bytes: number;
}

/** Room for some hundred setups. */
const usualBytes = 12 * 2 ** 20;

export class Solutions {
  private readonly kept: Shelf<Kept>;
  private readonly asked = new Map<string, Promise<Solved | null>>();
  private readonly refining = new Map<string, Promise<Solved | null>>();
  /** Keys that each text needs now. */
  private readonly needs = new Map<string, ReadonlySet<string>>();
  private needsChanged = false;
  private readonly solver: Solver;
  /** Told of every problem that has got an outcome, or a better one. */
  onSolved: (key: string) => void = () => {};

  constructor(solver: Solver, most = usualBytes) {
    this.solver = solver;
    this.kept = new Shelf(most);
    solver.toKeep = () => (this.needsChanged ? this.neededKeys() : null);
  }

  /** For measurements and tests. */
  get counts(): { readonly kept: number; readonly bytes: number; readonly texts: number } {
    return { kept: this.kept.size, bytes: this.kept.bytes, texts: this.needs.size };
  }

  /** What a text needs from now on, in place of what it needed; the most urgent first. Solving begins. */
  need(text: string, problems: readonly Problem[]): void {
    this.needs.set(text, new Set(problems.map(({ key }) => key)));
    this.needsChanged = true;
    const once = problems.filter(({ key }, i) => problems.findIndex((other) => other.key === key) === i);
    this.solve(
      once.filter(({ key, setup }) => setup.solvable && !this.kept.has(key) && !this.asked.has(key)),
    );
    for (const problem of once) if (this.kept.get(problem.key)?.rough === true) this.refine(problem);
  }

  /** A text is closed. */
  release(text: string): void {
    const keys = this.needs.get(text);
    this.needs.delete(text);
    this.needsChanged = true;
    for (const key of keys ?? []) if (!this.isNeeded(key)) this.kept.drop(key);
    this.solver.advance();
  }

  /** The best so far. Null where the text has changed meanwhile and nobody needs it any more. */
  async outcome(problem: Problem): Promise<Outcome | null> {
    return (await this.solved(problem))?.outcome ?? null;
  }

  /** The outcome that stands. Null where the text has changed meanwhile and nobody needs it any more. */
  async whole(problem: Problem): Promise<Outcome | null> {
    const { key } = problem;
    for (;;) {
      const first = await this.solved(problem);
      if (first === null || !first.rough) return first?.outcome ?? null;
      if (!this.isNeeded(key)) return null;
      this.refine(problem);
      const whole = (await this.refining.get(key)) ?? null;
      if (whole !== null) return whole.outcome;
    }
  }

  /** True where an outcome, or a better one, is still to come. */
  isToCome({ key, setup }: Problem): boolean {
    return setup.solvable && this.kept.get(key)?.rough !== false;
  }

  /** Null as well where the text has changed meanwhile and nobody needs the problem any more. */
  async drawing(problem: Problem): Promise<Drawing> {
    const solved = await this.solved(problem);
    if (solved === null) return null;
    const known = this.kept.get(problem.key);
    if (known?.drawing !== undefined) return known.drawing;
    const wanted = (): boolean => this.isNeeded(problem.key);
    const answer = await this.solver.ask({ kind: 'draw', ask: { problem }, wanted });
    if (typeof answer === 'string') return null;
    const { drawing, rough } = answer.result;
    const now = this.kept.get(problem.key);
    if (now !== null && now.rough === rough)
      this.keep(problem.key, { ...now, drawing, bytes: now.bytes + answer.bytes });
    return drawing;
  }

  private async solved(problem: Problem): Promise<Solved | null> {
    const { key, setup } = problem;
    for (;;) {
      const known = this.kept.get(key);
      if (known !== null) return known;
      if (!setup.solvable) return this.take(key, unsolvable);
      if (!this.asked.has(key)) this.solve([problem]);
      const solved = (await this.asked.get(key)) ?? null;
      // Dropped, and needed again before that was known.
      if (solved !== null || !this.isNeeded(key)) return solved;
    }
  }

  private solve(problems: readonly Problem[]): void {
    if (problems.length === 0) {
      this.solver.advance();
      return;
    }
    const works = problems.map(
      (problem): Work<'solve'> => ({
        kind: 'solve',
        ask: { problem },
        wanted: () => this.isNeeded(problem.key),
      }),
    );
    const answers = this.solver.submit(works);
    for (const [i, problem] of problems.entries()) {
      const answer = answers[i];
      if (answer !== undefined) this.asked.set(problem.key, this.taken(problem, answer));
    }
  }

  private async taken(problem: Problem, coming: Promise<Answer<Solved>>): Promise<Solved | null> {
    const answer = await coming;
    this.asked.delete(problem.key);
    const solved = this.take(problem.key, answer);
    if (solved?.rough === true && this.isNeeded(problem.key)) this.refine(problem);
    return solved;
  }

  private refine(problem: Problem): void {
    const { key } = problem;
    if (this.refining.has(key)) return;
    const wanted = (): boolean => this.isNeeded(key);
    const answer = this.solver.ask({ kind: 'refine', ask: { problem }, wanted, when: 'idle' });
    const taken = async (): Promise<Solved | null> => {
      const solved = await answer;
      this.refining.delete(key);
      return this.take(key, solved);
    };
    this.refining.set(key, taken());
  }

  private take(key: string, answer: Answer<Solved>): Solved | null {
    if (answer === 'dropped') return null;
    const { result, bytes } = answer === 'lost' ? lost : answer;
    if (this.isNeeded(key)) {
      this.keep(key, { ...result, drawing: undefined, bytes });
      this.onSolved(key);
    }
    return result;
  }

  private isNeeded(key: string): boolean {
    return [...this.needs.values()].some((keys) => keys.has(key));
  }

  private neededKeys(): readonly string[] {
    this.needsChanged = false;
    return [...new Set([...this.needs.values()].flatMap((keys) => [...keys]))];
  }

  private keep(key: string, entry: Kept): void {
    this.kept.put(key, entry, entry.bytes);
  }
}

const answerOf = (outcome: Outcome): Exclude<Answer<Solved>, string> => ({
  result: { outcome, rough: false },
  bytes: 0,
});

/** Needs no thread. */
const unsolvable = answerOf({ solved: null, trouble: null });

/** A finding on its block, as other numerical trouble is. What has killed one thread is not given to the next. */
const lost = answerOf({
  solved: null,
  trouble: { kind: 'numerical', detail: 'the solver stopped over it' },
});
