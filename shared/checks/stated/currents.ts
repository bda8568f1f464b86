/** Currents that the supply gives, and resistances of the paper, as sentences state them, against the solution. */
import type { StatedCode } from '../../findings/stated-codes.ts';
import type { Rule } from '../rule.ts';
import { agrees, differing, type Known } from './compare.ts';
import { saidIn, written } from './said.ts';
import { sign } from './skeleton.ts';
import type { Solution } from './solved.ts';
import { solutionsOf } from './subject.ts';

const { current: I, resistance: R, spot: S } = sign;

const source = '(?:cell|cells|supply|battery|power[ -]?pack|circuit|paper|sheet)';
const is = '(?:is|=|≈|equals|comes to|should be|must be|will be|should come to|:)(?: (?:then|there|only))?';
const where = `(?:between (?:the |bar |electrode )*(?:two )?(?:${S} and (?:the |bar |electrode )*${S}|bars|plates|electrodes|them)|from ${S} to ${S}|of the (?:paper|sheet)(?: between [^,.;]{1,30}?)?|across the (?:paper|gap)|bar to bar)`;

interface Kind {
  readonly code: StatedCode;
  readonly mark: string;
  readonly forms: readonly RegExp[];
  /** Other things have such a quantity too. */
  readonly elsewhere: RegExp;
  readonly subject: string;
  readonly known: (solved: Solution) => Known | null;
}

const kinds: readonly Kind[] = [
  {
    code: 'stated-current',
    mark: I,
    forms: [
      new RegExp(
        `\\bcurrent(?: (?:drawn |taken )?(?:from|through|in|drawn by|supplied by|delivered by|taken by) (?:the )?${source})?(?: (?:between|from) [^,.;]{1,30}?)? ${is} ?(${I})`,
        'gu',
      ),
      new RegExp(
        `\\b${source} (?:then |only )?(?:gives|delivers|supplies|draws|takes|carries|passes|provides|drives|should give|will give)(?: a(?: total)? current of)? ?(${I})`,
        'gu',
      ),
      new RegExp(`\\bcurrent of (${I}) (?:flows|passes|is drawn|is taken|through|from the)`, 'gu'),
      new RegExp(`(?:^|[ (,;:])i ?(?:=|≈) ?(${I})`, 'gu'),
    ],
    elsewhere:
      /\b(?:(?:volt|am|multi)?meters?|short|fuse|limit\w*|hands?|body|skin|clips?|lethal|danger\w*|shock|feel|perceive\w*|each|per|lines?|range|rated|mains|eht|probe|heart)\b/u,
    subject: 'The current is',
    known: ({ solution: { readings } }) => within(readings.current_A, readings.current_bounds_A),
  },
  {
    code: 'stated-resistance',
    mark: R,
    forms: [
      new RegExp(`\\bresistance(?: ${where})? ${is} ?(${R})`, 'gu'),
      new RegExp(
        `\\b(?:paper|sheet)(?: ${where})? (?:is|has|measures|comes to|should measure|should be|has a resistance of|has the resistance) ?(${R})`,
        'gu',
      ),
      new RegExp(`\\bresistance of (${R}) (?:between|across)`, 'gu'),
      new RegExp(`(?:^|[ (,;:])r ?(?:=|≈) ?(${R})`, 'gu'),
    ],
    elsewhere:
      /\b(?:(?:volt|am|multi)?meters?|clips?|internal|contacts?|source|probes?|tip|squares?|strips?|hands?|skin|body|leads?|input|sheet resistance|series|resistor|load|wire|patch|paint\w*|each|per|half|supply)\b/u,
    subject: 'The paper is',
    known: ({ solution: { readings } }) => within(readings.resistance_ohm, readings.resistance_bounds_ohm),
  },
];

function within(value: number | null, bounds: readonly [number, number] | null): Known | null {
  if (value === null) return null;
  const [low, high] = bounds ?? [value, value];
  return {
    values: [Math.abs(value)],
    uncertainty: Math.abs(high - low) / 2,
    blur: 0,
    nought: 0.02 * Math.abs(value),
  };
}

const goesOn = /^ ?(?:per|\/|×|more|less|higher|lower|each|or more|for)/u;

export const statedCurrents: Rule = (subject) =>
  saidIn(subject, written.currentOrResistance).flatMap((said) => {
    const { text, atoms } = said.skeleton;
    return kinds.flatMap(({ code, mark, forms, elsewhere, subject: told, known }) => {
      if (!text.includes(mark) || elsewhere.test(text)) return [];
      const marks = forms.flatMap((form) =>
        [...text.matchAll(form)].map(({ 0: whole, index }) => index + whole.indexOf(mark)),
      );
      return [...new Set(marks)].flatMap((at) => {
        const atom = atoms[at];
        if (atom?.kind !== 'quantity' || goesOn.test(text.slice(at + 1))) return [];
        const { quantity } = atom;
        const found = solutionsOf(subject, said.setups)?.map(known) ?? [];
        const [first] = found;
        if (first === undefined || first === null || !said.asserts(quantity.from)) return [];
        if (found.some((one) => one === null || agrees(quantity, one) || !sameSize(one, first))) return [];
        return [differing({ code, sentence: said, quantity, known: first, subject: told })];
      });
    });
  });

/** Of several setups that may be meant, all give the same as far as a text would say it. */
function sameSize(a: Known, b: Known): boolean {
  const [x = 0, y = 0] = [a.values[0], b.values[0]];
  return Math.abs(x - y) <= 5e-3 * Math.abs(x);
}
