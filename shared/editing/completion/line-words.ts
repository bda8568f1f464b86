/** Which words, names and units may stand on the lines of a block, by the word that begins the line. */
import { lineForms } from '../../block/line-forms.ts';
import type { Dimension } from '../../quantity/quantity.ts';

export interface LineWords {
  /** In the order of the forms of the line. */
  readonly words: readonly string[];
  /** What a number is, where no word before it says so; the likeliest first. */
  readonly numbers: readonly Dimension[];
  /** Words that follow a number without a unit: behind the first word of the line, behind `in`, or elsewhere. */
  readonly counted?: readonly string[];
  /** The line gives a new name behind its first word. */
  readonly gives?: true;
  /** What the name behind the first word is of. */
  readonly names?: 'electrode' | 'any';
}

type Besides = Omit<LineWords, 'words'>;

const lengths: Besides = { numbers: ['length'] };
const given: Besides = { numbers: ['length'], gives: true };
const readings = ['readings', 'steps'];

const besides: Readonly<Record<string, Besides>> = {
  paper: { numbers: ['length', 'resistance'] },
  supply: { numbers: ['potential'], counted: ['cell'] },
  meter: { numbers: ['resistance'] },
  clip: { numbers: ['resistance'], names: 'electrode' },
  contact: { numbers: ['contact'], names: 'electrode' },
  lifted: { numbers: ['length'], names: 'electrode' },
  hole: lengths,
  slit: lengths,
  painted: lengths,
  copper: lengths,
  probe: given,
  row: { numbers: ['length'], counted: readings, gives: true },
  equipotentials: { numbers: ['potential'] },
  'field-lines': { numbers: [] },
  draw: lengths,
  change: { numbers: ['potential'], names: 'electrode' },
  move: { numbers: ['length'], counted: readings, names: 'any' },
  without: { numbers: ['length'], names: 'any' },
  reverse: lengths,
  bar: given,
  disc: given,
  ring: given,
  box: given,
  spike: given,
  prong: given,
  outline: given,
  strip: given,
};

export const lineWords: Readonly<Record<string, LineWords>> = Object.fromEntries(
  Object.entries(besides).map(([word, line]) => [word, { words: wordsOn(word), ...line }]),
);

/** Words that the forms of a line have. */
function wordsOn(first: string): readonly string[] {
  const forms = lineForms.filter(({ word }) => word === first);
  return [...new Set(forms.flatMap(({ parts }) => parts.flatMap((part) => Object.keys(part.words))))];
}

/** What a number is behind a word; the last such word before it counts. */
export const dimensionsAfter: ReadonlyMap<string, Dimension> = new Map<string, Dimension>([
  ['internal', 'resistance'],
  ['limit', 'current'],
  ['resolution', 'potential'],
  ['range', 'potential'],
  ['turned', 'angle'],
  ['pointing', 'angle'],
  ['facing', 'angle'],
  ...['tip', 'at', 'diameter', 'radius', 'wall', 'opening', 'base', 'length', 'width'].map(
    (word) => [word, 'length'] as const,
  ),
]);
