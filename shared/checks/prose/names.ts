/** Rules over names of units, and over abbreviations that are neither names nor symbols. */
import { found, type RunRule, rewrite, type WordRule } from './rule.ts';
import { slipRule } from './slips.ts';

export const unitNameCase = slipRule({
  kind: 'name case',
  code: 'unit-name-case',
  say: ({ meant }) => `The name of a unit is lower case, also if it is a person’s: ${meant.join(' or ')}.`,
});

export const unitAbbreviation = slipRule({
  kind: 'abbreviation',
  code: 'unit-abbreviation',
  say: ({ unit, meant }) => `“${unit}” is neither the symbol nor the name of a unit: ${meant.join(' or ')}.`,
});

export const unitNameApart = slipRule({
  kind: 'name apart',
  code: 'unit-name-apart',
  say: ({ meant }) => `A prefix and the name of its unit are one word: ${meant.join(' or ')}.`,
});

const apart =
  /(?<!\p{N}[ \u00a0\n-]?)\b(kilo|milli|micro|mega)[ \u00a0\n-](ohm|volt|amp(?:ere)?|watt|hertz)(s?)(?![\p{L}])/giu;

/** The same without a number before it: "in kilo ohms". */
export const nameApart: WordRule = (run) =>
  [...run.text.matchAll(apart)].map((match) => {
    const [written, prefix = '', name = '', plural = ''] = match;
    // Kilohm, megohm: two vowels become one.
    const joined = name.toLowerCase() === 'ohm' && /^(?:kilo|mega)$/iu.test(prefix);
    const base = joined ? prefix.slice(0, -1) : prefix;
    const meant = `${base}${name.toLowerCase().replace(/^amp$/u, 'ampere')}${plural}`;
    const place = { run, from: match.index, to: match.index + written.length };
    return found('unit-name-apart', place, {
      message: `A prefix and the name of its unit are one word: ${meant}.`,
      fixes: rewrite(place, meant, meant, true),
    });
  });

export const unitOldName = slipRule({
  kind: 'old name',
  code: 'unit-old-name',
  say: ({ unit, meant }) => `“${unit}” is an old name: ${meant.join(' or ')}.`,
});

export const unitMixed = slipRule({
  kind: 'mixed',
  code: 'unit-mixed',
  say: ({ unit, meant }) =>
    `“${unit}” mixes the symbol of one thing with the name of another: ${meant.join(' or ')}.`,
});

const joinedLetters = slipRule({
  kind: 'direct current',
  code: 'direct-current',
  say: ({ meant }) =>
    `Direct and alternating belong to the quantity, and nothing is joined to its unit: ${meant.join(' or ')}`,
});

/** The letters as the house style has them. */
export const directCurrent: RunRule = (passage) => {
  if (passage.setting.style['direct-current'] !== 'DC') return joinedLetters(passage);
  const slipped = passage.slipped.map((value) => {
    const { unit } = value;
    if (unit === null) return value;
    const slips = unit.slips.map((slip) =>
      slip.kind === 'direct current' ? { ...slip, meant: slip.meant.map(inCapitals) } : slip,
    );
    return { ...value, unit: { ...unit, slips } };
  });
  return joinedLetters({ ...passage, slipped });
};

/** `V d.c.` as `V DC`. */
function inCapitals(meant: string): string {
  return meant.replace(/([da])\.c\.$/u, (_, letter: string) => `${letter.toUpperCase()}C`);
}

export const unitAttached = slipRule({
  kind: 'attached',
  code: 'unit-attached',
  say: ({ meant }) =>
    `Nothing is joined to a unit; what is said of the quantity goes there: ${meant.join(' or ')}.`,
});
