/** What may stand next on a line of a block, from the words before the cursor. */
import { readLines } from '../../block/parse.ts';
import { remarkAt, tokenAt } from '../../block/tokens.ts';
import type { Block } from '../../block/tree.ts';
import type { Word } from '../../block/word.ts';
import { formsOf, words, wordsOf } from '../../block/words.ts';
import type { Draft } from '../../checks/examine.ts';
import { catalogue } from '../../findings/catalogue.ts';
import type { Dimension } from '../../quantity/quantity.ts';
import { dimensionWords } from '../../quantity/read.ts';
import { usualUnits } from '../../quantity/units.ts';
import { type Progress, progressOf } from '../line-progress.ts';
import type { BlockPlace } from '../place.ts';
import { wordEntry, wordHelp } from '../words.ts';
import { type Offer, offer } from './completion.ts';
import { type Known, knownNames } from './known-names.ts';
import { linePattern } from './line-pattern.ts';
import { dimensionsAfter, type LineWords, lineWords } from './line-words.ts';
import { begunWords, nextWords } from './next-words.ts';

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
  { number, block, line }: BlockPlace,
  before: string,
): readonly Offer[] {
  if (remarkAt(before) < before.length) return remarkOffers(before);
  const setup = setups[number];
  if (setup === undefined) return [];
  const names = knownNames(setup, block);
  const { said, typing } = tokensIn(before);
  const [first] = said;
  if (first === undefined) return firstWords(names, block);
  const known = Object.keys(lineWords).find((word) => formsOf(word).some(([form]) => form === first));
  const words = known === undefined ? undefined : lineWords[known];
  if (known === undefined || words === undefined) return [];
  const on: OnLine = { known, words, said, names };
  if (/^[\d.]+$/u.test(said.at(-1) ?? '')) return afterNumber(on);
  const reader = line === null ? undefined : readLines(block.excerpt)[line]?.reader;
  return afterWord(on, reader === undefined ? [] : progressOf(reader.pieces, typing));
}

/** A line of which something is said. */
interface OnLine {
  /** The word that begins it. */
  readonly known: string;
  readonly words: LineWords;
  /** Tokens before the one that is being typed, in lower case. */
  readonly said: readonly string[];
  readonly names: readonly Known[];
}

/** `typing`: where the word that is being typed begins. */
function tokensIn(before: string): { readonly said: readonly string[]; readonly typing: number } {
  const said: string[] = [];
  for (let token = tokenAt(before, 0); token.kind !== 'end'; token = tokenAt(before, token.to)) {
    if (token.kind === 'word' && token.to === before.length) return { said, typing: token.from };
    said.push(token.text.toLowerCase());
  }
  return { said, typing: before.length };
}

function firstWords(names: readonly Known[], { head, statements }: Block): readonly Offer[] {
  const varies = head.like !== null;
  const written = new Set<string>(statements.map(({ kind }) => kind));
  const begins = words.filter(({ role }) => role === 'statement' || role === 'shape');
  const wanted = begins.filter(
    ({ word }) => (varies || !varying.includes(word)) && !(onceOnly.includes(word) && written.has(word)),
  );
  const rank = ({ word }: Word): number =>
    likeliest.includes(word) ? likeliest.indexOf(word) : likeliest.length;
  return wanted
    .sort((a, b) => rank(a) - rank(b))
    .map((word) => ({ ...wordOffer(word), text: linePattern(word, names) }));
}

/** Words of lines that only a block like another one has. */
const varying = ['change', 'move', 'without', 'reverse'];
/** Words of lines of which a block has one. */
const onceOnly = ['paper', 'supply', 'meter', 'copper', 'equipotentials', 'field-lines', 'reverse'];
/** The order in which a block is written; the others follow. */
const likeliest = [
  ...varying,
  'paper',
  'supply',
  'meter',
  ...wordsOf('shape'),
  'row',
  'probe',
  'equipotentials',
  'field-lines',
  'draw',
];

function afterNumber({ known, words: { counted, numbers }, said }: OnLine): readonly Offer[] {
  const counts = (counted ?? []).filter((word) => countedBehind(word, known, said));
  if (counts.length > 0) return wordOffers(counts, known);
  const dimension = dimensionBefore(said);
  return (dimension === null ? numbers : [dimension]).flatMap((one) =>
    usualUnits[one].map((unit) => offer('unit', unit, dimensionWords[one])),
  );
}

/** `supply 2 cells`, `in 5 steps`, `11 readings`. */
function countedBehind(word: string, known: string, said: readonly string[]): boolean {
  if (known === 'supply') return said.length === 2;
  const behind = said.at(-2) ?? '';
  return word === 'steps'
    ? behind === 'in'
    : !['in', 'every', 'at', ',', '('].includes(behind) && said.includes('to');
}

/** What a number is by the last word before it that says so. */
function dimensionBefore(said: readonly string[]): Dimension | null {
  for (let at = said.length - 1; at > 0; at--) {
    const word = said[at] ?? '';
    if (word === 'at' && said[at - 1] === 'held') return 'potential';
    const dimension = dimensionsAfter.get(word);
    if (dimension !== undefined) return dimension;
  }
  return null;
}

function afterWord(
  { known, words: line, said, names }: OnLine,
  progress: readonly Progress[],
): readonly Offer[] {
  const isNew = said.length === 1 && line.gives === true;
  if (isNew) return [];
  const wanted = said.length === 1 ? line.names : namesAfter(said);
  const named = names
    .filter(({ kind }) => wanted === kind || wanted === 'any')
    .map(({ name, kind }) => offer('name', name, kind));
  const begun = said.length > 2 || line.gives !== true ? begunWords(line.words, said) : [];
  const rests = begun.flatMap(({ word, rest }) =>
    wordOffers([word], known).map((one) => ({ ...one, label: rest, text: rest })),
  );
  // Behind `centre` and `at` one or another thing may stand; behind `right`, `joined to` and the like that alone.
  const last = said.at(-1) ?? '';
  const only = rests.length > 0 ? last !== 'centre' : named.length > 0 && !points.includes(last);
  return [...named, ...rests, ...(only ? [] : wordOffers(nextOf(progress, { known, said, names }), known))];
}

const points = ['at', 'from', 'to'];

/** A move takes the form of what is moved. */
function nextOf(
  progress: readonly Progress[],
  { known, said, names }: Pick<OnLine, 'known' | 'said' | 'names'>,
): readonly string[] {
  const next = nextWords(progress, said).filter((word) => word !== 'cell' || said.length === 1);
  if (known !== 'move' || said.length !== 2) return next;
  const kinds = names.filter(({ name }) => name.toLowerCase() === said[1]).map(({ kind }) => kind);
  return next.filter((word) =>
    kinds.some((kind) =>
      kind === 'row' ? word === 'from' : kind === 'probe' ? word === 'at' : word !== 'from',
    ),
  );
}

/** What a name behind the last word is of. Behind `at` and `along` stands a name only on the line of a probe: that of a row. */
function namesAfter(said: readonly string[]): Known['kind'] | undefined {
  const [first = '', last = ''] = [said[0], said.at(-1)];
  if (last === 'at' || last === 'along') return first === 'probe' ? 'row' : undefined;
  if (last === 'from' || (last === 'to' && said.at(-2) !== 'joined')) {
    return first === 'row' || first === 'move' ? 'electrode' : undefined;
  }
  const sides = ['above', 'below', 'between', 'and', 'of', 'on', 'to'];
  return sides.includes(last) ? 'electrode' : undefined;
}

function wordOffers(list: readonly string[], of: string): readonly Offer[] {
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
