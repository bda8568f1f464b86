/** Which words may come next on a line of a block, from the parts of its forms that are still to be written. */
import type { FormPart } from '../../block/line-forms.ts';
import type { Progress } from '../line-progress.ts';

/** What stands before the cursor: tokens in lower case. */
type Tokens = readonly string[];

/** Words of the parts that may be written now, in the order of the forms. */
export function nextWords(progress: readonly Progress[], said: Tokens): readonly string[] {
  return [...new Set(progress.flatMap((one) => wordsOfForm(one, said)))];
}

/** Words that belong together of which the first are said, and what is left of each: `of` behind `right`. */
export function begunWords(
  words: readonly string[],
  said: Tokens,
): readonly { readonly word: string; readonly rest: string }[] {
  if (directionWords.includes(said.at(-2) ?? '')) return [];
  return words.flatMap((word) => {
    const tokens = word.split(' ');
    const at = tokens.lastIndexOf(said.at(-1) ?? '', -2);
    const begun = at >= 0 && tokens.slice(0, at + 1).every((token, i) => token === said.at(i - at - 1));
    return begun ? [{ word, rest: tokens.slice(at + 1).join(' ') }] : [];
  });
}

function wordsOfForm({ form, at, begun }: Progress, said: Tokens): readonly string[] {
  const { parts, word: line } = form;
  const late = parts
    .slice(0, at)
    .flatMap(({ words }) => Object.keys(words).filter((word) => afterthoughts[word]?.(said) === true));
  const here = parts[at];
  if (here === undefined) return late;
  const now = wordsOfPart(here, { begun, line, said });
  const mayEnd = begun
    ? isEndless(here, said) && !now.some((word) => inside[word] !== undefined)
    : here.optional;
  const following = mayEnd ? parts.slice(at + 1, followingEnd(parts, at)) : [];
  return [...late, ...now, ...following.flatMap((part) => wordsOfPart(part, { begun: false, line, said }))];
}

/** Behind the first part that cannot be left out. */
function followingEnd(parts: readonly FormPart[], at: number): number {
  const needed = parts.findIndex((part, i) => i > at && !part.optional);
  return needed < 0 ? parts.length : needed + 1;
}

/** As many values as are written: the part may end here, unless the last sign asks for more. */
function isEndless({ words, values }: FormPart, said: Tokens): boolean {
  return (
    [values, ...Object.values(words)].includes(Number.POSITIVE_INFINITY) &&
    !['(', '×', 'at', 'cells'].includes(said.at(-1) ?? '')
  );
}

interface Place {
  readonly said: Tokens;
  /** The part of the word is begun. */
  readonly begun: boolean;
  /** Word that begins the line. */
  readonly line: string;
}
type Rule = (place: Place) => boolean;

function wordsOfPart({ words }: FormPart, place: Place): readonly string[] {
  const begins = (word: string): boolean =>
    !place.begun || (place.line === 'draw' && !place.said.includes(word));
  return Object.keys(words).filter((word) => (inside[word] ?? (() => begins(word)))(place));
}

const directionWords = ['pointing', 'facing'];
const formats = ['a3', 'a4', 'a5', 'letter'];

const lastOf = ({ said }: Place): string => said.at(-1) ?? '';
const isUnit = (token: string): boolean => /^[\p{L}°]+$/u.test(token);

const behindPoint: Rule = ({ said, line }) =>
  ['at', 'from', 'to'].includes(said.at(-1) ?? '') &&
  said.at(-2) !== 'held' &&
  !(said.includes('on') && line !== 'probe');
const behindQuantity: Rule = ({ said, begun }) =>
  begun && isUnit(said.at(-1) ?? '') && /\d/u.test(said.at(-2) ?? '');
const behindDirection: Rule = ({ line, said }) =>
  directionWords.includes(said.at(-1) ?? '') ||
  (['row', 'move'].includes(line) && said.includes('from') && said.at(-1) !== 'to');
const behindFor: Rule = (place) => lastOf(place) === 'for';
const ofHole: Rule = (place) => (place.line === 'hole' ? lastOf(place) === 'disc' : !place.begun);
const never: Rule = () => false;

/** Words that do not begin a part but stand inside it, or that need something before them. */
const inside: Readonly<Record<string, Rule | undefined>> = {
  centre: behindPoint,
  'centre of': behindPoint,
  and: ({ said }) => said.at(-2) === 'between',
  'right of': behindQuantity,
  'left of': behindQuantity,
  above: behindQuantity,
  below: behindQuantity,
  wide: behindQuantity,
  high: never,
  'per square': (place) => /Ω$|^ohms?$/iu.test(lastOf(place)),
  along: (place) => lastOf(place) === 'square' || (place.line === 'probe' && behindQuantity(place)),
  facing: never,
  left: behindDirection,
  right: behindDirection,
  up: behindDirection,
  down: behindDirection,
  diameter: ofHole,
  radius: ofHole,
  landscape: never,
  portrait: never,
  pupils: behindFor,
  teachers: behindFor,
  technicians: behindFor,
  // Behind their number alone.
  steps: never,
  readings: never,
};

/** Words that add to a part which could end without them. */
const afterthoughts: Readonly<Record<string, ((said: Tokens) => boolean) | undefined>> = {
  landscape: (said) => formats.includes(said.at(-1) ?? ''),
  portrait: (said) => formats.includes(said.at(-1) ?? ''),
  facing: (said) => said.at(-3) === 'opening',
  high: (said) => isUnit(said.at(-1) ?? '') && (said.at(-3) === 'wide' || said.at(-4) === 'wide'),
};
