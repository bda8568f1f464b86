/** Lines that are added to a block, in the columns that its other lines keep. */
import type { Block, Statement } from '../../block/tree.ts';
import type { TextEdit } from '../../findings/finding.ts';
import { writingOf } from '../../setup/writing.ts';
import type { ExcerptLine } from '../../text/excerpt.ts';

export interface NewLine {
  /** First word: `probe`, `move`. */
  readonly word: string;
  readonly name: string;
  /** What follows the name. */
  readonly body: string;
}

/** The block that gets the line, and those that it is like, which show columns where it has none. */
export interface Bench {
  readonly block: Block;
  readonly models: readonly Block[];
}

/** Adds the line behind a statement of the block, or at its end. */
export function addedLine({ block, models }: Bench, behind: Statement | null, line: NewLine): TextEdit {
  const text = inColumns([block, ...models], line);
  const writing = writingOf([block]);
  return behind === null ? writing.lastLine(block, text) : writing.lineAfter(behind.span, text);
}

const namedPattern = /^(\s*)([\p{L}-]+)(\s+)([\p{L}][\p{L}\p{M}\p{Nd}-]*)(\s+)(?=\S)/u;

interface Columns {
  readonly word: string;
  readonly indent: string;
  readonly afterWord: string;
  readonly afterName: string;
  readonly nameAt: number;
  readonly bodyAt: number;
}

/** The line as its like in the block, or else as a line of the block that shows columns. */
export function inColumns(blocks: readonly Block[], { word, name, body }: NewLine): string {
  const ofBlocks = blocks.map((block) => linesOfStatements(block).flatMap((line) => columnsOf(line) ?? []));
  const known = ofBlocks.find((lines) => lines.length > 0) ?? [];
  const model =
    known.filter((one) => one.word === word).at(-1) ??
    known.filter(({ afterWord }) => afterWord.length > 1).at(-1) ??
    known.at(-1);
  if (model === undefined) return `${word.padEnd(7)} ${name}  ${body}`;
  const { indent, afterWord, afterName, nameAt, bodyAt } = model;
  if ((afterWord + afterName).includes('\t')) return indent + word + afterWord + name + afterName + body;
  const single = afterWord.length === 1 && model.word !== word && model.word.length < 7;
  const head = single ? `${indent}${word} ` : `${(indent + word).padEnd(nameAt - 1)} `;
  if (single) return `${head}${name}${afterName}${body}`;
  return `${(head + name).padEnd(bodyAt - 1)} ${body}`;
}

/** Lines whose second word is a name. */
function linesOfStatements({ excerpt, statements }: Block): readonly ExcerptLine[] {
  const named = statements.filter((statement) => 'name' in statement && statement.name !== null);
  return named.flatMap(
    ({ span }) =>
      excerpt.lines.find(({ at, text }) => span.from >= at && span.from <= at + text.length) ?? [],
  );
}

function columnsOf({ text }: ExcerptLine): Columns | null {
  const [all, indent, word, afterWord, name, afterName] = namedPattern.exec(text) ?? [];
  if (all === undefined || indent === undefined || word === undefined || afterWord === undefined) return null;
  if (name === undefined || afterName === undefined) return null;
  const nameAt = indent.length + word.length + afterWord.length;
  return { word, indent, afterWord, afterName, nameAt, bodyAt: all.length };
}
