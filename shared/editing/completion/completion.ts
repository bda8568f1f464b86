/** What can be written at a place: the record, and the few ways to make one. */
import type { Source } from '../../text/source.ts';
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

/** The part of a word before the cursor. */
export function typedIn(before: string): string {
  return /[\p{L}\p{M}\p{N}_-]*$/u.exec(before)?.[0] ?? '';
}

/** The line up to the cursor. */
export function lineBefore({ text }: Source, offset: number): string {
  const from = Math.max(text.lastIndexOf('\n', offset - 1), text.lastIndexOf('\r', offset - 1)) + 1;
  return text.slice(from, offset);
}

/** As editors want what is to be filled in: what stands between « and » becomes a numbered place. */
export function snippetText(text: string): string {
  let place = 0;
  return text
    .replace(/[\\$}]/gu, '\\$&')
    .replace(/«([^»]*)»/gu, (_, example: string) => `\${${++place}:${example}}`);
}
