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

/** A block as it would be, and what that makes of its setup and of those that are like it. Spans are of no use. */
interface Supposed {
  readonly block: Block;
  /** By number of the block. */
  readonly setups: ReadonlyMap<number, Setup>;
}

/** The setup of a block after edits inside its lines; null for a block that is not there. */
export function supposedSetup(draft: Draft, number: number, edits: readonly TextEdit[]): Setup | null {
  const excerpt = blocksOf(draft)[number]?.excerpt;
  if (excerpt === undefined) return null;
  const blocks = withBlock(draft, number, editedExcerpt(excerpt, edits));
  return resolved(blocks, lineage(blocks, number)).get(number) ?? null;
}

/** Likewise with the setups of all blocks that are like it. */
export function supposedFamily(draft: Draft, number: number, excerpt: Excerpt): Supposed | null {
  const blocks = withBlock(draft, number, excerpt);
  const block = blocks[number];
  if (block === undefined) return null;
  const family = descendants(blocks, number);
  const setups = resolved(blocks, [...new Set(family.flatMap((member) => lineage(blocks, member)))]);
  return { block, setups: new Map([...setups].filter(([member]) => family.includes(member))) };
}

const blocksOf = ({ sheet }: Draft): readonly Block[] => sheet.blocks.map(({ block }) => block);

const withBlock = (draft: Draft, number: number, excerpt: Excerpt): readonly Block[] =>
  blocksOf(draft).map((block, at) => (at === number ? parseBlock(excerpt) : block));

function resolved(blocks: readonly Block[], needed: readonly number[]): ReadonlyMap<number, Setup> {
  const numbers = [...needed].sort((a, b) => a - b);
  const setups = resolveSetups(numbers.flatMap((at) => blocks[at] ?? []));
  return new Map(numbers.flatMap((at, i) => (setups[i] === undefined ? [] : [[at, setups[i]] as const])));
}

/** Each line with its edits; lines that they add become lines of the block. */
export function editedExcerpt(excerpt: Excerpt, edits: readonly TextEdit[]): Excerpt {
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
