/** The tokens that a reader's preview renders. What the reader does not get is not among them; no token is changed. */
import type { Token } from 'markdown-it';
import type { Audience } from '../../block/tree.ts';
import { metaOf, tokenTypes } from '../markdown/tokens.ts';
import { type PassagePrint, passagePrint } from '../print/passages.ts';
import type { Tier } from '../print/view.ts';
import type { Passage, Sheet } from '../sheet.ts';

export interface ReaderTokens {
  readonly tokens: readonly Token[];
  /** Contents of the pupils' hints, in order of place. */
  readonly hints: readonly Hint[];
}

interface Hint {
  /** Index in `sheet.passages`. */
  readonly passage: number;
  readonly content: readonly Token[];
}

export function readerTokens(all: readonly Token[], sheet: Sheet, audience: Audience): ReaderTokens {
  const hints: Hint[] = [];
  const kept = (from: number, to: number): Token[] => {
    const tokens: Token[] = [];
    for (let i = from; i < to; i++) {
      const token = all[i];
      const meta = token === undefined ? null : metaOf(token);
      if (token === undefined || meta?.kind === 'sheet') continue;
      if (token.type === tokenTypes.figuresOpen) {
        // Its rule renders the whole paragraph.
        tokens.push(token);
        i = closeOf(all, i, to);
        continue;
      }
      if (meta?.kind !== 'passage' || token.nesting !== 1) {
        tokens.push(token);
        continue;
      }
      const passage = sheet.passages[meta.passage];
      const end = closeOf(all, i, to);
      const share = passage === undefined ? 'nothing' : sharedWith(passage, audience);
      if (share === 'text') tokens.push(token, ...kept(i + 1, end), ...all.slice(end, end + 1));
      else if (share !== 'nothing') tokens.push(token);
      if (share === 'hint') hints.push({ passage: meta.passage, content: kept(i + 1, end) });
      i = end;
    }
    return tokens;
  };
  return { tokens: kept(0, all.length), hints };
}

/** The preview shows pupils' copies of all tiers in one. */
export function sharedWith(passage: Passage, audience: Audience): PassagePrint {
  const { kind } = passage;
  return passagePrint(passage, audience, isTier(kind) ? kind : null);
}

export function isTier(kind: Passage['kind']): kind is Tier {
  return kind === 'support' || kind === 'core' || kind === 'stretch';
}

/** Index of the token that closes the one at `open`, which may hold others of its type; `to` where none does. */
function closeOf(all: readonly Token[], open: number, to: number): number {
  const type = all[open]?.type ?? '';
  const closing = type.replace(/_open$/u, '_close');
  let depth = 0;
  for (let i = open; i < to; i++) {
    if (all[i]?.type === type) depth++;
    else if (all[i]?.type === closing && --depth === 0) return i;
  }
  return to;
}
