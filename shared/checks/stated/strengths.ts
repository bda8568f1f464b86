/** Field strengths that sentences state, at probes and between two bars, against the solution. */
import type { Finding } from '../../findings/finding.ts';
import type { Rule, Subject } from '../rule.ts';
import { barField } from './bars.ts';
import { agrees, differing, type Known } from './compare.ts';
import { placeOf } from './places.ts';
import type { Quantity } from './quantities.ts';
import { type Said, saidIn, written } from './said.ts';
import { type Atom, type Place, sign } from './skeleton.ts';
import { type Solution, strengthAt } from './solved.ts';
import { solutionsOf } from './subject.ts';

const { strength: E, spot: S, place: P } = sign;

const quantity = `(?:(?:electric )?field strength|strength(?: of the (?:electric )?field)?|(?:electric )?field|(?:potential )?gradient|slope|e)`;
const verb = `(?:is|=|≈|equals|is equal to|comes to|should be|must be|will be|has a strength of|has the strength|:)(?: (?:everywhere|therefore|constant at|constant:?))?`;
const barsWord = `(?:the )?(?:two |long |straight |parallel )*(?:bars|plates|electrodes)|them`;
const between = `(?:everywhere )?(?:between (?:the |bar |electrode )*(?:[${S}${P}] and (?:the |bar |electrode )*[${S}${P}]|${barsWord})|across the gap|in the gap|in the (?:middle|centre|center)(?: of the gap)?)`;
const ends = `(?= ?(?:$|[.;:,()\\]!\ufffc]|(?:and|but|because|since|so|everywhere|there|here|from|towards|pointing|=|≈)(?![\\p{L}])))`;

interface Form {
  readonly pattern: RegExp;
  /** What it speaks of. */
  readonly of: 'spot' | 'bars';
}

const forms: readonly Form[] = [
  {
    of: 'spot',
    pattern: new RegExp(
      `\\b${quantity} (?:at|near) (?:probe |point )?[${S}${P}],? ${verb} ?(${E})${ends}`,
      'gu',
    ),
  },
  {
    of: 'spot',
    pattern: new RegExp(
      `(?:at|,) ?(?:probe |point )?[${S}${P}],? (?:the |there )?${quantity} ?${verb} ?(${E})${ends}`,
      'gu',
    ),
  },
  { of: 'bars', pattern: new RegExp(`\\b${quantity},? ${between},? ${verb} ?(${E})${ends}`, 'gu') },
  {
    of: 'bars',
    pattern: new RegExp(
      `${between},? (?:the |a )?(?:uniform )?${quantity} ?(?:of|${verb}) ?(${E})${ends}`,
      'gu',
    ),
  },
  {
    of: 'bars',
    pattern: new RegExp(
      `(?:^|[.;:,(] ?|\\b(?:so|hence|therefore|thus|and|the|its) )(?:uniform )?${quantity} ?${verb} ?(${E})${ends}`,
      'gu',
    ),
  },
];

/** Another place than the gap as a whole, or another quantity. */
const elsewhere =
  /\b(?:near|close to|edges?|ends?|tips?|corners?|outside|behind|beyond|surface|first|last|mean|average|spikes?|rings?|discs?|point(?:s|ed)?|inside|hollow|centre of|air|space|breakdown|spark\w*|each|per|earth|lightning|cloud)\b/u;

export const statedStrengths: Rule = (subject) =>
  saidIn(subject, written.strength).flatMap((said) => {
    const seen = new Set<Quantity>();
    return forms.flatMap(({ pattern, of }) => {
      const { text, atoms } = of === 'bars' ? said.skeleton : said.places;
      return [...text.matchAll(pattern)].flatMap((match): readonly Finding[] => {
        const atom = atoms[match.index + match[0].indexOf(E)];
        if (atom?.kind !== 'quantity' || seen.has(atom.quantity)) return [];
        const place = of === 'bars' ? null : placeIn(match, atoms);
        if (of === 'bars' && (elsewhere.test(text) || new RegExp(`(?:at|near) [${S}${P}]`, 'u').test(text)))
          return [];
        seen.add(atom.quantity);
        return said.asserts(atom.quantity.from) ? judged(atom.quantity, place, said, subject) : [];
      });
    });
  });

function placeIn({ 0: whole, index }: RegExpExecArray, atoms: readonly (Atom | null)[]): Place | null {
  const at = whole.search(new RegExp(`[${S}${P}]`, 'u'));
  return placeOf(atoms[index + at] ?? null);
}

function judged(stated: Quantity, place: Place | null, said: Said, subject: Subject): readonly Finding[] {
  const solved = solutionsOf(subject, said.setups);
  const known = solved?.map((one) => (place === null ? betweenBars(one, stated) : atPlace(place, one))) ?? [];
  const [first] = known;
  const size = positive(stated);
  if (first === undefined || first === null || known.some((one) => one === null || agrees(size, one)))
    return [];
  const values = known.flatMap((one) => one?.values[0] ?? []);
  if (Math.max(...values) - Math.min(...values) > Math.max(stated.half, 1e-3 * Math.max(...values)))
    return [];
  const told =
    place === null
      ? 'The field between the bars is'
      : place.kind === 'spot'
        ? `The field at ${place.name} is`
        : 'The field there is';
  return [
    differing({ code: 'stated-strength', sentence: said, quantity: size, known: first, subject: told }),
  ];
}

/** A gradient has a sign that a strength has not. */
const positive = (stated: Quantity): Quantity =>
  stated.high < 0 ? { ...stated, low: -stated.high, high: -stated.low } : stated;

/** Gradients converge more slowly than potentials: solved strengths stand to this part. */
const openPart = 0.005;

function atPlace(place: Place, solved: Solution): Known | null {
  const value = strengthAt(place, solved);
  return value === null ? null : { values: [value], uncertainty: openPart * value, blur: 0, nought: 0.5 };
}

/** Anything from the weakest to the strongest place between the bars may be meant. */
export function betweenBars(solved: Solution, { low }: Quantity): Known | null {
  const field = barField(solved);
  if (field === null) return null;
  const nearest = Math.min(field.high, Math.max(field.low, Math.abs(low)));
  return {
    values: [nearest === Math.abs(low) ? nearest : field.mean, nearest],
    uncertainty: openPart * field.mean,
    blur: 0,
    nought: 0.5,
  };
}
