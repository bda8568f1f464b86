/**
 * What the solving thread keeps between tasks: fields by the content of their field problem, so that an edit of the circuit or of the
 * places to read needs no new one, and outcomes by problem. Both are bounded in bytes, and go when no text needs them.
 */
import {
  type FieldOutcome,
  type FieldRest,
  fieldKey,
  fieldReader,
  fieldStages,
  type Outcome,
  type PointReader,
  readingStages,
  type Stages,
  withFieldLines,
} from '../../shared/index.ts';
import { plainBytes } from './plain-bytes.ts';
import type { Problem } from './problem.ts';
import { Shelf } from './shelf.ts';

export interface Solved {
  readonly outcome: Outcome;
  /** True for a first outcome of a large problem, which a better one is to follow. */
  readonly rough: boolean;
}

/** A field problem that is solved or half solved. */
interface Kept {
  readonly search: Stages<FieldOutcome, FieldRest>;
  /** The best field so far. */
  rough: FieldOutcome | null;
  /** Unknowns of what comes next. */
  unknowns: number;
  whole: FieldOutcome | null;
}

interface Reading {
  readonly of: FieldOutcome;
  readonly reader: PointReader | null;
}

interface Lined {
  readonly of: Outcome;
  readonly outcome: Outcome;
}

const mostFieldBytes = 128 * 2 ** 20;
const mostOutcomeBytes = 32 * 2 ** 20;
/** Readers that are kept: each holds the potential of its setup. */
const mostReaderBytes = 16 * 2 ** 20;

/** A solve whose next stage has more unknowns than this is shown as it stands first. What is below takes about a tenth of a second. */
const usualLarge = 12_000;

export class Desk {
  private readonly fields: Shelf<Kept>;
  private readonly outcomes = new Shelf<Solved>(mostOutcomeBytes);
  private readonly lined = new Shelf<Lined>(mostOutcomeBytes);
  private readonly readings = new Shelf<Reading>(mostReaderBytes);
  /** Key of the field of each problem. */
  private readonly fieldOf = new Map<string, string>();
  private readonly large: number;
  /** Field problems that were begun. */
  begun = 0;

  constructor(large = usualLarge, most = mostFieldBytes) {
    this.large = large;
    this.fields = new Shelf(most);
  }

  get counts(): { readonly fields: number; readonly outcomes: number; readonly bytes: number } {
    return {
      fields: this.fields.size,
      outcomes: this.outcomes.size,
      bytes: this.fields.bytes + this.outcomes.bytes + this.lined.bytes + this.readings.bytes,
    };
  }

  /** The outcome as good as it gets. */
  whole(problem: Problem): Stages<Outcome> {
    return this.outcome(problem, false);
  }

  /** An outcome soon: that of a large problem is rough at first. */
  *soon(problem: Problem): Stages<Solved> {
    const outcome = yield* this.outcome(problem, true);
    return { outcome, rough: this.outcomes.get(problem.key)?.rough ?? false };
  }

  /** As good as it gets, with field lines, to be drawn. */
  *wholeWithLines(problem: Problem): Stages<Outcome> {
    return yield* this.withLines(problem, yield* this.whole(problem), false);
  }

  /** Soon, with field lines, to be drawn. */
  *soonWithLines(problem: Problem): Stages<Solved> {
    const { outcome, rough } = yield* this.soon(problem);
    return { outcome: yield* this.withLines(problem, outcome, true), rough };
  }

  /** Reads the field at any place; of a large problem the best field so far. Null where there is no solution. */
  *reader(problem: Problem): Stages<PointReader | null> {
    if (!problem.setup.solvable) return null;
    const { field } = yield* this.field(problem, true);
    const known = this.readings.get(problem.key);
    if (known !== null && known.of === field) return known.reader;
    const reader = field.ok ? fieldReader(problem.setup, field.field) : null;
    this.readings.put(problem.key, { of: field, reader }, field.ok ? field.field.bytes / 4 : 0);
    return reader;
  }

  /** Lets go of all that these problems do not need. */
  keep(keys: readonly string[]): void {
    const wanted = new Set(keys);
    for (const key of [...this.fieldOf.keys()]) if (!wanted.has(key)) this.fieldOf.delete(key);
    const fields = new Set(this.fieldOf.values());
    this.outcomes.keepOnly((key) => wanted.has(key));
    this.lined.keepOnly((key) => wanted.has(key));
    this.readings.keepOnly((key) => wanted.has(key));
    this.fields.keepOnly((key) => fields.has(key));
  }

  private *outcome(problem: Problem, soon: boolean): Stages<Outcome> {
    const { key, setup, ask } = problem;
    const known = this.outcomes.get(key);
    if (known !== null && (soon || !known.rough)) return known.outcome;
    if (!setup.solvable) return { solved: null, trouble: null };
    const { field, rough } = yield* this.field(problem, soon);
    const outcome = yield* readingStages(setup, field, ask);
    this.outcomes.put(key, { outcome, rough }, plainBytes(outcome));
    return outcome;
  }

  private *withLines(problem: Problem, of: Outcome, soon: boolean): Stages<Outcome> {
    if (of.solved === null) return of;
    const known = this.lined.get(problem.key);
    if (known !== null && known.of === of) return known.outcome;
    const { field } = yield* this.field(problem, soon);
    if (!field.ok) return of;
    const solved = yield* withFieldLines(problem.setup, field.field, of.solved);
    const outcome = { solved, trouble: null };
    this.lined.put(problem.key, { of, outcome }, plainBytes(solved.traces.fieldLines));
    return outcome;
  }

  /** Solves as far as needed, from where it was left the last time. */
  private *field(
    { key, setup, ask }: Problem,
    soon: boolean,
  ): Stages<{ readonly field: FieldOutcome; readonly rough: boolean }> {
    const place = fieldKey(setup, ask);
    this.fieldOf.set(key, place);
    const kept = this.fields.get(place) ?? this.begin(place, fieldStages(setup, ask));
    for (;;) {
      if (kept.whole !== null) return { field: kept.whole, rough: false };
      if (soon && kept.rough !== null && kept.unknowns > this.large)
        return { field: kept.rough, rough: true };
      this.advance(place, kept);
      yield;
    }
  }

  private begin(place: string, search: Kept['search']): Kept {
    this.begun++;
    const kept = { search, rough: null, unknowns: 0, whole: null };
    this.fields.put(place, kept, 0);
    return kept;
  }

  private advance(place: string, kept: Kept): void {
    let step: IteratorResult<FieldRest, FieldOutcome>;
    try {
      step = kept.search.next();
    } catch (error) {
      this.fields.drop(place);
      throw error;
    }
    if (step.done === true) {
      kept.whole = step.value;
      kept.rough = null;
    } else if (step.value.rough !== null) {
      kept.rough = { ok: true, field: step.value.rough };
      kept.unknowns = step.value.unknowns;
    }
    const best = kept.whole ?? kept.rough;
    // The working memory of a solve that is not at its end is about that of its field.
    const bytes = best?.ok === true ? best.field.bytes * (kept.whole === null ? 2 : 1) : 0;
    if (this.fields.has(place)) this.fields.put(place, kept, bytes);
  }
}

/** A task that is done in one stage. */
export function* atOnce<T>(made: () => T): Stages<T> {
  yield;
  return made();
}
