/** What can be written at a place: the record, and the few ways to make one. */
import type { Span } from '../../text/span.ts';

export interface Offer {
  readonly kind: 'word' | 'name' | 'unit' | 'key' | 'value';
  readonly label: string;
  /** One line. */
  readonly detail: string;
  /** Markdown; empty where the detail says all. */
  readonly help: string;
  /** What is written; what stands between « and » is an example, to be filled in. */
  readonly text: string;
}

export interface Completion extends Offer {
  /** What is replaced: the part of a word before the cursor. */
  readonly span: Span;
}

export function offer(kind: Offer['kind'], label: string, detail: string, more: Partial<Offer> = {}): Offer {
  return { kind, label, detail, help: '', text: label, ...more };
}

/** The offers at a cursor behind `typed`, which is replaced; each label once. */
export function placed(offers: readonly Offer[], cursor: number, typed: string): readonly Completion[] {
  const span = { from: cursor - typed.length, to: cursor };
  const seen = new Set<string>();
  return offers.flatMap((one) => {
    if (seen.has(one.label)) return [];
    seen.add(one.label);
    return [{ ...one, span }];
  });
}
