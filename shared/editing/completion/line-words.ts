/** Which words, names and units may stand on the lines of a block, by the word that begins the line. */
import type { WordRole } from '../../block/word.ts';
import type { Dimension } from '../../quantity/quantity.ts';

export interface LineWords {
  readonly words: readonly string[];
  readonly roles: readonly WordRole[];
  /** What a number is, where no word before it says so; the likeliest first. */
  readonly numbers: readonly Dimension[];
  /** Words that follow a number without a unit. */
  readonly counted?: readonly string[];
  /** The line gives a new name behind its first word. */
  readonly gives?: true;
  /** What the name behind the first word is of. */
  readonly names?: 'electrode' | 'any';
}

const line = (words: readonly string[], more: Partial<LineWords> = {}): LineWords => ({
  words,
  roles: [],
  numbers: ['length'],
  ...more,
});
const shape = (...words: readonly string[]): LineWords =>
  line(words, { roles: ['place', 'terminal', 'direction'], gives: true });

export const lineWords: Readonly<Record<string, LineWords>> = {
  paper: line(['per square', 'along'], { roles: ['format'], numbers: ['length', 'resistance'] }),
  supply: line(['internal', 'limit', 'ac', 'size'], {
    roles: ['source', 'chemistry'],
    numbers: ['potential'],
    counted: ['cell'],
  }),
  meter: line(['resolution', 'range', 'probe tip', 'black lead on'], { numbers: ['resistance'] }),
  clip: line([], { numbers: ['resistance'], names: 'electrode' }),
  contact: line([], { numbers: ['contact'], names: 'electrode' }),
  lifted: line(['at', 'turned', 'centre', 'centre of'], { names: 'electrode' }),
  hole: line(['disc', 'outline', 'diameter', 'radius', 'at', 'turned', 'centre', 'centre of']),
  slit: line(['from', 'to', 'centre', 'centre of']),
  painted: line(['at', 'turned', 'centre', 'centre of', 'per square']),
  copper: line([]),
  probe: line(['at', 'centre', 'centre of', 'along'], { gives: true }),
  row: line(['from', 'to', 'every', 'in', 'at', 'centre', 'centre of'], {
    roles: ['direction'],
    counted: ['readings', 'steps'],
    gives: true,
  }),
  equipotentials: line(['every', 'to'], { numbers: ['potential'] }),
  'field-lines': line([], { numbers: [] }),
  draw: line(['for'], { roles: ['part'] }),
  change: line([], { roles: ['terminal'], names: 'electrode', numbers: ['potential'] }),
  move: line(['from', 'to', 'every', 'in'], {
    roles: ['place', 'direction'],
    counted: ['readings', 'steps'],
    names: 'any',
  }),
  without: line([], { names: 'any' }),
  reverse: line(['supply']),
  bar: shape('wide', 'high'),
  disc: shape('diameter', 'radius'),
  ring: shape('diameter', 'inside diameter', 'wall', 'opening', 'facing'),
  box: shape('wall', 'opening', 'facing', 'wide', 'high'),
  spike: shape('base', 'length', 'tip radius'),
  prong: shape('wide', 'long'),
  outline: shape(),
  strip: shape('width'),
};

/** What a number is behind a word; the last such word before it counts. */
export const dimensionsAfter: Readonly<Record<string, Dimension>> = {
  internal: 'resistance',
  limit: 'current',
  resolution: 'potential',
  range: 'potential',
  tip: 'length',
  held: 'potential',
  turned: 'angle',
  pointing: 'angle',
  facing: 'angle',
  at: 'length',
  diameter: 'length',
  radius: 'length',
  wall: 'length',
  opening: 'length',
  base: 'length',
  length: 'length',
  width: 'length',
};
