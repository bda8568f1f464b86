/** Help for a word of the language at the place where it stands. */
import type { Word } from '../block/word.ts';
import { words } from '../block/words.ts';

/** The entry of a canonical word, or of its plural. `first`: it begins its line; `of` is the word that begins the line. */
export function wordEntry(word: string, { first, of }: { first: boolean; of: string | null }): Word | null {
  const entries = words.filter(
    (entry) => (entry.word === word || `${entry.word}s` === word) && entry.role !== 'head',
  );
  const begins = (entry: Word): boolean => entry.role === 'statement' || entry.role === 'shape';
  const fitting = entries.filter((entry) => (first ? begins(entry) : !begins(entry)));
  const part = of === 'draw' ? fitting.find(({ role }) => role === 'part') : undefined;
  return part ?? fitting[0] ?? entries[0] ?? null;
}

/** Markdown: what it is, and an example. */
export function wordHelp({ word, help, example }: Pick<Word, 'word' | 'help' | 'example'>): string {
  return `**${word}**: ${help}\n\n~~~text\n${example}\n~~~`;
}
