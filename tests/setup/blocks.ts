/** Setups from text: one block, or a sheet cut at its fences without a Markdown parser. */
import { parseBlock } from '../../shared/block/parse.ts';
import type { Block } from '../../shared/block/tree.ts';
import type { Finding } from '../../shared/findings/finding.ts';
import { resolveSetups } from '../../shared/setup/resolve.ts';
import type { Setup } from '../../shared/setup/setup.ts';
import type { ExcerptLine } from '../../shared/text/excerpt.ts';
import { lineIndex } from '../../shared/text/source.ts';
import { check, dedent } from '../check.ts';

const fence = /^```electrodes ?/u;

/** Blocks between "```electrodes …" and "```"; a text without a fence is one block without a name. */
export function blocksOf(text: string): readonly Block[] {
  const fenced = text.includes('```') ? text : `\`\`\`electrodes\n${text}\n\`\`\``;
  const shift = fenced === text ? 0 : -14;
  const index = lineIndex(fenced);
  const blocks: Block[] = [];
  let head: ExcerptLine | null = null;
  let lines: ExcerptLine[] = [];
  for (let line = 0; line < index.lineCount; line++) {
    const from = index.startOf(line);
    const written = fenced.slice(from, index.endOf(line));
    const opening = fence.exec(written)?.[0];
    if (opening !== undefined) {
      head = { text: written.slice(opening.length), at: from + opening.length + shift };
      lines = [];
    } else if (written === '```' && head !== null) {
      const span = { from: head.at - opening_length, to: index.endOf(line) + shift };
      blocks.push(parseBlock({ lines, span, head }));
      head = null;
    } else if (head !== null) lines.push({ text: written, at: from + shift });
  }
  return blocks;
}

const opening_length = 14;

export const setupsOf = (text: string): readonly Setup[] => resolveSetups(blocksOf(dedent(text)));

/** The only, or the last, setup of a text. */
export function setupOf(text: string): Setup {
  const setup = setupsOf(text).at(-1);
  if (setup === undefined) throw new Error('no block in this text');
  return setup;
}

/** Marks of the findings of the meaning. */
export function checkSetups(marked: string): void {
  check(marked, (text) => meaningFindings(text));
}

const meaningFindings = (text: string): readonly Finding[] =>
  resolveSetups(blocksOf(text)).flatMap(({ findings }) => findings);
