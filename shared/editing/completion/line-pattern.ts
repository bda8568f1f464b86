/** A whole line to fill in, made of the example in the table of words: each name and each quantity is a place. */
import { tokenAt } from '../../block/tokens.ts';
import type { Word } from '../../block/word.ts';
import { numberAt, unitAfter } from '../../quantity/read.ts';
import { freeName } from '../../setup/names.ts';
import { lineWords } from './line-words.ts';

/** With places between « and ». The name that the line gives is none of those taken. */
export function linePattern({ word, example }: Word, taken: ReadonlySet<string>): string {
  const gives = lineWords[word]?.gives === true;
  const place = (text: string): string => `«${text}»`;
  let pattern = '';
  let at = 0;
  while (at < example.length) {
    const token = tokenAt(example, at);
    pattern += example.slice(at, token.from);
    const second = gives && example.slice(0, token.from).trim() === word;
    const quantity = quantityEnd(example, token.from);
    at = quantity ?? token.to;
    const text = example.slice(token.from, at);
    if (second) pattern += place(taken.has(text) ? freeName(text, taken) : text);
    else pattern += quantity !== null || isUpper(text) ? place(text) : text;
  }
  return pattern;
}

/** Where a number with its unit ends; null where none begins. */
function quantityEnd(text: string, from: number): number | null {
  const number = numberAt(text, from);
  if (number === null || number.span.from !== from) return null;
  return unitAfter(text, number.span.to)?.span.to ?? number.span.to;
}

const isUpper = (text: string): boolean => /^\p{Lu}$/u.test(text);
