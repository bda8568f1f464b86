/** A text that leaves the paper's edge out of account, with electrodes close to that edge. No current leaves there: the edge shapes the field. */
import { finding } from '../../findings/finding.ts';
import { printQuantity } from '../../quantity/print.ts';
import type { Setup } from '../../setup/setup.ts';
import { spanOf } from '../prose/run.ts';
import type { Rule } from '../rule.ts';
import { saidIn } from '../stated/said.ts';

const least_mm = 10;

const unbounded: readonly RegExp[] = [
  /\b(?:infinite(?:ly)?(?: (?:large|wide|big|extended))?|unbounded|boundless|unlimited|endless) (?:conducting )?(?:sheet|paper|plane sheet|medium)\b/iu,
  /\b(?:sheet|paper|medium)\b[^.;?]{0,24}\b(?:infinite(?:ly (?:large|wide|big))?|unbounded|boundless|to infinity)\b(?! long)/iu,
  /\b(?:ignor\w+|neglect\w*|disregard\w*|leav\w+ out)\b[^.;?]{0,25}\bedges?(?: effects?)?\b(?! of the (?:bar|plate|electrode|table|board|bench))/iu,
  /\bedges?(?: effects?)?(?: of the (?:paper|sheet))?\b[^.;?]{0,16}\b(?:ignored|neglected|negligible|disregarded|left out of account)\b/iu,
  /\bisolated (?:point |line |electric |positive |negative |charged )*(?:charges?|discs?|disks?|conductors?|electrodes?|poles?|rods?|pairs?|dipoles?)\b/iu,
];

/** What is said of space is not said of the paper. */
const ofSpace = /\b(?:space|air|vacuum|spheres?|three dimensions)\b/iu;
const words = /infinit|unbounded|boundless|unlimited|endless|edge|isolated/iu;

export const edgeNear: Rule = (subject) => {
  const said = saidIn(subject, words).filter(({ text }) => !/\?/u.test(text) && !ofSpace.test(text));
  return said.flatMap((sentence) => {
    const match = unbounded.map((pattern) => pattern.exec(sentence.text)).find((found) => found !== null);
    if (match === undefined || match === null) return [];
    const nearest = sentence.setups.map(nearestToEdge);
    const [first] = nearest;
    if (first === undefined || first === null) return [];
    if (nearest.some((one) => one === null) || !sentence.owns(match.index + match[0].length)) return [];
    const from = sentence.from + match.index;
    return [
      finding('edge-near', {
        span: spanOf(sentence.run, from, from + match[0].length),
        message: `${first.name} ${place(first.distance_mm)}. No current leaves the paper there, so that equipotentials meet the edge at 90°: with electrodes less than ${least_mm} mm from it the edge counts.`,
        hints: ['Move the electrode, or say what the edge does.'],
      }),
    ];
  });
};

function place(distance_mm: number): string {
  if (distance_mm <= 0) return 'reaches the edge of the paper';
  return `lies ${printQuantity(Number(distance_mm.toPrecision(3)), 'length')} from the edge of the paper`;
}

interface Near {
  readonly name: string;
  readonly distance_mm: number;
}

/** Electrodes from edge to edge have no ends for the edge to shape: their sides alone count. Null where none is near. */
function nearestToEdge({ paper, electrodes }: Setup): Near | null {
  if (paper === null) return null;
  const { width_mm, height_mm } = paper;
  const near = electrodes.flatMap(({ name, box: { x0, x1, y0, y1 } }): readonly Near[] => {
    const sides = [x0, width_mm - x1];
    const ends = [y0, height_mm - y1];
    const spans = ([a = 0, b = 0]: readonly number[]): boolean => a <= 1 && b <= 1;
    const counted = [...(spans(sides) ? [] : sides), ...(spans(ends) ? [] : ends)];
    const distance_mm = Math.min(...counted);
    return distance_mm < least_mm ? [{ name, distance_mm }] : [];
  });
  return near.reduce<Near | null>(
    (least, one) => (least === null || one.distance_mm < least.distance_mm ? one : least),
    null,
  );
}
