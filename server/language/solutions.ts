/**
 * Outcomes and drawings of setups by their meaning: an edit of the prose, or one that is taken back, solves nothing. Bounded in bytes;
 * what has not been asked for longest goes first, and what belonged to a closed text alone goes at once.
 */
import { createHash } from 'node:crypto';
import { type Ask, editing, type Outcome, type Setup } from '../../shared/index.ts';
import type { Solver, Work } from './solver.ts';

type Drawing = editing.EditorDrawing | null;

interface Kept {
  readonly outcome: Outcome;
  readonly drawing: Drawing | undefined;
  readonly bytes: number;
}

export interface Problem {
  readonly key: string;
  readonly setup: Setup;
  readonly ask: Ask;
}

export function problemFor(setup: Setup, ask: Ask): Problem {
  const meaning = `${editing.meaningKey(setup)} ${JSON.stringify(ask)}`;
  return { key: createHash('sha256').update(meaning).digest('base64'), setup, ask };
}

/** Room for about a thousand setups. */
const usualBytes = 64 * 1024 * 1024;

export class Solutions {
  private readonly kept = new Map<string, Kept>();
  private bytes = 0;
  private readonly asked = new Map<string, Promise<Outcome | null>>();
  /** Keys that each text needs now. */
  private readonly needs = new Map<string, ReadonlySet<string>>();
  private readonly solver: Solver;
  private readonly most: number;

  constructor(solver: Solver, most = usualBytes) {
    this.solver = solver;
    this.most = most;
  }

  /** What a text needs from now on, in place of what it needed; the most urgent first. Solving begins. */
  need(text: string, problems: readonly Problem[]): void {
    this.needs.set(text, new Set(problems.map(({ key }) => key)));
    const fresh = problems.filter(
      ({ key }, i) =>
        !this.kept.has(key) && !this.asked.has(key) && problems.findIndex((other) => other.key === key) === i,
    );
    this.solve(fresh);
  }

  /** A text is closed. */
  release(text: string): void {
    const keys = this.needs.get(text);
    this.needs.delete(text);
    for (const key of keys ?? []) if (!this.isNeeded(key)) this.forget(key);
    this.solver.advance();
  }

  /** Null where the text has changed meanwhile and nobody needs it any more. */
  async outcome(problem: Problem): Promise<Outcome | null> {
    const { key } = problem;
    for (;;) {
      const known = this.known(key);
      if (known !== null) return known.outcome;
      if (!this.asked.has(key)) this.solve([problem]);
      const outcome = (await this.asked.get(key)) ?? null;
      // Dropped, and needed again before that was known.
      if (outcome !== null || !this.isNeeded(key)) return outcome;
    }
  }

  async drawing(problem: Problem): Promise<Drawing> {
    const outcome = await this.outcome(problem);
    const known = this.known(problem.key);
    if (known?.drawing !== undefined) return known.drawing;
    if (outcome === null) return null;
    const task = { kind: 'draw' as const, setup: problem.setup, solved: outcome.solved };
    const answer = await this.solver.submit([{ task, wanted: () => true }])[0];
    if (answer === undefined || typeof answer === 'string' || answer.kind !== 'draw') return null;
    const { drawing } = answer;
    if (this.isNeeded(problem.key)) {
      this.keep(problem.key, { outcome, drawing, bytes: (known?.bytes ?? 0) + answer.bytes });
    }
    return drawing;
  }

  private solve(problems: readonly Problem[]): void {
    const works = problems.map(
      ({ key, setup, ask }): Work => ({
        task: { kind: 'solve', setup, ask },
        wanted: () => this.isNeeded(key),
      }),
    );
    const answers = this.solver.submit(works);
    for (const [i, { key }] of problems.entries()) {
      const answer = answers[i];
      if (answer !== undefined) this.asked.set(key, this.taken(key, answer));
    }
  }

  private async taken(key: string, coming: ReturnType<Solver['submit']>[number]): Promise<Outcome | null> {
    const answer = await coming;
    this.asked.delete(key);
    if (answer === 'dropped') return null;
    if (answer !== 'lost' && answer.kind !== 'solve') throw new Error('a drawing for a solution');
    const { outcome, bytes } = answer === 'lost' ? lost : answer;
    if (this.isNeeded(key)) this.keep(key, { outcome, drawing: undefined, bytes });
    return outcome;
  }

  private isNeeded(key: string): boolean {
    return [...this.needs.values()].some((keys) => keys.has(key));
  }

  private known(key: string): Kept | null {
    const found = this.kept.get(key);
    if (found === undefined) return null;
    // The order of the map is that of use.
    this.kept.delete(key);
    this.kept.set(key, found);
    return found;
  }

  private keep(key: string, entry: Kept): void {
    this.forget(key);
    this.kept.set(key, entry);
    this.bytes += entry.bytes;
    for (const [oldest] of this.kept) {
      if (this.bytes <= this.most || oldest === key) break;
      this.forget(oldest);
    }
  }

  private forget(key: string): void {
    this.bytes -= this.kept.get(key)?.bytes ?? 0;
    this.kept.delete(key);
  }
}

/** A finding on its block, as other numerical trouble is. What has killed one thread is not given to the next. */
const lost: { readonly outcome: Outcome; readonly bytes: number } = {
  outcome: { solved: null, trouble: { kind: 'numerical', detail: 'the solver stopped over it' } },
  bytes: 0,
};
