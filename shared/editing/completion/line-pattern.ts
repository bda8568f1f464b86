/** A whole line to fill in, made of the example in the table of words: each name and each quantity is a place. */
import { tokenAt } from '../../block/tokens.ts';
import type { Word } from '../../block/word.ts';
import { numberAt, unitAfter } from '../../quantity/read.ts';
import { freeLetter } from '../moving/letters.ts';
import type { Known } from './known-names.ts';
import { lineWords } from './line-words.ts';

/**
 * With places between « and ». The name that the line gives is none of those there are; electrodes of which it speaks are some of them
 * where there are any.
 */
export function linePattern({ word, example }: Word, names: readonly Pick<Known, 'name' | 'kind'>[]): string {
  const gives = lineWords[word]?.gives === true;
  const taken = new Set(names.map(({ name }) => name));
  const electrodes = [...new Set(names.filter(({ kind }) => kind === 'electrode').map(({ name }) => name))];
  const others = electrodes.filter((name) => !example.split(/[\s,]+/u).includes(name));
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
    if (second) pattern += place(taken.has(text) ? freeLetter(text, taken) : text);
    else if (quantity !== null) pattern += place(text);
    else if (isUpper(text)) pattern += place(electrodes.includes(text) ? text : (others.shift() ?? text));
    else pattern += text;
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
