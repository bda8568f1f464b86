/** Where a sheet speaks of a dangerous thing, and whether it is used: what is denied, asked, quoted or only talked about makes no hazard. */
import type { Readers } from '../../../sheet/sheet.ts';
import type { Span } from '../../../text/span.ts';
import type { Found } from './matches.ts';
import type { Piece, SafetyText } from './safety-text.ts';

export interface Mention {
  /** In the whole text. */
  readonly from: number;
  readonly to: number;
  readonly piece: Piece;
  readonly sentence: string;
  /** As written, in small letters, with groups. */
  readonly match: RegExpExecArray;
  readonly span: Span;
  readonly readers: Readers;
}

/**
 * `used`: somebody does something with it, or it stands among the things needed or in the part on safety. `done`: the words themselves
 * say that it is done (`put it in a microwave oven`), so that no more is asked. `said`: a claim, which an answer makes as well.
 */
export type Way = 'used' | 'done' | 'said';

/** All mentions of what is used. `pattern` has the flag g and is written for small letters. */
export function mentionsOf(text: SafetyText, pattern: RegExp, way: Way = 'used'): readonly Mention[] {
  const found: Mention[] = [];
  for (const one of text.matches.of(pattern)) {
    const mention = mentionAt(text, one, way);
    if (mention !== null) found.push(mention);
  }
  return found;
}

function mentionAt(text: SafetyText, { from, match }: Found, way: Way): Mention | null {
  const to = from + match[0].length;
  const piece = text.pieceAt(from);
  if (to > piece.to || piece.kind === 'caption') return null;
  if ((way === 'used' && piece.question) || (way !== 'said' && piece.answer)) return null;
  const { from: start, to: end } = text.sentenceAt(from);
  const sentence = text.whole.slice(start, end);
  const at = { from: from - start, to: Math.min(to, end) - start };
  if (isDenied(sentence, at) || isTalk(sentence, at)) return null;
  if (way === 'used' && !isUsed(piece, sentence)) return null;
  return { from, to, piece, sentence, match, span: text.spanOf(from, to), readers: piece.readers };
}

interface Part {
  readonly from: number;
  readonly to: number;
}

const negations =
  /(?<!\w)(?:never|not(?! only\b)|no(?!\. ?\d)|nor|neither|none|nothing|without|cannot|\w+n't|dont|avoid\w*|instead of|rather than|in place of|in preference to|other than|except(?: for)?|unlike|forbid\w*|prohibit\w*|refus\w*|refrain|bann?(?:s|ed|ing)?|away from|clear of|free (?:of|from)|far from|unsuitable|unnecessary|no need|under no circumstances|must never|danger of|stop using)(?!\w)/u;
/** A clause in which a denial before it no longer holds. */
const clauseStarts =
  /;|\bbut\b|\bhowever\b|, (?:(?:and|then|instead|so) )?(?:use|take|connect|pour|put|set|switch|fill|join)\b/gu;
const replaced = /\breplac\w*(?![^;]*\b(?:by|with)\b)/u;
const deniedBehind =
  /^[^.;]{0,40}?\b(?:(?:is|are|was|were|be|must|may|should|shall|will|can|could|does|do|has|have)\s+(?:\w+\s+)?(?:not|never|no longer)|cannot|\w+n't|forbidden|prohibited|banned|barred|ruled out|disallowed|unsuitable|unnecessary|not (?:needed|used|allowed|permitted|required|suitable|for))\b|^[ -]?free\b|^\s*:\s*(?:no|never|none|not)\b|^ (?:well )?(?:away|out of the way)\b/u;

/** True where the sentence says no to what stands from `from` to `to` in it. */
function isDenied(sentence: string, { from, to }: Part): boolean {
  const before = sentence.slice(0, from);
  if (/^\s*(?:\||-)?\s*(?:never|do not|don't|no)\b[^;]*$/u.test(before) && !/\bbut\b/u.test(before))
    return true;
  return (
    negations.test(clauseBefore(before) + sentence.slice(from, to)) ||
    replaced.test(before) ||
    deniedBehind.test(sentence.slice(to))
  );
}

function clauseBefore(before: string): string {
  const starts = [...before.matchAll(clauseStarts)];
  return before.slice(starts.at(-1)?.index ?? 0);
}

/** Questions, quotations, and thoughts of what might be. */
function isTalk(sentence: string, { from }: Part): boolean {
  const before = sentence.slice(0, from);
  const quoted = count(before, /“/gu) > count(before, /”/gu) || count(before, /"/gu) % 2 === 1;
  return quoted || /\?["”')]*\s*$/u.test(sentence) || talk.test(before);
}

const talk =
  /\b(?:would|could|might|imagine|suppose|why|explain|discuss|compare|unlike|as in|similar to|history|histor\w+|in (?:a )?(?:factory|hospital|industry)|in 1[6-9]\d\d|in real life|people (?:once|used))\b/u;

const uses =
  /\b(?:us(?:e|es|ed|ing)|connect\w*|join\w*|attach\w*|appl(?:y|ies|ied)|set|turn\w*|switch\w*|put|plac(?:e|es|ed|ing)|pour\w*|fill\w*|demonstrat\w*|show(?:s|n)?|run\w*|take|taken|bring|charg(?:e|es|ed|ing)|touch\w*|hold\w*|operat\w*|power(?:ed|s)?|driv\w+|fed|feed|suppl(?:y|ies|ied)|plug\w*|heat\w*|sprinkl\w*|scatter\w*|float\w*|dip\w*|cut\w*|paint\w*|draw\w*|brush\w*|spray\w*|wip(?:e|es|ed|ing)|clean\w*|light\w*|warm\w*|mak(?:e|es|ing)|made|fix\w*|hook\w*|clip\w*|wire\w*|deburr\w*|trim\w*|sand\w*|rub\w*|clamp\w*|stand|stir\w*|add|added|lay|laid|press\w*|melt\w*|prepar\w*|provid\w*|issue\w*|fasten\w*|held|contains?|teacher|demonstration|repair\w*|tin|mend\w*|solder\w*)\b/u;

function isUsed(piece: Piece, sentence: string): boolean {
  return piece.apparatus || piece.safety || uses.test(sentence);
}

const count = (text: string, pattern: RegExp): number => text.match(pattern)?.length ?? 0;
