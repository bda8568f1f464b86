/** What a row of the table of hazards holds: when the hazard is there, and the notes that sheets usually carry for it. */
import type { SafetyCode } from '../../findings/safety-codes.ts';
import type { Setup } from '../../setup/setup.ts';
import type { Readers, Sheet } from '../../sheet/sheet.ts';
import type { Span } from '../../text/span.ts';
import type { Subject } from '../rule.ts';
import type { SafetyText } from './reading/safety-text.ts';

/** A sheet with its text read for safety. */
export interface Scene extends Subject {
  readonly text: SafetyText;
  /** Readers of a block, by its number. */
  readonly readersOf: (setup: Setup) => Readers;
  readonly language: Sheet['front']['language'];
}

/** Something in the sheet that makes a hazard be there. */
export interface Cause {
  readonly span: Span;
  readonly readers: Readers;
  /** Said beside the place: "The supply stands here." */
  readonly message: string;
}

/**
 * Who must see a note. `bench`: those who work there, pupils where the place is for them. `preparation`: technicians. `operator`: the
 * teacher who demonstrates.
 */
export type Serves = 'bench' | 'preparation' | 'operator';

export interface Note {
  /** What it says, to stand in a list: "keep the clips apart". */
  readonly name: string;
  readonly serves: Serves;
  readonly severity: 'warning' | 'note';
  /** Any of these is the note. */
  readonly said: readonly Saying[];
  /** A sentence or two to adapt, without the words that open a draft. */
  readonly draft: string;
  /** Where American schools have other words. */
  readonly draftAmerican?: string;
  /** False where the sheet needs no such note. */
  readonly needed?: (scene: Scene) => boolean;
}

/** All of these in one sentence, or in one item of a list or row of a table; the first is looked for first. Small letters. */
export interface Saying {
  readonly lead: RegExp;
  readonly others: readonly RegExp[];
}

export interface Hazard {
  readonly code: SafetyCode;
  /** As in "a note on short circuits". */
  readonly about: string;
  /** What happens, in one or two plain sentences. */
  readonly why: string;
  readonly causes: (scene: Scene) => readonly Cause[];
  readonly notes: readonly Note[];
}

/** A saying from expressions for small letters. */
export function all(lead: RegExp, ...others: readonly RegExp[]): Saying {
  return { lead: new RegExp(lead.source, 'gu'), others };
}
