/** The lexer: the word, number or sign at a place of a line, and where a remark begins. Total on any text. */

export interface Token {
  readonly kind: 'word' | 'number' | 'sign' | 'end';
  /** Offsets in the line. */
  readonly from: number;
  readonly to: number;
  readonly text: string;
}

/** The token at or after `from`. A sign is any one character that begins neither word nor number. */
export function tokenAt(line: string, from: number): Token {
  spacePattern.lastIndex = from;
  const start = from + (spacePattern.exec(line)?.[0].length ?? 0);
  if (start >= line.length) return { kind: 'end', from: line.length, to: line.length, text: '' };
  const word = matched(wordPattern, line, start);
  if (word !== null) return { kind: 'word', from: start, to: start + word.length, text: word };
  const number = matched(numberPattern, line, start);
  if (number !== null) return { kind: 'number', from: start, to: start + number.length, text: number };
  const sign = String.fromCodePoint(line.codePointAt(start) ?? 0);
  return { kind: 'sign', from: start, to: start + sign.length, text: sign };
}

/** Offset of the `#` that begins a remark, or the length of the line. */
export function remarkAt(line: string): number {
  const at = line.indexOf('#');
  return at < 0 ? line.length : at;
}

/** True for a name as the language has it: a letter of any alphabet, then letters, digits and hyphens. */
export function isName(text: string): boolean {
  return /^\p{L}[\p{L}\p{M}\p{Nd}-]*$/u.test(text);
}

/** Wider than a name, so that `N_1` and `P'` are one word that can be spoken of. */
const wordPattern = /[\p{L}_][\p{L}\p{M}\p{N}_'’-]*/uy;
const numberPattern = /\d+(?:\.\d+)?|\.\d+/uy;
const spacePattern = /\s*/uy;

function matched(pattern: RegExp, line: string, from: number): string | null {
  pattern.lastIndex = from;
  return pattern.exec(line)?.[0] ?? null;
}
