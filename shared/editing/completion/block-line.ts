/** What may stand next on a line of a block, from the words before the cursor. */
import { remarkAt, tokenAt } from '../../block/tokens.ts';
import type { Block } from '../../block/tree.ts';
import type { Word } from '../../block/word.ts';
import { formsOf, words } from '../../block/words.ts';
import type { Draft } from '../../checks/examine.ts';
import { catalogue } from '../../findings/catalogue.ts';
import type { Dimension } from '../../quantity/quantity.ts';
import { dimensionWords } from '../../quantity/read.ts';
import { usualUnits } from '../../quantity/units.ts';
import type { Setup } from '../../setup/setup.ts';
import type { BlockPlace } from '../place.ts';
import { wordEntry, wordHelp } from '../words.ts';
import { type Offer, offer } from './completion.ts';
import { linePattern } from './line-pattern.ts';
import { dimensionsAfter, type LineWords, lineWords } from './line-words.ts';

/** On the opening line: `like`, and behind it the other setups. */
export function headOffers(
  { setups }: Pick<Draft, 'setups'>,
  { number }: Pick<BlockPlace, 'number'>,
  before: string,
): readonly Offer[] {
  const said = before.trim().split(/\s+/u);
  if (/\blike\s+\S*$/u.test(before)) {
    return setups.filter(({ block }) => block !== number).map(({ name }) => offer('name', name, 'setup'));
  }
  return said.length <= 2 && setups.length > 1
    ? words.filter(({ word }) => word === 'like').map(wordOffer)
    : [];
}

export function lineOffers(
  { setups }: Pick<Draft, 'setups'>,
  { number, block }: Pick<BlockPlace, 'number' | 'block'>,
  before: string,
): readonly Offer[] {
  if (remarkAt(before) < before.length) return remarkOffers(before);
  const setup = setups[number];
  if (setup === undefined) return [];
  const names = knownNames(setup, block);
  const said = saidBefore(before);
  const [first] = said;
  if (first === undefined) return firstWords(names, block.head.like !== null);
  const known = firstWordsOf.find((word) => formsOf(word).some(([form]) => form === first));
  const line = known === undefined ? undefined : lineWords[known];
  if (known === undefined || line === undefined) return [];
  const last = said.at(-1) ?? '';
  if (/^[\d.]+$/u.test(last)) return afterNumber(line, said);
  return afterWord(names, known, line, said);
}

const firstWordsOf = Object.keys(lineWords);

/** Tokens before the one that is being typed, in lower case; names keep theirs. */
function saidBefore(before: string): readonly string[] {
  const said: string[] = [];
  for (let token = tokenAt(before, 0); token.kind !== 'end'; token = tokenAt(before, token.to)) {
    const typing = token.kind === 'word' && token.to === before.length;
    if (!typing) said.push(token.text.toLowerCase());
  }
  return said;
}

function firstWords(names: readonly Known[], varies: boolean): readonly Offer[] {
  const taken = new Set(names.map(({ name }) => name));
  const begins = words.filter(({ role }) => role === 'statement' || role === 'shape');
  return begins
    .filter(({ word }) => varies || !varying.includes(word))
    .map((word) => ({ ...wordOffer(word), text: linePattern(word, taken) }));
}

/** Words of lines that only a block like another one has. */
const varying = ['change', 'move', 'without', 'reverse'];

function afterNumber(line: LineWords, said: readonly string[]): readonly Offer[] {
  const wanted = dimensionOf(line, said);
  const units = wanted.flatMap((dimension) =>
    usualUnits[dimension].map((unit) => offer('unit', unit, dimensionWords[dimension])),
  );
  const counted = (line.counted ?? []).flatMap((word) => wordOffers([word], said[0] ?? null));
  return [...counted, ...units];
}

/** Of the last word before the number that says so; else what the line counts in. */
function dimensionOf(line: LineWords, said: readonly string[]): readonly Dimension[] {
  for (const word of [...said].reverse()) {
    const dimension = dimensionsAfter[word];
    if (dimension !== undefined) return [dimension];
  }
  return line.numbers;
}

function afterWord(
  all: readonly Known[],
  known: string,
  line: LineWords,
  said: readonly string[],
): readonly Offer[] {
  if (said.length === 1 && line.gives === true) return [];
  const last = said.at(-1) ?? '';
  const wanted = said.length === 1 ? line.names : namesAfter(last, said);
  const names = all
    .filter(({ kind }) => wanted === kind || wanted === 'any')
    .map(({ name, kind }) => offer('name', name, kind));
  const fitting = line.words
    .filter((word) => line.counted?.includes(word) !== true || known === 'supply')
    .flatMap((word) => wordEntry(word, { first: false, of: known }) ?? [])
    .filter(({ role }) => known !== 'draw' || (role === 'audience') === (last === 'for'));
  return [...names, ...fitting.map(wordOffer)];
}

interface Known {
  readonly name: string;
  readonly kind: 'electrode' | 'probe' | 'row';
}

/** Names of the setup, and those that the block gives to what has no place yet. */
function knownNames({ electrodes, probes, rows }: Setup, { statements }: Block): readonly Known[] {
  const inSetup: readonly Known[] = [
    ...electrodes.map(({ name }) => ({ name, kind: 'electrode' as const })),
    ...probes.map(({ name }) => ({ name, kind: 'probe' as const })),
    ...rows.map(({ name }) => ({ name, kind: 'row' as const })),
  ];
  const given = statements.flatMap((statement): readonly Known[] => {
    if (statement.kind === 'shape') return [{ name: statement.name.text, kind: 'electrode' }];
    if (statement.kind === 'probe' || statement.kind === 'row') {
      return [{ name: statement.name.text, kind: statement.kind }];
    }
    return [];
  });
  return [...inSetup, ...given];
}

/** What a name behind a word is of. Behind `at` and `along` stands a name only on the line of a probe: that of a row. */
function namesAfter(last: string, said: readonly string[]): Known['kind'] | undefined {
  if (last === 'at' || last === 'along') return said[0] === 'probe' ? 'row' : undefined;
  return beforeElectrode.includes(last) ? 'electrode' : undefined;
}

const beforeElectrode = ['from', 'to', 'of', 'on', 'above', 'below', 'between', 'and'];

function wordOffers(list: readonly string[], of: string | null): readonly Offer[] {
  return list.flatMap((word) => {
    const entry = wordEntry(word, { first: false, of });
    return entry === null ? [] : [wordOffer(entry)];
  });
}

const wordOffer = (entry: Word): Offer => offer('word', entry.word, entry.help, { help: wordHelp(entry) });

/** `# allow CODE because`. */
function remarkOffers(before: string): readonly Offer[] {
  if (!/#\s*allow\s+[a-z-]*$/u.test(before)) return [];
  return Object.entries(catalogue).map(([code, { meaning }]) =>
    offer('value', code, meaning, { text: `${code} because ` }),
  );
}
