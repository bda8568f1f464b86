/** Where a preview gets its ready parts from. Whoever renders knows places and keys; whoever solves knows what belongs there. */
import type { Audience } from '../../block/tree.ts';

/** A part of a preview that somebody else has made ready: a drawing, a table, a value. */
export interface ReadyPiece {
  /** By content: what has one key looks the same, but for a finer solution. */
  readonly key: string;
  readonly html: string;
  /** Why there is no solution; what was ready last is then shown dimmed in its place. */
  readonly message: string | null;
}

/** What is to be asked for. */
export interface Wish {
  readonly key: string;
  /** Stays while its text says the same there for the same reader: what was ready last may stand in its place. */
  readonly place: string;
  /** Of a drawing: only what has the same size may stand for it. Null where no size is known or none matters. */
  readonly size: string | null;
}

/** Asked for every part of one rendering, in order. */
export interface Lookup {
  /** Null where it is not ready. */
  piece(wish: Wish): ReadyPiece | null;
  /** What was last ready, without a message, for that place. */
  lastGood(wish: Wish): string | null;
}

export interface PreviewSource {
  reader(): Audience;
  /** A sheet is about to be rendered; `document` is the address of its text where it has one. */
  begin(document: string | null): Lookup;
}
