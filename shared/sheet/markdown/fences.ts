/** Recognises blocks among the fences that markdown-it has found, and cuts out their text with its places in the file. */
import type { Token } from 'markdown-it';
import { nearest } from '../../block/nearest.ts';
import { type Excerpt, type ExcerptLine, lineInFile } from '../../text/excerpt.ts';
import { span } from '../../text/span.ts';
import type { Reading } from './reading.ts';

/** The word that makes a fence a block. */
const blockWord = 'electrodes';

function fenceWord(token: Token): string {
  return /^\s*(\S*)/u.exec(token.info)?.[1] ?? '';
}

export function isBlockFence(token: Token): boolean {
  return token.type === 'fence' && fenceWord(token) === blockWord;
}

/** Reports a fence that was meant to be a block. */
export function checkFenceWord(reading: Reading, token: Token): void {
  const word = fenceWord(token);
  if (token.type !== 'fence' || word === blockWord || !isNearly(word)) return;
  const { at } = infoLine(reading, token);
  const wordSpan = span(at + token.info.indexOf(word), at + token.info.indexOf(word) + word.length);
  reading.report('fence-word', {
    span: wordSpan,
    message: `\`${blockWord}\`? As it stands, this is not solved or drawn.`,
    fixes: [{ title: `Write ${blockWord}`, edits: [{ span: wordSpan, text: blockWord }], certain: true }],
  });
}

/** The text of a fence without the prefixes of lists and quotations. */
export function excerptOf(reading: Reading, token: Token): Excerpt {
  const [first, end] = token.map ?? [0, 0];
  const info = infoLine(reading, token);
  const cut = token.content.split('\n');
  if (cut.at(-1) === '') cut.pop();
  const lines = cut.map((text, i) => cutLine(reading, first + 1 + i, text));
  const from = info.at - token.markup.length;
  const closing = end > first + 1 + cut.length;
  const last = closing ? end - 1 : first + cut.length;
  const whole = span(from, Math.max(info.at, endOf(reading, last)));
  const lineEnd = /^[^\r\n]*(\r\n?)/u.exec(reading.text.slice(info.at))?.[1];
  const head = headOf(info, prefixBelow(reading.text.slice(reading.index.startOf(first), from)));
  return {
    lines,
    span: whole,
    head,
    ...(lineEnd === '\r\n' || lineEnd === '\r' ? { lineEnd } : {}),
  };
}

/** Case, a letter too many or too few: `electrode`, `Electrodes`, `electrods`; but `electronics` is another word. */
function isNearly(word: string): boolean {
  return word.length >= 7 && /d/iu.test(word) && nearest(word, [blockWord]).length > 0;
}

/** What follows the marks of the fence on its first line. */
function infoLine(reading: Reading, token: Token): ExcerptLine {
  return cutLine(reading, token.map?.[0] ?? 0, token.info);
}

/** A line that markdown-it has cut out; it shows NUL as a replacement character. */
function cutLine(reading: Reading, line: number, cut: string): ExcerptLine {
  const start = reading.index.startOf(line);
  const { text, at } = lineInFile(cut, reading.parserLine(line), start);
  const prefix = reading.text.slice(start, at);
  return { text: reading.text.slice(at, at + text.length), at, ...(prefix === '' ? {} : { prefix }) };
}

function headOf(info: ExcerptLine, prefix: string): ExcerptLine {
  const [before = ''] = /^\s*\S*\s*/u.exec(info.text) ?? [];
  return {
    text: info.text.slice(before.length).trimEnd(),
    at: info.at + before.length,
    ...(prefix === '' ? {} : { prefix }),
  };
}

/** What stands before a fence, as a line below has it: the marks of lists are spaces there. */
const prefixBelow = (before: string): string =>
  before.replace(/\d+[.)]|[-*+]/gu, (mark) => ' '.repeat(mark.length));

function endOf(reading: Reading, line: number): number {
  const text = reading.line(line);
  return reading.index.startOf(line) + text.trimEnd().length;
}
