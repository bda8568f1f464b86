/** For each block of the open texts the last setup that had a solution: what is drawn, pale, while a line is wrong. */

import type { Problem } from './problem.ts';
import type { OpenSheet } from './sheets.ts';

/** Keeps solutions from being forgotten. */
interface Keeper {
  need(text: string, problems: readonly Problem[]): void;
  release(text: string): void;
}

export class LastGood {
  private readonly texts = new Map<string, ReadonlyMap<string, Problem>>();
  private readonly solutions: Keeper;

  constructor(solutions: Keeper) {
    this.solutions = solutions;
  }

  /** `solved`: the numbers of the blocks of this sheet that have a solution. Blocks that are gone are forgotten. */
  note({ uri, draft, problems }: OpenSheet, solved: ReadonlySet<number>): void {
    const before = this.texts.get(uri);
    const now = new Map<string, Problem>();
    for (const { name, block } of draft.setups) {
      const problem = solved.has(block) ? problems[block] : before?.get(name);
      if (problem !== undefined && !now.has(name)) now.set(name, problem);
    }
    this.texts.set(uri, now);
    const keys = new Set([...(before?.values() ?? [])].map(({ key }) => key));
    if (keys.size === now.size && [...now.values()].every(({ key }) => keys.has(key))) return;
    this.solutions.need(keptFor(uri), [...now.values()]);
  }

  of(uri: string, name: string): Problem | null {
    return this.texts.get(uri)?.get(name) ?? null;
  }

  forget(uri: string): void {
    if (this.texts.delete(uri)) this.solutions.release(keptFor(uri));
  }
}

/** What a text needs besides what it says now. */
const keptFor = (uri: string): string => `last good of ${uri}`;
