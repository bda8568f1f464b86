/** The sentences of a run of prose. */
import { foreign } from '../prose/clean-text.ts';
import type { Run } from '../prose/run.ts';

export interface Sentence {
  readonly run: Run;
  /** Where its text begins in the run. */
  readonly from: number;
  readonly text: string;
}

const stop = /[.!?…]+["”’')\]]*(?=\s|$|\ufffc)/gu;
const abbreviation = /(?:^|[\s(])(?:fig|figs|no|nos|eq|approx|ca|cf|vs|p|pp|q|e\.g|i\.e)$/iu;

/** A full stop before a small letter, and that of an abbreviation before a number, end nothing. */
export function sentencesOf(run: Run): readonly Sentence[] {
  const { text } = run;
  const sentences: Sentence[] = [];
  let from = 0;
  const take = (to: number): void => {
    const part = text.slice(from, to);
    const lead = part.length - part.trimStart().length;
    if (lead < part.length) sentences.push({ run, from: from + lead, text: part.trimEnd().slice(lead) });
    from = to;
  };
  for (const { 0: signs, index } of text.matchAll(stop)) {
    const end = index + signs.length;
    const next = text.slice(end).trimStart().charAt(0);
    if (/^\.["”’')\]]*$/u.test(signs)) {
      if (/\p{Ll}/u.test(next)) continue;
      if (/\d/u.test(next) && abbreviation.test(text.slice(Math.max(from, index - 8), index))) continue;
    }
    // A point of the mark scheme belongs to what it marks.
    take(
      next === foreign && !text.slice(end, text.indexOf(foreign, end)).includes('\n')
        ? text.indexOf(foreign, end) + 1
        : end,
    );
  }
  take(text.length);
  return sentences;
}
