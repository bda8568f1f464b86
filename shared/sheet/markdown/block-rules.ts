/** The two rules that markdown-it's block parser gets: front matter, and lines of colons. Both leave hidden tokens for later stages. */
import type { StateBlock } from 'markdown-it';
import { span } from '../../text/span.ts';
import { readingIn } from './reading.ts';

/** A line of three or more colons, whatever it means: `content` is the line from its colons on. */
export const colonsType = 'papervolt_colons';

/** Three hyphens on the first line of a text, up to three hyphens or dots. */
export function frontMatter(state: StateBlock, startLine: number, endLine: number, silent: boolean): boolean {
  const reading = readingIn(state.env);
  if (
    reading === null ||
    reading.state === 'other' ||
    startLine !== 0 ||
    state.level !== 0 ||
    state.blkIndent !== 0
  )
    return false;
  if (lineOf(state, 0, state.bMarks[0] ?? 0).trimEnd() !== '---') return false;
  let line = 1;
  while (line < endLine && !/^(?:---|\.\.\.)[ \t]*$/u.test(lineOf(state, line, state.bMarks[line] ?? 0))) {
    line++;
  }
  if (line >= endLine) return false;
  if (silent) return true;
  const { index } = reading;
  reading.front = {
    inside: span(index.startOf(1), index.startOf(line)),
    whole: span(index.startOf(0), index.endOf(line)),
  };
  state.line = line + 1;
  return true;
}

/** Colons are found wherever a fence would be found. */
export function colons(state: StateBlock, startLine: number, _endLine: number, silent: boolean): boolean {
  if (readingIn(state.env)?.state !== 'sheet') return false;
  if ((state.sCount[startLine] ?? 0) - state.blkIndent >= 4) return false;
  const from = (state.bMarks[startLine] ?? 0) + (state.tShift[startLine] ?? 0);
  if (!state.src.startsWith(':::', from)) return false;
  if (silent) return true;
  state.line = startLine + 1;
  const token = state.push(colonsType, '', 0);
  token.content = lineOf(state, startLine, from).trimEnd();
  token.map = [startLine, startLine + 1];
  token.hidden = true;
  return true;
}

function lineOf(state: StateBlock, line: number, from: number): string {
  return state.src.slice(from, state.eMarks[line] ?? 0);
}
