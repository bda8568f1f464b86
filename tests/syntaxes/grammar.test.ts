/** The grammars for editors are what the tables of words make of them, and know every word in every spelling. */
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it, test } from 'vitest';
import { words } from '../../shared/block/words.ts';
import { unitOf, usualUnits } from '../../shared/quantity/units.ts';
import { columnWords, helpWords, laterWords } from '../../shared/sheet/inserts/figures.ts';
import { insertHeads } from '../../shared/sheet/inserts/parse-insert.ts';
import { passageWords } from '../../shared/sheet/markdown/passage-line.ts';
import { contributes, runMarkedText } from './grammars.ts';

const root = resolve(dirname(fileURLToPath(import.meta.url)), '../..');
const read = (file: string): string => readFileSync(join(root, file), 'utf8');

interface Rule {
  readonly match?: string;
  readonly begin?: string;
  readonly patterns?: readonly Rule[];
}
interface Grammar {
  readonly patterns: readonly Rule[];
  readonly repository: Readonly<Record<string, Rule>>;
}
const block: Grammar = JSON.parse(read('syntaxes/electrodes.tmLanguage.json'));
const sheet: Grammar = JSON.parse(read('syntaxes/sheet.tmLanguage.json'));

/** A pattern of the engine as one of JavaScript, whose texts begin where their line does. */
const pattern = ({ match = '' }: Rule): RegExp =>
  new RegExp(match.replaceAll('(?:^|\\G)', '^').replaceAll(/\\x\{(\w+)\}/g, '\\u{$1}'), 'u');
const patternsOf = (rules: readonly Rule[] | undefined): readonly RegExp[] =>
  (rules ?? []).filter(({ match }) => match !== undefined).map(pattern);

it('are what build/grammar.mjs writes', () => {
  const printed = execFileSync(process.execPath, [join(root, 'build/grammar.mjs'), '--print'], {
    encoding: 'utf8',
  });
  const files: Readonly<Record<string, string>> = JSON.parse(printed);
  expect(Object.keys(files)).toHaveLength(3);
  for (const [file, text] of Object.entries(files)) expect(read(file), file).toBe(text);
});

it('are those of the manifest, with the language of blocks inside Markdown', () => {
  expect(contributes.languages.map(({ id }) => id)).toEqual(['papervolt-electrodes']);
  const files = [
    ...contributes.grammars.map(({ path }) => path),
    ...contributes.languages.map((l) => l.configuration),
  ];
  for (const file of files) expect(read(file)).not.toBe('');
  expect(
    contributes.grammars.flatMap(({ embeddedLanguages = {} }) => Object.entries(embeddedLanguages)),
  ).toEqual([['meta.embedded.block.electrodes', 'papervolt-electrodes']]);
});

test('a block with marks', async () => {
  const { marks, failures } = await runMarkedText('syntaxes/block.electrodes', []);
  expect(failures).toEqual([]);
  expect(marks).toBeGreaterThan(50);
});

describe.each(words.map((word) => [`${word.role} ${word.word}`, word] as const))(
  'the %s',
  (_, { word, role, spellings }) => {
    const forms = [word, ...spellings];
    const wordRules = patternsOf(block.repository.words?.patterns);
    const begins = role === 'statement' || role === 'shape';

    it('is matched whole in each spelling', () => {
      const missed = forms.filter((form) => !wordRules.some((rule) => rule.exec(`x ${form} `)?.[0] === form));
      expect(missed).toEqual([]);
    });

    if (begins) {
      it('begins a line in each spelling', () => {
        const rules = [
          ...patternsOf(block.patterns),
          pattern({ match: block.repository.drawn?.begin ?? '' }),
        ];
        const missed = forms.filter((form) => !rules.some((rule) => rule.exec(`  ${form} `)?.[1] === form));
        expect(missed).toEqual([]);
      });
    }
  },
);

describe('quantities', () => {
  const rule = pattern(block.repository.quantity ?? {});
  const usual = Object.values(usualUnits).flat();
  const others = ['nA', 'µm', 'ohm', 'ohms', 'kohm', 'kΩ cm²', 'Ω mm2', 'kV/cm', 'deg', 'degrees', 'minutes'];

  test.each([...usual, ...others])('%s is a unit', (unit) => {
    expect(unitOf(unit)).not.toBeNull();
    expect(rule.exec(`at 12.5 ${unit}, `)?.slice(1, 3)).toEqual(['12.5', unit]);
  });

  test.each(['mmm', 'Mmx', 'every', 'V-2'])('%s is none', (word) => {
    expect(rule.exec(`12.5 ${word} `)?.[2]).not.toBe(word);
  });
});

describe('in a sheet', () => {
  const insertRules = patternsOf(sheet.repository.insert?.patterns);
  const option = pattern(sheet.repository.option ?? {});
  const passage = pattern(sheet.repository.passage?.patterns?.[0] ?? {});

  test.each([...insertHeads, ...laterWords])('an insert begins with %s', (head) => {
    expect(insertRules.some((rule) => rule.exec(`?{${head} A}`)?.[1] === head)).toBe(true);
  });

  const named = columnWords.filter((word) => word !== 'V' && word !== 'r');
  test.each([...named, ...helpWords])('%s is a word of an insert', (word) => {
    expect(option.exec(`readings A: ${word}, help`)?.[0]).toBe(word);
  });

  test.each(passageWords)('a passage for %s', (word) => {
    expect(passage.exec(`::: ${word}`)?.[3]).toBe(word);
    expect(passage.exec(`::: ${word}x`)).toBeNull();
  });
});

test('a name is one word, with hyphens and in any alphabet', () => {
  const { wordPattern } = JSON.parse(read('syntaxes/electrodes.language-configuration.json')) as {
    readonly wordPattern: { readonly pattern: string; readonly flags: string };
  };
  const found = 'bar Größe-2 10.5 mm, right of Ж-б'.match(
    new RegExp(wordPattern.pattern, `g${wordPattern.flags}`),
  );
  expect(found).toEqual(['bar', 'Größe-2', '10.5', 'mm', 'right', 'of', 'Ж-б']);
});
