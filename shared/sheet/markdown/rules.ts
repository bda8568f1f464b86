/**
 * The plugin that teaches markdown-it our rules. It runs in our own parser and in the editor's preview, whose markdown-it is older: only
 * what versions 12 to 15 share is used. A text without a block is left alone.
 */
import type MarkdownIt from 'markdown-it';
import type { StateCore } from 'markdown-it';
import { buildSheet } from '../build-sheet.ts';
import { colons, frontMatter } from './block-rules.ts';
import { blockStage } from './block-stage.ts';
import { checkFenceWord, isBlockFence } from './fences.ts';
import { inlineStage } from './inline-stage.ts';
import { insert, noteTag } from './insert-rule.ts';
import { keepReading, knownIn, Reading, readingIn, sourceName } from './reading.ts';
import { setMeta, sheetMeta, tokenTypes } from './tokens.ts';

export function markdownRules(md: InstanceType<typeof MarkdownIt>): void {
  md.core.ruler.before('normalize', 'papervolt_begin', begin);
  md.core.ruler.after('normalize', 'papervolt_look', look);
  md.core.ruler.before('inline', 'papervolt_blocks', (state) => {
    const reading = sheetReading(state);
    if (reading !== null) blockStage(state, reading);
  });
  md.core.ruler.after('inline', 'papervolt_sheet', finish);
  md.block.ruler.before('table', 'papervolt_front', frontMatter);
  md.block.ruler.before('fence', 'papervolt_colons', colons, {
    alt: ['paragraph', 'reference', 'blockquote', 'list'],
  });
  md.inline.ruler.before('escape', 'papervolt_insert', insert);
  md.inline.ruler.before('html_inline', 'papervolt_tag', noteTag);
}

function begin(state: StateCore): void {
  state.env ??= {};
  const reading = new Reading({ name: sourceName(state.env), text: state.src }, knownIn(state.env));
  keepReading(state.env, reading);
  // A byte order mark belongs to the file, not to its first line.
  if (state.src.startsWith('\ufeff')) state.src = state.src.slice(1);
}

function look(state: StateCore): void {
  const reading = readingIn(state.env);
  if (reading === null) return;
  if (!state.inlineMode) reading.state = stateOf(state, reading);
  // Texts that are no sheets are left as they are.
  if (reading.state === 'other' && reading.text.startsWith('\ufeff')) state.src = `\ufeff${state.src}`;
}

/** A text is a sheet when markdown-it finds a block in it; most texts are told apart without asking. */
function stateOf(state: StateCore, reading: Reading): Reading['state'] {
  const likely = /(?:`{3}|~{3})[^\S\n]*electrodes(?!\S)[^\n]*/u.exec(state.src);
  if (likely === null) return 'other';
  reading.state = 'looking';
  const start = state.src.slice(0, likely.index + likely[0].length);
  return hasBlock(state, reading, start) || hasBlock(state, reading, state.src) ? 'sheet' : 'other';
}

/** `text`: all of it or its start, since no line waits for later ones to open a fence; but front matter waits for its end. */
function hasBlock(state: StateCore, reading: Reading, text: string): boolean {
  const tokens: StateCore['tokens'] = [];
  state.md.block.parse(text, state.md, { papervolt: reading }, tokens);
  const frontOpen = text !== state.src && text.startsWith('---') && reading.front === null;
  reading.front = null;
  return !frontOpen && tokens.some(isBlockFence);
}

function sheetReading(state: StateCore): Reading | null {
  const reading = readingIn(state.env);
  return reading?.state === 'sheet' ? reading : null;
}

function finish(state: StateCore): void {
  const reading = readingIn(state.env);
  if (reading === null) return;
  if (reading.state !== 'sheet') {
    for (const token of state.tokens) checkFenceWord(reading, token);
    reading.sheet = buildSheet(reading, []);
    return;
  }
  inlineStage(state, reading);
  const first = new state.Token(tokenTypes.sheet, '', 0);
  first.block = true;
  first.hidden = true;
  state.tokens = [first, ...state.tokens];
  reading.sheet = buildSheet(reading, state.tokens);
  setMeta(first, sheetMeta(reading.sheet));
}
