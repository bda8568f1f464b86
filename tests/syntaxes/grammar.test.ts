/** The grammar for editors is what the table of words makes of it, and knows every word in every spelling. */
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { words } from '../../shared/block/words.ts';

const path = (name: string): string => fileURLToPath(new URL(`../../${name}`, import.meta.url));
const written = readFileSync(path('syntaxes/electrodes.tmLanguage.json'), 'utf8');

interface Rule {
  readonly name?: string;
  readonly match?: string;
  readonly patterns?: readonly Rule[];
}
interface Grammar {
  readonly patterns: readonly Rule[];
  readonly repository: Readonly<Record<string, Rule>>;
}
const grammar: Grammar = JSON.parse(written);
const wordRules = (grammar.repository.words?.patterns ?? []).map(({ match = '' }) => new RegExp(match, 'u'));
const lineRule = new RegExp(grammar.patterns[1]?.match ?? '', 'u');

it('is what build/grammar.mjs writes', () => {
  expect(execFileSync(process.execPath, [path('build/grammar.mjs'), '--print'], { encoding: 'utf8' })).toBe(
    written,
  );
});

describe.each(words.map((word) => [word.word, word] as const))('%s', (_, { word, role, spellings }) => {
  it('is matched whole in each spelling', () => {
    const missed = [word, ...spellings].filter((form) =>
      role === 'statement' || role === 'shape'
        ? lineRule.exec(`  ${form} X`)?.[1] !== form
        : !wordRules.some((rule) => rule.exec(`x ${form} `)?.[0] === form),
    );
    expect(missed).toEqual([]);
  });
});
