/** Readings that sentences state, at probes, on electrodes and at places, against the solution. */
import type { Finding } from '../../findings/finding.ts';
import { readingStep } from '../../setup/shown-reading.ts';
import type { Rule, Subject } from '../rule.ts';
import { agrees, differing, type Known } from './compare.ts';
import { placeOf } from './places.ts';
import type { Quantity } from './quantities.ts';
import { type Said, saidIn, written } from './said.ts';
import { type Place, type Skeleton, sign } from './skeleton.ts';
import { emfOf, type PotentialAt, potentialAt, type Solution } from './solved.ts';
import { namesOf, solutionsOf } from './subject.ts';

const { potential: V, spot: S, place: P } = sign;

const noun = `(?:(?:volt|multi)?meter(?: reading)?|probe|reading|(?:electric )?potential(?: difference)?|voltage|p\\.d\\.|value|display)`;
const shows = `(?:there |here |also |always )?(?:reads|shows|gives|displays|is|is at|stands at|sits at|lies at|floats at|is held at|takes|will be|will be at|will read|will show|should be|should be at|should read|should show|must be|must be at|must read|has to be|has a potential of|has the potential|comes to|comes out (?:at|as)|ends up at|is equal to|equals|=|:|≈|→)(?: (?:at|everywhere|exactly|therefore|always))?`;
const find = `(?:(?:should|will|must|can) )?(?:also )?(?:read|find|see|get|measure|expect|obtain|have)`;
const probe = `(?:the )?(?:probe |point |electrode |bar |plate |ring |disc |disk |spike |prong |box )?`;
const X = `${probe}([${S}${P}])`;
const at = `(?:(?:just )?(?:at|on|of|in|for) )`;
/** A name needs its preposition: "near M" and "behind N" are other places. */
const there = `(?:${at}${X}|${probe}([${P}]))`;
const lead =
  '(?:^|[.;:(—–,] ?|\\b(?:and|but|so|that|then|while|whereas|because|since|hence|therefore|thus) )';
/** A statement ends here, or goes on with something that does not change it. */
const ends = `(?= ?(?:$|[.;:,()\\]!\ufffc—–]|(?:and|but|too|as well|also|because|since|so|while|whereas|which|by symmetry|when (?:all|everything) (?:is|goes) (?:well|right)|as (?:it|the|well)|in the (?:solution|answer)|on the (?:volt)?meter|there|here|everywhere|all over)(?![\\p{L}])))(?! (?:more|less|higher|lower|above|below))`;

/** Each with one sign for the place and one for the value. */
const forms: readonly RegExp[] = [
  // "M reads V", "In the middle: V", "M's reading is V".
  new RegExp(`${lead}${at}?${X}(?:'s ${noun})? ?,? ?${shows} ?(${V})${ends}`, 'gu'),
  // "The reading at M is V", "the potential 30 mm from N is V", "the potential of M there is V".
  new RegExp(
    `\\b${noun} (?:you (?:will |should )?(?:find|get|read|expect) )?${there} ?,? ?${shows} ?(${V})${ends}`,
    'gu',
  ),
  // "At M the reading is V", "At M you should read V", "At M, V = …".
  new RegExp(
    `(?:${at}${X}|${lead}${probe}([${P}])),? (?:the |its |your |a |there is a |we have |you have )?(?:(?:${noun}|it|v|φ|the paper) ?${shows}|(?:you|we) ${find}|${find}|${noun} of|there is|expect) ?(?:a (?:reading|potential|voltage) of )?(${V})${ends}`,
    'gu',
  ),
  // "The reading is V at M", "Expect V at M", "The meter shows V at M".
  new RegExp(
    `(?:${noun} ?${shows}|\\b(?:you|we) ${find}|${lead}${find}|\\bthere is|${lead})(?: a (?:reading|potential|voltage) of)? ?(${V}) (?:at|in|on|for) ${X}(?= ?(?:$|[.;:,()\\]\ufffc]|and ))`,
    'gu',
  ),
  // "M lies on the V line", "The equipotential through M is at V".
  new RegExp(`${lead}${X} (?:lies|is|stands|sits) on the (${V}) (?:line|equipotential|curve)`, 'gu'),
  new RegExp(`\\b(?:line|equipotential|curve) through ${X} (?:is|is at|has|is that of) ?(${V})${ends}`, 'gu'),
  // "V_M = …", "V(M) = …", "V at M = …".
  new RegExp(`(?<![-\u2212+×/=] ?)\\bv ?(?:_|\\(|at )\\{?([${S}])[)}]? ?(?:=|≈|is) ?(${V})${ends}`, 'gu'),
];

/** What goes on behind a statement: "M reads V, K V and Q V", "N is at V and P at V". */
const next = new RegExp(
  `^,? ?(?:and |while |whereas |but )?(?:at )?${X} ?(?:is at |at |is |reads |shows |: ?|= ?)?(${V})${ends}`,
  'u',
);
const pairs = new RegExp(
  `${lead}(?:at )?(?:both )?${X} and ${X},? (?:the (?:reading|potential)s? (?:is|are) )?(?:both |each |alike )?(?:reads?|shows?|are at|are both at|stand at|are|is)? ?(?:both )?(${V})${ends}(?! ?(?:,|and) ?${V})`,
  'gu',
);

interface Statement {
  readonly place: Place;
  readonly quantity: Quantity;
  /** In the sentence. */
  readonly from: number;
}

export const statedReadings: Rule = (subject) =>
  saidIn(subject, written.potential).flatMap((said) => {
    if (!namesPlace(said.text, subject)) return [];
    const skeleton = said.places;
    if (!skeleton.text.includes(V) || /respectively/u.test(skeleton.text)) return [];
    if (isForAnotherSupply(said, skeleton)) return [];
    return statements(skeleton).flatMap((statement) =>
      said.asserts(statement.quantity.from) ? judged(statement, said, subject) : [],
    );
  });

const placeWords =
  /middle|cent(?:re|er)|mid-?(?:point|line)|half|midway|mid-way|inside|within|hollow|radius|\br ?=|positive|negative|\bthe (?:\p{L}+ )?(?:ring|dis[ck]|box|bar|plate|spike|prong|strip)/iu;

/** A cheap look before the dear one. */
function namesPlace(text: string, subject: Subject): boolean {
  const { spots, rows } = namesOf(subject);
  if (placeWords.test(text)) return true;
  return text.split(/[^\p{L}\p{N}-]+/u).some((word) => spots.has(word) || rows.has(word));
}

/** "With a cell of 1.6 V, M reads 0.80 V". */
function isForAnotherSupply({ setups }: Said, { text, atoms }: Skeleton): boolean {
  const found =
    /(?:cell|supply|battery|e\.?m\.?f\.?|v₀|v0|power[ -]pack)[^.;]{0,20}?(\ue001)|(\ue001) (?:cell|supply|battery|power)/u.exec(
      text,
    );
  if (found === null) return false;
  const atom = atoms[found.index + found[0].search(V)];
  if (atom?.kind !== 'quantity') return false;
  return !setups.every(
    ({ supply }) =>
      supply !== null &&
      (near(atom.quantity, supply.emf_V) || near(atom.quantity, supply.emf_V / supply.cells)),
  );
}

const near = ({ low, high, half }: Quantity, value: number): boolean =>
  value >= low - half && value <= high + half;

function statements(skeleton: Skeleton): readonly Statement[] {
  const found = new Map<Quantity, Statement>();
  const keep = (placeAt: number, quantityAt: number): void => {
    const place = placeOf(skeleton.atoms[placeAt] ?? null);
    const atom = skeleton.atoms[quantityAt];
    if (place === null || atom?.kind !== 'quantity' || found.has(atom.quantity)) return;
    found.set(atom.quantity, { place, quantity: atom.quantity, from: skeleton.offsets[placeAt] ?? 0 });
  };
  const { text } = skeleton;
  for (const form of forms) {
    for (const match of text.matchAll(form)) {
      const [whole] = match;
      const end = match.index + whole.length;
      if (isBetween(text.slice(0, match.index), whole)) continue;
      keep(match.index + lastOf(whole, `[${S}${P}]`), match.index + whole.indexOf(V));
      for (let at = end, more = next.exec(text.slice(at)); more !== null; more = next.exec(text.slice(at))) {
        keep(at + lastOf(more[0], `[${S}${P}]`), at + more[0].indexOf(V));
        at += more[0].length;
      }
    }
  }
  for (const match of text.matchAll(pairs)) {
    if (isBetween(text.slice(0, match.index), match[0])) continue;
    const at = match.index + match[0].indexOf(V);
    const places = [...match[0].matchAll(new RegExp(`[${S}${P}]`, 'gu'))];
    const atom = skeleton.atoms[at];
    if (atom?.kind !== 'quantity' || found.has(atom.quantity)) continue;
    // One number for two readings: there is none to write instead.
    const unmended = { ...atom.quantity, number: null };
    const [first, second] = places.map(({ index }) => placeOf(skeleton.atoms[match.index + index] ?? null));
    if (first == null || second == null || places.length > 2) continue;
    found.set(atom.quantity, { place: first, quantity: unmended, from: 0 });
    found.set(unmended, { place: second, quantity: unmended, from: 0 });
  }
  return [...found.values()];
}

const lastOf = (text: string, signs: string): number =>
  [...text.matchAll(new RegExp(signs, 'gu'))].at(-1)?.index ?? 0;

/** A difference is no reading: "between N and P", "from M to K"; "R to P: …" speaks of a lead. */
function isBetween(before: string, match: string): boolean {
  const clause = /[^.;:]*$/u.exec(before)?.[0] ?? '';
  const within = clause + match;
  return new RegExp(
    `[${S}] to [${S}]|(?:between|from|across|difference)[^.;:]*[${S}${P}][^.;:]*(?:and|to)[^.;:]*[${S}${P}]`,
    'u',
  ).test(within);
}

function judged({ place, quantity }: Statement, said: Said, subject: Subject): readonly Finding[] {
  const solved = solutionsOf(subject, said.setups);
  if (solved === null) return [];
  const found = solved.map((one) => knownAt(place, one));
  const [first] = found;
  if (first === undefined || found.some((one) => one === null || agrees(quantity, one)) || first === null)
    return [];
  if (!allAlike(found, quantity)) return [];
  return [
    differing({ code: 'stated-reading', sentence: said, quantity, known: first, subject: subjectOf(place) }),
  ];
}

/** Of several setups that may be meant, all must give the same. */
function allAlike(found: readonly (Known | null)[], { half }: Quantity): boolean {
  const values = found.flatMap((one) => one?.values[0] ?? []);
  return Math.max(...values) - Math.min(...values) <= half;
}

function knownAt(place: Place, solved: Solution): Known | null {
  const found = potentialAt(place, solved);
  return found === null ? null : knownPotential(found, solved);
}

/** A plain 0 V may hide a fiftieth of the supply, and no text need be finer than the meter. */
export function knownPotential({ values_V, uncertainty_V }: PotentialAt, { setup }: Solution): Known {
  return {
    values: values_V,
    uncertainty: uncertainty_V,
    blur: readingStep(setup) / 2,
    nought: emfOf(setup) / 50,
  };
}

function subjectOf(place: Place): string {
  return place.kind === 'spot' ? `${place.name} reads` : 'The reading there is';
}
