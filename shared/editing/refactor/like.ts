/** Writes a block that repeats most of another one as a variation of it. */
import { readLines } from '../../block/parse.ts';
import type { LineReading } from '../../block/statements.ts';
import type { Block, Statement } from '../../block/tree.ts';
import { nameGiven } from '../../setup/references.ts';
import type { Excerpt, ExcerptLine } from '../../text/excerpt.ts';
import type { Span } from '../../text/span.ts';
import { lineage } from '../moving/given.ts';
import { inColumns, type NewLine } from '../moving/new-line.ts';
import type { Refactoring } from './refactoring.ts';
import { keepsMeaningAs } from './same-meaning.ts';
import type { Site } from './site.ts';
import { statementKey } from './statement-key.ts';
import { variationLines } from './variation-lines.ts';

/** What is taken over must be at least so many lines, and at least half of all. */
const fewestShared = 3;

export function asVariation(site: Site): readonly Refactoring[] {
  const { draft, number, block, onHead } = site;
  if (!onHead || block.head.like !== null || block.allowances.length > 0 || varies(block)) return [];
  const blocks = draft.sheet.blocks.map((one) => one.block);
  const candidates = blocks.flatMap((base, at) => {
    const usable =
      at < number && base.head.like === null && !varies(base) && !lineage(blocks, at).includes(number);
    return usable ? [{ base, name: draft.setups[at]?.name ?? '', shared: sharedBy(block, base) }] : [];
  });
  const [best] = candidates.sort((a, b) => b.shared - a.shared);
  if (best === undefined || best.shared < fewestShared || 2 * best.shared < block.statements.length)
    return [];
  const excerpt = rewritten(block, best.base, best.name);
  if (excerpt === null || !keepsMeaningAs(site, excerpt)) return [];
  const title = `Write as a variation of ${best.name}: ${excerpt.lines.length} lines instead of ${block.excerpt.lines.length}`;
  return [{ title, kind: 'extract', edits: [bodyEdit(site, excerpt)] }];
}

/** A line that varies, or one that cannot be read. */
const varies = ({ statements }: Block): boolean =>
  statements.some(({ kind }) => ['change', 'move', 'without', 'reverse', 'broken'].includes(kind));

function sharedBy(block: Block, base: Block): number {
  const known = new Set(base.statements.map((statement) => statementKey(statement)));
  return block.statements.filter((statement) => known.has(statementKey(statement))).length;
}

/** Null where a line that would go has something of its own to say, or where nothing is saved. */
function rewritten(block: Block, base: Block, name: string): Excerpt | null {
  const { excerpt } = block;
  const lines = readLines(excerpt).flatMap((reading) => keptLines(reading, block, base));
  if (lines.includes(null)) return null;
  const kept = lines.filter((line) => line !== null);
  const names = new Set(block.statements.flatMap((statement) => nameGiven(statement)?.text ?? []));
  const gone = new Set(base.statements.flatMap((statement) => nameGiven(statement)?.text ?? []));
  const left = [...gone]
    .filter((one) => !names.has(one))
    .map((one) => written({ word: 'without', name: one, body: '' }, block));
  const body = withoutGaps([...left, ...kept]);
  if (body.length >= excerpt.lines.length) return null;
  const own = block.head.name === null ? '' : `${block.head.name.text} `;
  return { ...excerpt, head: { ...excerpt.head, text: `${own}like ${name}` }, lines: body };
}

/** The lines that stay of a line of the block; null among them where a remark would be lost. */
function keptLines(
  { statement, reader }: LineReading,
  block: Block,
  base: Block,
): readonly (ExcerptLine | null)[] {
  if (statement === null) return [reader.line];
  const remark = reader.line.text.slice(reader.text.length).trim() !== '';
  const lines = linesFor(statement, block, base);
  if (lines === null) return [reader.line];
  if (remark) return [null];
  return lines.map((line) => written(line, block));
}

/** What stands for a statement of the block in a variation of the base; null where it stays as it is. */
function linesFor(statement: Statement, block: Block, base: Block): readonly (NewLine | string)[] | null {
  const key = statementKey(statement);
  const textHere = (of: Span): string => textOf(of, block);
  const name = nameGiven(statement)?.text;
  if (name === undefined) {
    return base.statements.some((other) => statementKey(other) === key) ? [] : null;
  }
  const [own, theirs] = [block, base].map(({ statements }) =>
    statements.filter((other) => nameGiven(other)?.text === name),
  );
  if (own === undefined || theirs === undefined || theirs.length === 0) return null;
  if (own.length === theirs.length && own.every((line, i) => isSame(line, theirs[i]))) return [];
  const [old] = theirs;
  const varied =
    own.length === 1 && theirs.length === 1 && old !== undefined
      ? variationLines(statement, old, textHere)
      : null;
  if (varied !== null) return varied;
  // The first of its lines takes the old ones away.
  return statement.span.from === own[0]?.span.from
    ? [{ word: 'without', name, body: '' }, textHere(statement.span)]
    : null;
}

const isSame = (a: Statement, b: Statement | undefined): boolean =>
  b !== undefined && statementKey(a) === statementKey(b);

function textOf({ from, to }: Span, { excerpt }: Block): string {
  const line = excerpt.lines.find(({ at, text }) => from >= at && to <= at + text.length);
  return line === undefined ? '' : line.text.slice(from - line.at, to - line.at);
}

/** As a line of the block, in its columns. */
function written(line: NewLine | string, block: Block): ExcerptLine {
  const { lines, head } = block.excerpt;
  const text = typeof line === 'string' ? line : inColumns([block], line).trimEnd();
  return { ...(lines.find((one) => one.text.trim() !== '') ?? head), text };
}

/** No blank line at the beginning or the end, and no two together. */
function withoutGaps(lines: readonly ExcerptLine[]): readonly ExcerptLine[] {
  const blank = (line: ExcerptLine | undefined): boolean => line === undefined || line.text.trim() === '';
  return lines.filter((line, i) => !(blank(line) && (blank(lines[i - 1]) || lines.slice(i).every(blank))));
}

/** From behind the opening line's name to the end of the last line. */
function bodyEdit({ source, block }: Site, { head, lines }: Excerpt): Refactoring['edits'][number] {
  const old = block.excerpt;
  const last = old.lines.at(-1) ?? old.head;
  const from = old.head.at;
  const lineEnd = /\r\n|\n|\r/u.exec(source.slice(from))?.[0] ?? '\n';
  const space = /\s$/u.test(source.slice(0, from)) ? '' : ' ';
  const text = [space + head.text, ...lines.map(({ prefix = '', text: of }) => prefix + of)].join(lineEnd);
  return { span: { from, to: last.at + last.text.length }, text };
}
