/** Short ways for tests to parse a block and to look at its tree. */
import { parseBlock } from '../../shared/block/parse.ts';
import type { Block, Statement } from '../../shared/block/tree.ts';
import { workingUnit } from '../../shared/quantity/quantity.ts';
import { check, dedent } from '../check.ts';
import { excerptOf } from '../excerpts.ts';

export function blockOf(text: string, head = ''): Block {
  return parseBlock(excerptOf(dedent(text), head));
}

/** Marks of the findings of the syntax. */
export function checkBlock(marked: string): void {
  check(marked, (text) => parseBlock(excerptOf(text)).findings);
}

/** One line as its statement, spans left out, values written as `10 mm`, names and counts bare. */
export function read(line: string): unknown {
  const block = blockOf(line);
  const [statement] = block.statements;
  return block.findings.some((finding) => finding.severity === 'error') ? block.findings : plain(statement);
}

export function plainStatements(statements: readonly Statement[]): unknown {
  return statements.map(plain);
}

function plain(node: unknown): unknown {
  if (Array.isArray(node)) return node.map(plain);
  if (typeof node !== 'object' || node === null) return node;
  const fields = Object.entries(node).filter(([key]) => key !== 'span');
  const record: Record<string, unknown> = Object.fromEntries(fields);
  if (isDimension(record.dimension)) return `${record.value} ${workingUnit[record.dimension]}`.trim();
  const keys = Object.keys(record);
  if (keys.length === 1 && (keys[0] === 'text' || keys[0] === 'value' || keys[0] === 'word')) {
    return record[keys[0]];
  }
  if (record.kind === 'coordinates') return `(${plain(record.x)}, ${plain(record.y)})`;
  return Object.fromEntries(
    fields.filter(([, value]) => value !== null).map(([key, value]) => [key, plain(value)]),
  );
}

function isDimension(value: unknown): value is keyof typeof workingUnit {
  return typeof value === 'string' && Object.hasOwn(workingUnit, value);
}
