/** A field that the text calls uniform between two electrodes or along a row, and that is not. */
import { hypot } from '../../field/maths.ts';
import { finding } from '../../findings/finding.ts';
import { printQuantity } from '../../quantity/print.ts';
import { metalAt } from '../../setup/metal.ts';
import { spanOf } from '../prose/run.ts';
import type { Rule, Subject } from '../rule.ts';
import { fieldAcross } from '../stated/bars.ts';
import { type Said, saidIn } from '../stated/said.ts';
import { type Skeleton, sign } from '../stated/skeleton.ts';
import type { Solution } from '../stated/solved.ts';
import { solutionsOf } from '../stated/subject.ts';

/** (greatest − least)/mean. */
const mostSpread = 0.05;

const { spot: S, row: R } = sign;

const claims: readonly RegExp[] = [
  /\b(?:field|field strength|strength|e)\b[^.;:?]{0,60}?\b(?:is|are|stays|remains|must be|will be) (?:therefore |everywhere |also |completely |perfectly |exactly |always )?(?:uniform|constant|the same (?:everywhere|all along|throughout|all over|at all|at every))/u,
  /\buniform (?:electric )?field\b/u,
];

/** Less than the whole stretch, or another case than the one on the paper. */
const hedged =
  /\b(?:nearly|almost|roughly|approximately|fairly|about|more or less|reasonably|non-uniform|middle|centre|center|central|near|close|ends?|edges?|away|far|only|tips?|first|inside|hollow|infinite|ideal|capacitors?|general|long enough|less|best)\b/u;

const between = new RegExp(
  `between (?:(?:the |bar |electrode )*(${S}) and (?:the |bar |electrode )*(${S})|the (?:two |long |straight |parallel |copper )*(?:bars|plates|electrodes)|them)`,
  'u',
);
const alongRow = new RegExp(`(?:along|on|row|line) (?:the )?(?:row |line )?(${R})`, 'u');

export const fieldNotUniform: Rule = (subject) =>
  saidIn(subject, /uniform|constant|the same/u).flatMap((said) => {
    const { skeleton } = said;
    const { text } = skeleton;
    const claim = claims.map((pattern) => pattern.exec(text)).find((found) => found !== null);
    if (claim === undefined || claim === null || hedged.test(text)) return [];
    const spreads = spreadsOf(skeleton, said, subject);
    const [first] = spreads;
    if (
      first === undefined ||
      first === null ||
      spreads.some((one) => one === null || one.part <= mostSpread)
    )
      return [];
    const from = skeleton.offsets[claim.index] ?? 0;
    const to = (skeleton.offsets[claim.index + claim[0].length - 1] ?? from) + 1;
    if (!said.asserts(to)) return [];
    const [low, high] = [first.low, first.high].map((value) =>
      printQuantity(value, 'strength', { digits: 3 }),
    );
    return [
      finding('field-not-uniform', {
        span: spanOf(said.run, said.from + from, said.from + to),
        message: `${first.where} the field strength varies by ${Math.round(100 * first.part)} %, from ${low} to ${high}.`,
        hints: ['Longer bars, nearer together, make it more uniform; or say that it is so in the middle.'],
      }),
    ];
  });

interface Spread {
  readonly where: string;
  readonly low: number;
  readonly high: number;
  readonly part: number;
}

/** One for each setup that may be meant; null where the stretch is not certain. */
function spreadsOf({ text, atoms }: Skeleton, said: Said, subject: Subject): readonly (Spread | null)[] {
  const nameAt = (index: number): string => {
    const atom = atoms[index];
    return atom?.kind === 'row' || atom?.kind === 'spot' ? atom.name : '';
  };
  const row = alongRow.exec(text);
  const gap = between.exec(text);
  const solved = solutionsOf(subject, said.setups) ?? [];
  if (row !== null) return solved.map((one) => alongOf(nameAt(row.index + row[0].indexOf(R)), one));
  if (gap === null) return [];
  const names = [...gap[0].matchAll(new RegExp(S, 'gu'))].map(({ index }) => nameAt(gap.index + index));
  return solved.map((one) => acrossOf(names, one));
}

function alongOf(name: string, { setup, solution }: Solution): Spread | null {
  const points = solution.readings.rows.find((row) => row.name === name)?.points ?? [];
  const sizes = points.flatMap(({ x_mm, y_mm, strength_V_per_m: strength }) =>
    strength === null || metalAt(setup, { x: x_mm, y: y_mm }) !== null ? [] : [hypot(...strength)],
  );
  return sizes.length < 3 ? null : spread(`Along ${name}`, Math.min(...sizes), Math.max(...sizes));
}

function acrossOf(names: readonly string[], { solution }: Solution): Spread | null {
  const gaps = solution.gaps.filter(
    ({ from, to }) => names.length === 0 || (names.includes(from) && names.includes(to)),
  );
  const [gap] = gaps;
  const field = gap === undefined || gaps.length > 1 ? null : fieldAcross(gap);
  return gap === undefined || field === null
    ? null
    : spread(`On the line from ${gap.from} to ${gap.to}`, field.low, field.high);
}

const spread = (where: string, low: number, high: number): Spread => ({
  where,
  low,
  high,
  part: (2 * (high - low)) / (low + high),
});
