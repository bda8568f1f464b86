/**
 * The one table of words of the block language. The parser reads by it, the formatter mends to it, completion, grammar and user guide
 * are made from it. Names of electrodes, probes and rows are not in it, but those that are reserved.
 */
import { tokenAt } from './tokens.ts';
import type { Word, WordRole } from './word.ts';
import { shapeWords } from './words-shapes.ts';
import { statementWords } from './words-statements.ts';

export const words: readonly Word[] = [...statementWords, ...shapeWords];

/** Heads of inserts for figures that later versions print. */
export const laterFigures = [
  'graph',
  'plot',
  'placement',
  'cut-outs',
  'circuit',
  'kit',
  'stack',
  'marks',
] as const;

/** Names that no electrode, probe or row may have, because inserts in the text mean something else by them. */
export const reservedNames: readonly string[] = [
  'current',
  'resistance',
  'strength',
  'V0',
  'centre',
  'x',
  'y',
  'range',
  'blank',
  'gradient',
  'mean',
  'readings',
  'drawing',
  ...laterFigures,
];

/** Names that no setup may have. */
export const reservedSetupNames: readonly string[] = ['like', 'setup'];

/** Written forms of a word, each as its lower-case parts, the longest first; the word itself where the table does not know it. */
export function formsOf(word: string): readonly (readonly string[])[] {
  return forms.get(word) ?? [partsOf(word)];
}

/** The words of some roles, once each. */
export function wordsOf(...roles: readonly WordRole[]): readonly string[] {
  return [...new Set(words.filter((entry) => roles.includes(entry.role)).map((entry) => entry.word))];
}

const forms = new Map<string, readonly (readonly string[])[]>();
for (const { word } of words) {
  const written = words.filter((entry) => entry.word === word).flatMap((entry) => entry.spellings);
  const parts = [...new Set([word, ...written])].map(partsOf);
  forms.set(
    word,
    parts.sort((a, b) => b.length - a.length),
  );
}

/** A spelling as the lexer sees it, in lower case. */
function partsOf(spelling: string): readonly string[] {
  const parts: string[] = [];
  for (let token = tokenAt(spelling, 0); token.kind !== 'end'; token = tokenAt(spelling, token.to)) {
    parts.push(token.text.toLowerCase());
  }
  return parts;
}
