/** Parses a block: its opening line, its statements line by line, its allowances. Total on any text; a wrong line costs that line. */
import type { Finding } from '../findings/finding.ts';
import type { Excerpt } from '../text/excerpt.ts';
import { readAllowance } from './allowance.ts';
import { readHead } from './head.ts';
import { type LineReading, nameGiven, readLine } from './statements.ts';
import type { Allowance, Block, Statement } from './tree.ts';

export function parseBlock(excerpt: Excerpt): Block {
  const head = readHead(excerpt.head);
  const lines = readLines(excerpt);
  const findings: Finding[] = [...head.findings];
  const statements: Statement[] = [];
  const allowances: Allowance[] = [];
  for (const [i, { statement, reader }] of lines.entries()) {
    if (statement !== null) statements.push(statement);
    for (const made of reader.findings) findings.push(made);
    const allowance = readAllowance(excerpt, i);
    if (allowance.allowance !== null) allowances.push(allowance.allowance);
    for (const made of allowance.findings) findings.push(made);
  }
  return { excerpt, head: head.head, statements, allowances, findings };
}

/** Every line of the block as it was read, in order: what parser and formatter share. */
export function readLines(excerpt: Excerpt): readonly LineReading[] {
  const given = excerpt.lines.map((line) => nameGiven(line.text)).filter((one) => one !== null);
  const context = {
    electrodes: new Set(given.filter((one) => one.ofElectrode).map((one) => one.name)),
    names: new Set(given.map((one) => one.name)),
  };
  return excerpt.lines.map((line) => readLine(line, context));
}
