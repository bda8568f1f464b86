/** Rules over names of units, and over abbreviations that are neither names nor symbols. */
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

export const directCurrent = slipRule({
  kind: 'direct current',
  code: 'direct-current',
  say: ({ meant }) =>
    `Direct and alternating belong to the quantity, and nothing is joined to its unit: ${meant.join(' or ')}`,
});

export const unitAttached = slipRule({
  kind: 'attached',
  code: 'unit-attached',
  say: ({ meant }) =>
    `Nothing is joined to a unit; what is said of the quantity goes there: ${meant.join(' or ')}.`,
});
