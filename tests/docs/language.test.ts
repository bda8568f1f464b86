/** The guide is true to the language: its examples are read without a finding, its tables hold every word, key and column. */
import { readFileSync } from 'node:fs';
import { describe, expect, it, test } from 'vitest';
import { formatBlock } from '../../shared/block/format.ts';
import { parseBlock } from '../../shared/block/parse.ts';
import type { Block } from '../../shared/block/tree.ts';
import { reservedNames, reservedSetupNames, words } from '../../shared/block/words.ts';
import { examineSheet, printSheets } from '../../shared/index.ts';
import { resolveSetups } from '../../shared/setup/resolve.ts';
import { solveSetup } from '../../shared/setup/solve-setup.ts';
import { frontMatterKeys } from '../../shared/sheet/front-matter.ts';

import { columnWords, helpWords, laterWords } from '../../shared/sheet/inserts/figures.ts';
import { insertHeads, parseInsert } from '../../shared/sheet/inserts/parse-insert.ts';
import { readSheet } from '../../shared/sheet/read-sheet.ts';
import { excerptOf } from '../excerpts.ts';

const guide = readFileSync(new URL('../../docs/language.md', import.meta.url), 'utf8');

/** Every fence of ours. They stand in longer fences: the guide shows them as they are written. */
const examples = [...guide.matchAll(/^```electrodes(.*)\n([\s\S]*?)^```$/gm)].map(
  ([, head = '', text = '']) => ({ title: `${head.trim()} ${text.split('\n')[0]}`.trim(), head, text }),
);

const blockOf = ({ head, text }: { readonly head: string; readonly text: string }): Block =>
  parseBlock(excerptOf(text, head));

describe('examples', () => {
  it('are found', () => {
    expect(examples.length).toBeGreaterThan(14);
  });

  test.each(examples)('$title', (example) => {
    const block = blockOf(example);
    expect(block.findings.filter(({ severity }) => severity !== 'note')).toEqual([]);
    expect(formatBlock(block)).toEqual([]);
  });

  const setups = resolveSetups(
    examples
      .filter(({ head, text }) => head !== '' && (/^paper/.test(text) || head.includes('like')))
      .map(blockOf),
  );

  it('that are whole setups stand together', () => {
    expect(setups.length).toBeGreaterThan(4);
    for (const { name, solvable, findings } of setups)
      expect({ name, solvable, findings }).toEqual({ name, solvable: true, findings: [] });
  });

  test.each(setups.map((setup) => [setup.name, setup] as const))('%s is solved', (_, setup) => {
    const { solved, findings } = solveSetup(setup, { gap: 1e-6, traces: false, samples: [] });
    expect(findings).toEqual([]);
    expect(solved?.readings.current_A).toBeGreaterThan(0);
  });
});

describe('the pages', () => {
  const pages = ['docs/language.md', 'docs/editor.md', 'docs/findings.md', 'client/README.md', 'README.md'];

  it.each(pages)('%s is no sheet itself, so that a preview shows its examples as text', (page) => {
    const text = readFileSync(new URL(`../../${page}`, import.meta.url), 'utf8');
    expect(readSheet({ name: page, text }).blocks).toEqual([]);
  });
});

describe('whole sheets', () => {
  const sheets = [...guide.matchAll(/^````markdown\n([\s\S]*?)^````$/gm)].map(([, text = '']) => text);

  it('are found', () => {
    expect(sheets.length).toBeGreaterThan(0);
  });

  test.each(sheets)('sheet %# is read, solved and printed for everyone without a finding', (text) => {
    const examination = examineSheet({ name: 'guide.md', text });
    expect(examination.findings).toEqual([]);
    expect(printSheets(examination, ['pupils', 'teachers', 'technicians'])).toHaveLength(3);
  });
});

describe('inserts', () => {
  const inserts = [...new Set([...guide.matchAll(/[?!]\{[^}\n]+\}/g)].map(([written]) => written))].filter(
    (written) => !written.includes('…'),
  );

  it('are found', () => {
    expect(inserts.length).toBeGreaterThan(30);
  });

  test.each(inserts)('%s', (written) => {
    expect(parseInsert(written, true, (from, to) => ({ from, to })).findings).toEqual([]);
  });
});

describe('the guide tells', () => {
  /** As code, or as a part of an example line. */
  const written = new Set(
    [...guide.matchAll(/`([^`\n]+)`/g), ...guide.matchAll(/^```[a-z]+(.*\n[\s\S]*?)^```$/gm)].flatMap(
      ([, text = '']) => wordsIn(text),
    ),
  );

  function wordsIn(text: string): readonly string[] {
    const single = text.split(/[^\p{L}\p{N}./+−-]+/u).filter(Boolean);
    return [
      text,
      ...single,
      ...single.flatMap((word, i) => [2, 3].map((n) => [word, ...single.slice(i + 1, i + n)].join(' '))),
    ];
  }

  test.each(words.map(({ word }) => word))('the word %s', (word) => {
    expect(written).toContain(word);
  });

  it('every spelling that is read', () => {
    for (const { word, spellings } of words) {
      const row = guide
        .split('\n')
        .find(
          (line) => line.startsWith(`| \`${word}\``) && spellings.every((s) => line.includes(`\`${s}\``)),
        );
      if (spellings.length > 0) expect(row, word).toBeDefined();
    }
  });

  test.each([...reservedNames, ...reservedSetupNames])('the reserved name %s', (name) => {
    expect(guide).toContain(`\`${name}\``);
  });

  test.each([...insertHeads, ...laterWords])('the insert %s', (head) => {
    expect(guide).toMatch(new RegExp(`[?!]\\{${head.replace(/[.]/g, '\\.')}[ }:]`));
  });

  test.each(frontMatterKeys)('the key %s of the front matter', (key) => {
    expect(guide).toContain(`\`${key}\``);
  });

  test.each([...columnWords, ...helpWords])('the column or help %s', (word) => {
    expect(guide).toContain(`\`${word}\``);
  });
});
