/** What a setup would mean if its block were edited: the block is read again, the text is not. */
import { parseBlock } from '../../block/parse.ts';
import type { Block } from '../../block/tree.ts';
import type { Draft } from '../../checks/examine.ts';
import type { TextEdit } from '../../findings/finding.ts';
import { resolveSetups } from '../../setup/resolve.ts';
import type { Setup } from '../../setup/setup.ts';
import type { Excerpt, ExcerptLine } from '../../text/excerpt.ts';
import { descendants, lineage } from './given.ts';

/** The text after edits that do not overlap. */
export function editedText(text: string, edits: readonly TextEdit[]): string {
  const ordered = [...edits].sort((a, b) => b.span.from - a.span.from || b.span.to - a.span.to);
  return ordered.reduce((old, { span, text: to }) => old.slice(0, span.from) + to + old.slice(span.to), text);
}

/** The setup of a block after edits inside its lines. Its spans are of no use; null for a block that is not there. */
export function supposedSetup(draft: Draft, number: number, edits: readonly TextEdit[]): Setup | null {
  return supposed(draft, number, edits, lineage(blocksOf(draft), number)).get(number) ?? null;
}

/** Likewise of the block and of all blocks that are like it. */
export function supposedFamily(
  draft: Draft,
  number: number,
  edits: readonly TextEdit[],
): ReadonlyMap<number, Setup> {
  const blocks = blocksOf(draft);
  const family = descendants(blocks, number);
  const needed = new Set(family.flatMap((member) => lineage(blocks, member)));
  const setups = supposed(draft, number, edits, [...needed]);
  return new Map([...setups].filter(([member]) => family.includes(member)));
}

const blocksOf = ({ sheet }: Draft): readonly Block[] => sheet.blocks.map(({ block }) => block);

function supposed(
  draft: Draft,
  number: number,
  edits: readonly TextEdit[],
  needed: readonly number[],
): ReadonlyMap<number, Setup> {
  const all = blocksOf(draft);
  const numbers = [...needed].sort((a, b) => a - b);
  const blocks = numbers.flatMap((at): readonly Block[] => {
    const block = all[at];
    if (block === undefined) return [];
    return [at === number ? parseBlock(editedExcerpt(block.excerpt, edits)) : block];
  });
  const setups = resolveSetups(blocks);
  return new Map(numbers.flatMap((at, i) => (setups[i] === undefined ? [] : [[at, setups[i]] as const])));
}

/** Each line with its edits; lines that they add become lines of the block. */
function editedExcerpt(excerpt: Excerpt, edits: readonly TextEdit[]): Excerpt {
  const lines = excerpt.lines.flatMap((line) => editedLine(line, edits));
  const [head, ...added] = editedLine(excerpt.head, edits);
  return { ...excerpt, head: head ?? excerpt.head, lines: [...added, ...lines] };
}

function editedLine(line: ExcerptLine, edits: readonly TextEdit[]): readonly ExcerptLine[] {
  const end = line.at + line.text.length;
  const within = edits.filter(({ span }) => span.from >= line.at && span.to <= end);
  if (within.length === 0) return [line];
  const local = within.map(({ span, text }) => ({
    span: { from: span.from - line.at, to: span.to - line.at },
    text,
  }));
  const [first = '', ...others] = editedText(line.text, local).split(/\r\n|\n|\r/u);
  const prefix = line.prefix ?? '';
  const bare = (text: string): string => (text.startsWith(prefix) ? text.slice(prefix.length) : text);
  return [{ ...line, text: first }, ...others.map((text) => ({ ...line, text: bare(text) }))];
}
