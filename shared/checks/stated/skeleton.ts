/**
 * A sentence reduced to what its form is made of: small letters, one sign for each quantity by its kind, for each name of the setups
 * and for each phrase that names a place. Forms of statements are then short patterns over skeletons.
 */
import type { Measure } from '../prose/lexicon.ts';
import { type Quantity, quantitiesIn } from './quantities.ts';

/** Signs from the private use area: no text has them. */
export const sign = {
  potential: '\ue001',
  current: '\ue002',
  resistance: '\ue003',
  strength: '\ue004',
  sheet: '\ue005',
  length: '\ue006',
  other: '\ue007',
  /** A probe or an electrode. */
  spot: '\ue010',
  row: '\ue011',
  place: '\ue012',
} as const;

export type Place =
  | { readonly kind: 'spot'; readonly name: string }
  /** The electrode at this terminal, or of this shape, where there is one. */
  | { readonly kind: 'terminal'; readonly of: 'positive' | 'negative' }
  | { readonly kind: 'shape'; readonly of: string }
  | {
      readonly kind: 'from';
      readonly distance_mm: number;
      readonly of: Place;
      readonly centre: boolean;
      readonly row: string | null;
    }
  | { readonly kind: 'along'; readonly distance_mm: number; readonly row: string }
  /** From the centre that a row starts from. */
  | { readonly kind: 'radius'; readonly distance_mm: number }
  /** Names, or the two that there are. */
  | { readonly kind: 'midway'; readonly between: readonly [Place, Place] | null }
  | { readonly kind: 'middle'; readonly of: 'paper' | 'any' }
  | { readonly kind: 'middle of row'; readonly row: string }
  | { readonly kind: 'centre'; readonly of: Place }
  | { readonly kind: 'inside'; readonly of: Place };

export type Atom =
  | { readonly kind: 'quantity'; readonly quantity: Quantity }
  | { readonly kind: 'spot' | 'row'; readonly name: string }
  | { readonly kind: 'place'; readonly place: Place };

export interface Skeleton {
  readonly text: string;
  /** For each character what it stands for, and where that begins in the sentence. */
  readonly atoms: readonly (Atom | null)[];
  readonly offsets: readonly number[];
}

export interface Names {
  readonly spots: ReadonlySet<string>;
  readonly rows: ReadonlySet<string>;
}

export function skeletonOf(text: string, names: Names): Skeleton {
  const cast = new Cast();
  const named = namesIn(text, names);
  const pieces = [
    ...quantitiesIn(text).map((quantity) => ({ from: quantity.from, to: quantity.to, quantity })),
    ...named,
  ]
    .filter(
      (piece, _, all) =>
        'quantity' in piece || !all.some((q) => 'quantity' in q && q.from < piece.to && piece.from < q.to),
    )
    .sort((a, b) => a.from - b.from);
  let at = 0;
  for (const piece of pieces) {
    if (piece.from < at) continue;
    cast.words(text.slice(at, piece.from), at);
    if ('quantity' in piece)
      cast.atom(signOf(piece.quantity.measure), { kind: 'quantity', quantity: piece.quantity }, piece.from);
    else
      cast.atom(
        piece.kind === 'spot' ? sign.spot : sign.row,
        { kind: piece.kind, name: piece.name },
        piece.from,
      );
    at = piece.to;
  }
  cast.words(text.slice(at), at);
  return { text: cast.text, atoms: cast.atoms, offsets: cast.offsets };
}

function signOf(measure: Measure): string {
  return measure === 'potential' ||
    measure === 'current' ||
    measure === 'resistance' ||
    measure === 'strength' ||
    measure === 'sheet' ||
    measure === 'length'
    ? sign[measure]
    : sign.other;
}

class Cast {
  text = '';
  readonly atoms: (Atom | null)[] = [];
  readonly offsets: number[] = [];

  atom(mark: string, atom: Atom, from: number): void {
    this.text += mark;
    this.atoms.push(atom);
    this.offsets.push(from);
  }

  words(part: string, from: number): void {
    for (let i = 0; i < part.length; i++) {
      const found = part.charAt(i);
      const blank = /[\s\u00a0\u202f\u2009]/u.test(found);
      if (blank && /\s$/u.test(this.text)) continue;
      this.text += blank ? ' ' : small(found);
      this.atoms.push(null);
      this.offsets.push(from + i);
    }
  }
}

/** One character stays one: some capitals are two when small. */
function small(found: string): string {
  const lower = found.toLowerCase();
  return lower === '’' ? "'" : lower.length === 1 ? lower : found;
}

type Named = {
  readonly from: number;
  readonly to: number;
  readonly kind: 'spot' | 'row';
  readonly name: string;
};

/** A name is a word, or the index of a quantity: `V_M`, `V(M)`. */
const word = /(?<![\p{L}\p{N}.’'-])\p{L}[\p{L}\p{N}-]*|(?<=\p{L}_)\p{L}[\p{L}\p{N}-]*/gu;

function namesIn(text: string, { spots, rows }: Names): readonly Named[] {
  return [...text.matchAll(word)].flatMap(({ 0: name, index }): readonly Named[] => {
    const [spot, row] = [spots.has(name), rows.has(name)];
    if (spot === row || /^_/u.test(text.slice(index + name.length))) return [];
    return [{ from: index, to: index + name.length, kind: spot ? 'spot' : 'row', name }];
  });
}
