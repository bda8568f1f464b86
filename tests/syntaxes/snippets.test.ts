/** Snippets are what the table of templates makes of them, and read well as they come, before anything is filled in. */
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it, test } from 'vitest';
import { safetyCodes } from '../../shared/findings/safety-codes.ts';
import { type Examination, examineSheet, formatSheet } from '../../shared/index.ts';

const root = resolve(dirname(fileURLToPath(import.meta.url)), '../..');
const written = readFileSync(join(root, 'syntaxes/papervolt.code-snippets'), 'utf8');

interface Snippet {
  readonly scope: string;
  readonly prefix: string;
  readonly body: readonly string[];
}
const snippets = Object.values(JSON.parse(written) as Readonly<Record<string, Snippet>>);
const textOf = ({ body }: Snippet): string =>
  body
    .join('\n')
    .replace(/\$\{\d+:([^}]*)\}/g, '$1')
    .replace(/\\([\\$}])/g, '$1');
const named = (prefix: string): string => {
  const snippet = snippets.find((one) => one.prefix === prefix);
  if (snippet === undefined) throw new Error(`no snippet ${prefix}`);
  return textOf(snippet);
};

/** Parts of a sheet have no notes on safety yet. */
const findingsOf = ({ findings }: Examination): readonly string[] =>
  findings.filter(({ code }) => !Object.hasOwn(safetyCodes, code)).map(({ message }) => message);

it('is what build/snippets.mjs writes', () => {
  const printed = execFileSync(process.execPath, [join(root, 'build/snippets.mjs'), '--print'], {
    encoding: 'utf8',
  });
  expect(printed).toBe(written);
});

it('asks for a word that is typed for nothing else', () => {
  expect(new Set(snippets.map(({ prefix }) => prefix)).size).toBe(snippets.length);
  for (const { prefix } of snippets) expect(prefix).toMatch(/^[a-z][a-z-]{5,}$/);
});

test('those for a sheet make one together, formatted and without a finding', () => {
  const block = named('electrodes').replace('probe   M', 'row     A  from N to P every 25 mm\nprobe   M');
  const question = '1. What is the reading at M? [1]\n\n   ?{bars.M}\n';
  const text = [
    block,
    named('electrodes-like'),
    named('passage'),
    named('readings-table').replace('A', 'bars.A'),
    question,
    named('answer'),
  ].join('\n\n');
  expect(findingsOf(examineSheet({ name: 'sheet.md', text: `${text}\n` }))).toEqual([]);
  expect(formatSheet(text)).toBe(text);
});

const inBlock = snippets.filter(({ scope }) => scope === 'papervolt-electrodes').map(({ prefix }) => prefix);

test.each(inBlock.filter((prefix) => prefix !== 'apparatus'))(
  '%s in a block is solved without a finding',
  (prefix) => {
    const text = `\`\`\`electrodes\n${named('apparatus')}\n\n${named(prefix)}\n\`\`\`\n`;
    const examined = examineSheet({ name: 'sheet.md', text });
    expect(findingsOf(examined)).toEqual([]);
    expect(examined.solutions.size).toBe(1);
    expect(formatSheet(text)).toBe(text);
  },
);
