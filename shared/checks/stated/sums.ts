/** Worked examples of E = V/d and V = E d: whether the sum comes out, and whether its result is that of the setup. */
import type { Finding } from '../../findings/finding.ts';
import type { Rule, Subject } from '../rule.ts';
import { agrees, differing } from './compare.ts';
import type { Quantity } from './quantities.ts';
import { quantitiesIn } from './quantities.ts';
import { type Said, saidIn, written } from './said.ts';
import { betweenBars } from './strengths.ts';
import { solutionsOf } from './subject.ts';

const divided = /^\s?(?:\/|÷|:|divided by|over)\s?\(?$/u;
const multiplied = /^\s?(?:×|x|\*|·|times)\s?\(?$/u;
const comesTo = /^\)?\s?(?:=|≈|is|gives|, or|, which is)\s?$/u;

export const statedSums: Rule = (subject) =>
  saidIn(subject, written.strength).flatMap((said) => {
    const list = quantitiesIn(said.text);
    return list.flatMap((first, i): readonly Finding[] => {
      const [second, result] = [list[i + 1], list[i + 2]];
      if (second === undefined || result === undefined || !isSum(said.text, first, second, result)) return [];
      const computed = workedOut(said.text, first, second, result);
      if (computed === null || !said.owns(first.from)) return [];
      return comesOut(result, computed)
        ? ofSetup(first, result, said, subject)
        : [wrong(result, computed, said)];
    });
  });

const plain = ({ form, number, plus }: Quantity): boolean =>
  form === 'value' && number !== null && plus === 0;

function isSum(text: string, first: Quantity, second: Quantity, result: Quantity): boolean {
  if (![first, second, result].every(plain)) return false;
  // Part of a longer sum.
  if (
    /[-+\u2212×*/÷)]\s?$/u.test(text.slice(0, first.from)) ||
    /^\s?[-+\u2212×*/÷]/u.test(text.slice(result.to))
  )
    return false;
  return comesTo.test(text.slice(second.to, result.from));
}

function workedOut(text: string, first: Quantity, second: Quantity, result: Quantity): number | null {
  const sign = text.slice(first.to, second.from);
  const kinds = `${first.measure} ${second.measure} ${result.measure}`;
  // Working units: V, mm, V/m.
  if (divided.test(sign) && kinds === 'potential length strength') return first.low / (second.low / 1000);
  if (divided.test(sign) && kinds === 'potential strength length') return (1000 * first.low) / second.low;
  if (multiplied.test(sign) && kinds === 'strength length potential') return (first.low * second.low) / 1000;
  return multiplied.test(sign) && kinds === 'length strength potential'
    ? (first.low * second.low) / 1000
    : null;
}

/** To one unit of the last digit: what was rounded on the way may be. */
const comesOut = ({ low, half, about }: Quantity, computed: number): boolean =>
  Math.abs(low - computed) <= (about ? Math.max(2 * half, 0.05 * Math.abs(low)) : 2 * half) * (1 + 1e-9);

function wrong(result: Quantity, computed: number, said: Said): Finding {
  const known = { values: [computed], uncertainty: 0, blur: 0, nought: 0 };
  const found = differing({
    code: 'stated-sum',
    sentence: said,
    quantity: result,
    known,
    subject: 'This comes to',
  });
  return { ...found, message: found.message.replace(' by the setup', '') };
}

/** The whole voltage over a distance between two bars. */
function ofSetup(first: Quantity, result: Quantity, said: Said, subject: Subject): readonly Finding[] {
  if (result.measure !== 'strength' || first.measure !== 'potential' || !said.asserts(result.from)) return [];
  if (!/\b(?:bars|plates|electrodes|gap|uniform)\b|between/u.test(said.text)) return [];
  const solved = solutionsOf(subject, said.setups) ?? [];
  const known = solved.map((one) => {
    const emf = one.setup.supply?.emf_V ?? 0;
    return Math.abs(first.low - emf) <= first.half ? betweenBars(one, result) : null;
  });
  const [best] = known;
  if (best === undefined || best === null || known.some((one) => one === null || agrees(result, one)))
    return [];
  return [
    differing({
      code: 'stated-strength',
      sentence: said,
      // Another number alone would spoil the sum.
      quantity: { ...result, number: null },
      known: best,
      subject: 'The field between the bars is',
    }),
  ];
}
