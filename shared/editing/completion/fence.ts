/** A block to fill in behind three backticks, in a text that need not be a sheet yet. */
import type { Source } from '../../text/source.ts';
import { type Completion, lineBefore, offer, placed, typedIn } from './completion.ts';
import { wholeBlock } from './templates.ts';

export function opensFence(before: string): boolean {
  return fence.test(before);
}

/** It is closed by the same marks. */
export function fenceCompletions(source: Source, offset: number): readonly Completion[] {
  const before = lineBefore(source, offset);
  const found = fence.exec(before);
  const marks = found?.groups?.marks;
  if (found === null || marks === undefined) return [];
  const [rest = '', next = ''] = source.text.slice(offset).split(/\r\n?|\n/u, 2);
  const prefix = prefixBelow(found.groups?.around ?? '');
  const bare = next.replace(/^[\s>]+/u, '').trimEnd();
  const lines = `${wholeBlock.join('\n')}${closing(marks, rest.trim(), bare)}`;
  const text = lines.replaceAll('\n', `\n${prefix}`);
  const block = offer('word', 'electrodes', 'opens a block: a setup on conducting paper', { text });
  return placed([block], offset, typedIn(before));
}

const fence = /^(?<around>[\s>*+\d.)-]*)(?<marks>`{3,}|~{3,})[ \t]*[a-z]*$/u;

/** Lines stand inside the quotations and lists of the first one; its own indentation is repeated by the editor. */
const prefixBelow = (around: string): string =>
  around.trimStart().replace(/\d+[.)]|[-*+]/gu, (mark) => ' '.repeat(mark.length));

/** Nothing where an editor has closed the fence already, behind the cursor or on the next line. */
function closing(marks: string, rest: string, next: string): string {
  if (rest === marks) return '\n';
  return rest === '' && next === marks ? '' : `\n${marks}`;
}
