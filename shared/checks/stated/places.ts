/** Phrases that name a place, in a skeleton: "30 mm from N", "half-way between the bars", "inside the ring". */
import type { Atom, Place, Skeleton } from './skeleton.ts';
import { sign } from './skeleton.ts';

const { spot: S, row: R, length: L, place: P } = sign;

interface Phrase {
  readonly pattern: RegExp;
  readonly place: (parts: Parts) => Place | null;
}

/** Atoms of a match in their order, and its words. */
interface Parts {
  readonly lengths_mm: readonly number[];
  readonly places: readonly Place[];
  readonly rows: readonly string[];
  readonly words: string;
}

const shapes =
  '(?:hollow |copper |metal |closed |straight |triangular |rectangular |pointed )*(ring|disc|disk|box|bar|plate|spike|prong|electrode|strip)';
const one = `(?:probe |point |electrode |bar |plate |ring |disc |disk |spike |prong |box )?[${S}${P}]`;
const both =
  '(?:the )?(?:two |long |straight |copper )*(?:bars|plates|electrodes|strips|pieces of metal)|them';

/** In this order, each over what the ones before have left. */
const phrases: readonly Phrase[] = [
  {
    pattern:
      /the (positive|negative) (?:bar|plate|electrode|disc|disk|ring|spike|strip|box|prong|terminal)/gu,
    place: ({ words }) => ({ kind: 'terminal', of: words.includes('positive') ? 'positive' : 'negative' }),
  },
  {
    pattern: new RegExp(
      `(?:the )${shapes}(?! (?:${S}|resistance|meter|paper|at (?:the|one)|with|on the|nearest|in the|to the|from))(?![\\p{L}'])`,
      'gu',
    ),
    place: ({ words }) => {
      const of = /\S+$/u.exec(words)?.[0] ?? '';
      return of === 'electrode' ? null : { kind: 'shape', of };
    },
  },
  {
    pattern: new RegExp(
      `(?:(?:a|the|any) (?:point|place|spot|distance of) )?${L} (?:away )?from (?:the )?(?:(edge|inner edge|near edge|facing edge|tip|end|point|centre|center|middle) of )?(?:the )?${one}(?: (?:along|on) (?:the )?(?:row |line )?${R})?`,
      'gu',
    ),
    place: ({ lengths_mm: [distance_mm], places: [of], rows: [row], words }) =>
      distance_mm === undefined || of === undefined
        ? null
        : {
            kind: 'from',
            distance_mm,
            of,
            centre: /centre of|center of|middle of/u.test(words),
            row: row ?? null,
          },
  },
  {
    pattern: new RegExp(
      `${L} (?:along|on|from the (?:start|beginning|first point) of) (?:the )?(?:row |line )?${R}|(?:on |along )?(?:the )?(?:row |line )?${R},? (?:at|reading at) ${L}|at ${L} (?:along|on) (?:the )?(?:row |line )?${R}`,
      'gu',
    ),
    place: ({ lengths_mm: [distance_mm], rows: [row] }) =>
      distance_mm === undefined || row === undefined ? null : { kind: 'along', distance_mm, row },
  },
  {
    pattern: new RegExp(`(?:where )?r ?= ?${L}|(?:a )?radius (?:of )?${L}`, 'gu'),
    place: ({ lengths_mm: [distance_mm] }) =>
      distance_mm === undefined ? null : { kind: 'radius', distance_mm },
  },
  {
    pattern: new RegExp(
      `(?:half[ -]?way|mid[ -]?way|(?:in )?the (?:very )?(?:middle|mid-?point|centre|center)) between (?:(?:the )?${one} and (?:the )?${one}|${both})`,
      'gu',
    ),
    place: ({ places: [a, b] }) => ({
      kind: 'midway',
      between: a === undefined || b === undefined ? null : [a, b],
    }),
  },
  {
    pattern: new RegExp(
      `(?:half[ -]?way|mid[ -]?way) (?:along|down) (?:the )?(?:row |line )?${R}|the (?:middle|mid-?point|centre|center) of (?:the )?(?:row |line )?${R}`,
      'gu',
    ),
    place: ({ rows: [row] }) => (row === undefined ? null : { kind: 'middle of row', row }),
  },
  {
    pattern: new RegExp(`the (?:very )?(?:middle|centre|center) of (?:the )?${one}`, 'gu'),
    place: ({ places: [of] }) => (of === undefined ? null : { kind: 'centre', of }),
  },
  {
    pattern: new RegExp(`(?:inside|within|in the (?:hollow|inside) of) (?:the )?${one}`, 'gu'),
    place: ({ places: [of] }) => (of === undefined ? null : { kind: 'inside', of }),
  },
  {
    pattern:
      /the (?:(?:very )?(?:middle|mid-?point|centre|center) of the (?:gap|line)|mid-?line)(?![\p{L}'])/gu,
    place: () => ({ kind: 'midway', between: null }),
  },
  {
    pattern:
      /the (?:very )?(?:middle|centre|center)(?: of the (paper|sheet|board))?(?! (?:of|third|part|region|line|row|bar|ring|electrode|column|value|reading|one|set))(?![\p{L}'-])/gu,
    place: ({ words }) => ({ kind: 'middle', of: /paper|sheet|board/u.test(words) ? 'paper' : 'any' }),
  },
  {
    pattern:
      /(?:half[ -]?way|mid[ -]?way)(?! (?:between|along|to|from|up|down|in|through|round))(?![\p{L}'-])/gu,
    place: () => ({ kind: 'middle', of: 'any' }),
  },
];

export function withPlaces(skeleton: Skeleton): Skeleton {
  let found = skeleton;
  for (const { pattern, place } of phrases) {
    const matches = [...found.text.matchAll(pattern)];
    for (const { 0: words, index } of matches.reverse()) {
      const made = place(partsOf(found, index, words));
      if (made !== null && wholeWord(found.text, index)) found = replaced(found, index, words.length, made);
    }
  }
  return found;
}

const wholeWord = (text: string, index: number): boolean => !/[\p{L}\p{N}-]/u.test(text.charAt(index - 1));

function partsOf({ atoms }: Skeleton, index: number, words: string): Parts {
  const inside = atoms.slice(index, index + words.length).filter((atom) => atom !== null);
  return {
    words,
    lengths_mm: inside.flatMap((atom) => lengthOf(atom) ?? []),
    places: inside.flatMap((atom) => placeOf(atom) ?? []),
    rows: inside.flatMap((atom) => (atom.kind === 'row' ? [atom.name] : [])),
  };
}

/** A plain length; "less than 5 mm" is no place. */
function lengthOf(atom: Atom): number | null {
  if (atom.kind !== 'quantity' || atom.quantity.form !== 'value' || atom.quantity.about) return null;
  return atom.quantity.low;
}

export function placeOf(atom: Atom | null): Place | null {
  if (atom?.kind === 'place') return atom.place;
  return atom?.kind === 'spot' ? { kind: 'spot', name: atom.name } : null;
}

function replaced({ text, atoms, offsets }: Skeleton, from: number, length: number, place: Place): Skeleton {
  const to = from + length;
  return {
    text: text.slice(0, from) + P + text.slice(to),
    atoms: [...atoms.slice(0, from), { kind: 'place', place }, ...atoms.slice(to)],
    offsets: [...offsets.slice(0, from), offsets[from] ?? 0, ...offsets.slice(to)],
  };
}
