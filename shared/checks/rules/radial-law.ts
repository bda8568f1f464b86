/**
 * A disc in a ring that the text gives the laws of a point charge in space. On paper the current spreads in circles whose length grows
 * with r, so that E goes as 1/r and V as ln r:
 *
 *     V(r) = V_b + (V_a − V_b) ln(b/r)/ln(b/a),   not   V_b + (V_a − V_b) (1/r − 1/b)/(1/a − 1/b).
 */
import { hypot } from '../../field/maths.ts';
import { type Finding, finding } from '../../findings/finding.ts';
import { printQuantity } from '../../quantity/print.ts';
import { boxCentre, distance } from '../../setup/plane.ts';
import type { GapPoint } from '../../setup/readings.ts';
import type { Setup } from '../../setup/setup.ts';
import { spanOf } from '../prose/run.ts';
import type { Rule } from '../rule.ts';
import { type Said, saidIn } from '../stated/said.ts';
import type { Solution } from '../stated/solved.ts';
import { solutionsOf } from '../stated/subject.ts';
import { isInHollow } from '../stated/whereabouts.ts';

const potential = String.raw`\b(?:potential|voltage|readings?|V)\b`;
const strength = String.raw`\b(?:strength|field|E)\b`;
const inverse = String.raw`(?:inversely (?:with|as|proportional to) (?:the )?(?:distance|radius|r\b)(?! ?squared)|(?:∝|as|with|like|proportional to) ?1 ?\/ ?r(?![²\^\p{L}]| squared))`;
const inverseSquare = String.raw`(?:(?:∝|as|with|like|proportional to) ?1 ?\/ ?r(?:²|\^2| squared)|inversely (?:with|as|proportional to) the square of|inverse[ -]square)`;

const potentialClaims: readonly RegExp[] = [
  new RegExp(`${potential}[^.;?]{0,60}?${inverse}`, 'u'),
  /\bV against 1 ?\/ ?r\b[^.;?,]{0,24}\b(?:is|gives|makes|should be|will be) (?:a )?straight\b/u,
];
const strengthClaim = new RegExp(`${strength}[^.;?]{0,60}?${inverseSquare}`, 'u');

/** "Plot V against 1/r. The graph is a straight line." */
const asked = /\bV against 1 ?\/ ?r\b/u;
const answered =
  /^\s*(?:the|this|your|that) (?:graph|line|plot|result)\b[^.?]{0,20}\bis (?:therefore |then )?(?:a )?straight(?: line)?/iu;
const likeCharge = /\b(?:as|like)(?: that| those)?(?: for| of| round)? an? (?:isolated )?point charge\b/giu;

/** What is said of space is right, and so is what is said of the logarithm. */
const ofSpace =
  /\b(?:point charges?|spheres?|spherical|space|air|vacuum|three dimensions|planet|gravit\w*|Coulomb\w*|ln|log\w*|unlike|compare\w*|different)\b/iu;

export const radialLaw: Rule = (subject) => {
  if (!subject.setups.some(isDiscInRing)) return [];
  const said = saidIn(subject, /1 ?\/ ?r|invers/u).filter(
    ({ text }) => !/\?/u.test(text) && !ofSpace.test(text.replace(likeCharge, '')),
  );
  return said.flatMap((sentence) => {
    const solved = solutionsOf(subject, sentence.setups) ?? [];
    const [first] = solved;
    if (first === undefined || !solved.every(({ setup }) => isDiscInRing(setup))) return [];
    const claim = potentialClaims
      .map((pattern) => pattern.exec(sentence.text))
      .find((found) => found !== null);
    const graph = asked.test(sentence.text) ? answered.exec(sentence.run.text.slice(end(sentence))) : null;
    if (graph !== null) return held(sentence, { from: end(sentence), text: graph[0] }, potentialSays(first));
    // "The potential falls, and the strength goes as 1/r" says it of the strength.
    if (claim != null && !new RegExp(strength, 'u').test(claim[0]))
      return held(sentence, matched(sentence, claim), potentialSays(first));
    const square = strengthClaim.exec(sentence.text);
    return square === null ? [] : held(sentence, matched(sentence, square), strengthSays(first));
  });
};

/** A part of a run. */
interface Part {
  readonly from: number;
  readonly text: string;
}

const end = ({ from, text }: Said): number => from + text.length;
const matched = ({ from }: Said, { index, 0: text }: RegExpExecArray): Part => ({ from: from + index, text });

function held(sentence: Said, part: Part, message: string | null): readonly Finding[] {
  const lead = part.text.length - part.text.trimStart().length;
  const to = part.from + part.text.length;
  if (message === null || !sentence.owns(Math.min(to - sentence.from, sentence.text.length))) return [];
  return [
    finding('radial-law', {
      span: spanOf(sentence.run, part.from + lead, to),
      message,
      hints: [
        'Say that V goes as ln r and E as 1/r, as in a coaxial cable; 1/r and 1/r² are the laws of a point charge in space.',
      ],
    }),
  ];
}

function isDiscInRing({ electrodes }: Setup): boolean {
  const discs = electrodes.filter(({ pieces }) => pieces.every(({ shape }) => shape.shape === 'disc'));
  const rings = electrodes.filter(({ pieces }) => pieces.every(({ shape }) => shape.shape === 'ring'));
  return discs.some(({ box }) =>
    rings.some(
      (ring) => isInHollow(boxCentre(box), ring) && distance(boxCentre(box), boxCentre(ring.box)) < 1,
    ),
  );
}

interface Radial {
  readonly inner_mm: number;
  readonly outer_mm: number;
  readonly inner_V: number;
  readonly outer_V: number;
  readonly places: readonly (GapPoint & { readonly r_mm: number })[];
}

function radialOf({ setup, solution }: Solution): Radial | null {
  const [gap] = solution.gaps;
  const disc = setup.electrodes.find(({ pieces }) => pieces.every(({ shape }) => shape.shape === 'disc'));
  const at = (name: string): number | null =>
    solution.readings.electrodes.find((one) => one.name === name)?.potential_V ?? null;
  if (gap === undefined || disc === undefined) return null;
  const other = gap.from === disc.name ? gap.to : gap.from;
  const [inner_V, outer_V] = [at(disc.name), at(other)];
  const centre = boxCentre(disc.box);
  const inner_mm = (disc.box.x1 - disc.box.x0) / 2;
  if (inner_V === null || outer_V === null) return null;
  const places = gap.points.map((point) => ({
    ...point,
    r_mm: distance({ x: point.x_mm, y: point.y_mm }, centre),
  }));
  return { inner_mm, outer_mm: inner_mm + gap.length_mm, inner_V, outer_V, places };
}

/** Where the two laws differ about most, at the geometric mean of the radii. */
function potentialSays(solved: Solution): string | null {
  const radial = radialOf(solved);
  if (radial === null) return null;
  const { inner_mm: a, outer_mm: b, inner_V, outer_V, places } = radial;
  const place = nearest(places, Math.sqrt(a * b));
  if (place?.potential_V == null) return null;
  const { r_mm: r } = place;
  const inSpace = outer_V + ((inner_V - outer_V) * (1 / r - 1 / b)) / (1 / a - 1 / b);
  const [here, there] = [place.potential_V, inSpace].map((value) =>
    printQuantity(value, 'potential', { decimals: 2, unit: 'V' }),
  );
  return `On paper V goes as ln r. At r = ${printQuantity(r, 'length', { decimals: 1 })} it is ${here}; with 1/r it would be ${there}.`;
}

function strengthSays(solved: Solution): string | null {
  const radial = radialOf(solved);
  if (radial === null) return null;
  const { inner_mm, outer_mm, places } = radial;
  const near = nearest(places, inner_mm + (outer_mm - inner_mm) / 4);
  const far = nearest(places, inner_mm + (3 * (outer_mm - inner_mm)) / 4);
  if (near?.strength_V_per_m == null || far?.strength_V_per_m == null) return null;
  const ratio = hypot(...near.strength_V_per_m) / hypot(...far.strength_V_per_m);
  const square = (far.r_mm / near.r_mm) ** 2;
  const [r1, r2] = [near.r_mm, far.r_mm].map((r) => printQuantity(r, 'length', { decimals: 1 }));
  return `On paper E goes as 1/r. At r = ${r1} it is ${ratio.toPrecision(2)} times that at ${r2}; with 1/r² it would be ${square.toPrecision(2)} times.`;
}

function nearest<T extends { readonly r_mm: number }>(places: readonly T[], r_mm: number): T | null {
  return places.reduce<T | null>(
    (best, one) => (best === null || Math.abs(one.r_mm - r_mm) < Math.abs(best.r_mm - r_mm) ? one : best),
    null,
  );
}
