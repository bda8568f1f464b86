/** Sentences of a sheet, and what each of them does: state, ask, suppose, quote. Looked at only as far as a rule asks. */
import type { Setup } from '../../setup/setup.ts';
import type { Sheet } from '../../sheet/sheet.ts';
import type { Run } from '../prose/run.ts';
import type { Subject } from '../rule.ts';
import { knownSkeleton } from './known-skeletons.ts';
import { withPlaces } from './places.ts';
import { setupsMeant } from './scope.ts';
import { type Section, sectionsOf } from './sections.ts';
import { type Sentence, sentencesOf } from './sentences.ts';
import type { Skeleton } from './skeleton.ts';
import { changesSetup, isClaim, isDenied, isOwn, isQuoted } from './stance.ts';
import { namesOf } from './subject.ts';

type Context = Pick<Subject, 'sheet' | 'setups'>;

export class Said implements Sentence {
  readonly run: Run;
  readonly from: number;
  readonly text: string;
  private readonly section: Section;
  private readonly context: Context;
  private bare: Skeleton | null = null;
  private placed: Skeleton | null = null;
  private claims: boolean | null = null;

  constructor({ run, from, text }: Sentence, section: Section, context: Context) {
    this.run = run;
    this.from = from;
    this.text = text;
    this.section = section;
    this.context = context;
  }

  /** That the sentence can be about; one, or all that it may mean. */
  get setups(): readonly Setup[] {
    return setupsMeant(this.context, this.section, this.run.at(this.from), this.text);
  }

  get skeleton(): Skeleton {
    this.bare ??= knownSkeleton(this.text, namesOf(this.context));
    return this.bare;
  }

  /** The skeleton with phrases for places. */
  get places(): Skeleton {
    this.placed ??= withPlaces(this.skeleton);
    return this.placed;
  }

  /** Whether what ends at an index is said of the setup as it stands. */
  asserts(index: number): boolean {
    this.claims ??= isClaim(this.text) && !this.isAfterChange();
    return this.claims && this.holds(index) && !changesSetup(this.text.slice(0, index));
  }

  /** Whether the sheet answers for what ends at an index, be it a question or an example. */
  owns(index: number): boolean {
    return isOwn(this.text) && this.holds(index);
  }

  private holds(index: number): boolean {
    return !isDenied(this.text.slice(0, index)) && !isQuoted(this.run.text, this.from + index);
  }

  /** The apparatus has been changed since the last block or heading: what is said now may hold for another state. */
  private isAfterChange(): boolean {
    const { run, from, section, context } = this;
    const at = run.at(from);
    const since = Math.max(
      -1,
      ...context.sheet.blocks.map(({ block }) => block.excerpt.span.from).filter((start) => start < at),
    );
    return section.runs.some((earlier) => {
      if (earlier === run) return changesSetup(run.text.slice(0, from));
      const start = earlier.at(0);
      return start < at && start > since && isChange(earlier);
    });
  }
}

const changes = new WeakMap<Run, boolean>();

function isChange(run: Run): boolean {
  const known = changes.get(run) ?? changesSetup(run.text);
  changes.set(run, known);
  return known;
}

const gap = '[ \\u00a0\\n)-]{0,3}';

/** Numbers with units of a kind, as cheap signs that a sentence is worth a look. */
export const written = {
  potential: new RegExp(`\\d${gap}(?:[mkµμu]?[Vv](?![\\p{L}/])|\\p{L}{0,5}volt)`, 'u'),
  strength: new RegExp(
    `\\d${gap}(?:[mkµμu]?V[ \\u00a0·]?/?[ \\u00a0]?[cm]?m|N[ \\u00a0·]?/?[ \\u00a0]?C|\\p{L}{0,5}(?:volt|newton)s? per)`,
    'u',
  ),
  currentOrResistance: new RegExp(`\\d${gap}(?:[nmkMµμu]?[AΩ\\u2126](?!\\p{L})|\\p{L}{0,5}(?:amp|ohm))`, 'u'),
  sheet: /\d[^.;]{0,12}(?:square|sq|□)/u,
} as const;

/** The sentences of running text, headings and captions in which a pattern is found. */
export function saidIn(context: Context, pattern: RegExp): readonly Said[] {
  if (context.setups.length === 0) return [];
  return runsOf(context).flatMap(({ run, sentences }) =>
    pattern.test(run.text) ? sentences().filter(({ text }) => pattern.test(text)) : [],
  );
}

interface SaidRun {
  readonly run: Run;
  readonly sentences: () => readonly Said[];
}

const known = new WeakMap<Sheet, { readonly setups: readonly Setup[]; readonly runs: readonly SaidRun[] }>();

function runsOf(context: Context): readonly SaidRun[] {
  const { sheet, setups } = context;
  const last = known.get(sheet);
  if (last?.setups === setups) return last.runs;
  const runs = sectionsOf(sheet).flatMap((section) =>
    section.runs.filter(({ kind }) => kind !== 'cell').map((run) => saidRun(run, section, context)),
  );
  known.set(sheet, { setups, runs });
  return runs;
}

function saidRun(run: Run, section: Section, context: Context): SaidRun {
  let split: readonly Said[] | null = null;
  return {
    run,
    sentences: () => {
      split ??= sentencesOf(run).map((sentence) => new Said(sentence, section, context));
      return split;
    },
  };
}
