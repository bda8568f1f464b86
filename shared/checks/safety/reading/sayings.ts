/** Looks for a note in the words of a sheet, tolerant of how it is put. */
import type { Saying } from '../hazard.ts';
import type { Piece, SafetyText } from './safety-text.ts';

/** The pieces in which a note stands, each once. */
export function piecesSaying(text: SafetyText, said: readonly Saying[]): readonly Piece[] {
  const found = new Set<Piece>();
  for (const { lead, others } of said) {
    for (const { from } of text.matches.of(lead)) {
      const piece = text.pieceAt(from);
      if (found.has(piece) || piece.question || piece.answer) continue;
      const words = wordsRound(text, piece, from);
      if (others.every((other) => other.test(words))) found.add(piece);
    }
  }
  return [...found];
}

/**
 * What belongs together: an item of a list, a row of a table; in a paragraph the sentence, and in notes on safety the one before it, of
 * whose things it may speak as “they”.
 */
function wordsRound(text: SafetyText, piece: Piece, index: number): string {
  if (piece.kind !== 'paragraph') return text.whole.slice(piece.from, piece.to);
  const { from, to } = text.sentenceAt(index);
  const start = piece.safety && from > piece.from ? text.sentenceAt(from - 1).from : from;
  return text.whole.slice(start, to);
}
