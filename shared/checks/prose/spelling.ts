/** British and American spelling of words that stand in practical sheets, where sheet or department says its language. */
import type { WordRule } from './rule.ts';
import { found } from './rule.ts';
import { fix } from './run.ts';

/** Stems and what may end them. */
const stems: readonly (readonly [british: string, american: string, endings: readonly string[]])[] = [
  ['millimetre', 'millimeter', ['', 's']],
  ['centimetre', 'centimeter', ['', 's']],
  ['kilometre', 'kilometer', ['', 's']],
  ['litre', 'liter', ['', 's']],
  ['centre', 'center', ['', 's']],
  ['centred', 'centered', ['']],
  ['fibre', 'fiber', ['', 's']],
  ['colour', 'color', ['', 's', 'ed', 'ing', 'less']],
  ['vapour', 'vapor', ['', 's']],
  ['behaviour', 'behavior', ['']],
  ['neighbour', 'neighbor', ['', 's', 'ing']],
  ['labelled', 'labeled', ['']],
  ['labelling', 'labeling', ['']],
  ['grey', 'gray', ['', 's', 'er']],
  ['aluminium', 'aluminum', ['']],
  ['analyse', 'analyze', ['', 'd']],
  ['analysing', 'analyzing', ['']],
];

const pairs = stems.flatMap(([british, american, endings]) =>
  endings.map((ending) => [british + ending, american + ending] as const),
);

const toBritish: ReadonlyMap<string, string> = new Map(
  pairs.map(([british, american]) => [american, british]),
);

/** A meter is an instrument on both sides of the sea, a metre a length on one. */
const toAmerican: ReadonlyMap<string, string> = new Map([...pairs, ['metre', 'meter'], ['metres', 'meters']]);

/** Words in lower case: others may be names. */
const word = /(?<![\p{L}\p{N}])\p{Ll}{4,12}(?![\p{L}\p{N}])/gu;

/** Said once for a run of text. */
export const spelling: WordRule = (run, { american, saysLanguage, names }) => {
  if (!saysLanguage) return [];
  const wanted = american ? toAmerican : toBritish;
  const changes = [...run.text.matchAll(word)].flatMap(({ 0: written, index }) => {
    const text = wanted.get(written);
    if (text === undefined || names.has(written)) return [];
    return [{ run, from: index, to: index + written.length, text }];
  });
  const [first] = changes;
  if (first === undefined) return [];
  const language = american ? 'American' : 'British';
  const more = changes.length > 1 ? ' and so on' : '';
  return [
    found('spelling', first, {
      message: `The language of this sheet is ${language} English: ${first.text}.`,
      fixes: fix(`Write ${first.text}${more}`, changes, true),
    }),
  ];
};
