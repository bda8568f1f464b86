/** Rules over products and quotients of units, ohm per square among them. */
import { slipRule } from './slips.ts';

export const unitProduct = slipRule({
  kind: 'product',
  code: 'unit-product',
  say: ({ meant }) => `A space or a raised dot stands between two units: ${meant.join(' or ')}.`,
});

export const unitProductStop = slipRule({
  kind: 'product stop',
  code: 'unit-product-stop',
  say: ({ meant }) => `A full stop is no sign of a product: ${meant.join(' or ')}.`,
});

export const unitExponent = slipRule({
  kind: 'exponent',
  code: 'unit-exponent',
  say: ({ meant }) => `The power of a unit is raised: ${meant.join(' or ')}.`,
});

export const doubleInverse = slipRule({
  kind: 'double inverse',
  code: 'unit-quotient',
  say: ({ unit, meant }) => `“${unit}” divides by an inverse, and so multiplies: ${meant.join(' or ')}?`,
});

export const twoSolidi = slipRule({
  kind: 'two solidi',
  code: 'unit-quotient',
  say: ({ meant }) => `Two solidi can be read in two ways; brackets tell: ${meant.join(' or ')}?`,
});

export const squareSign = slipRule({
  kind: 'square sign',
  code: 'square-sign',
  say: ({ meant }) => `The square is not a unit, the unit is the ohm: ${meant.join(' or ')}.`,
});

export const squareSize = slipRule({
  kind: 'square size',
  code: 'square-size',
  say: ({ meant }) => `A square of paper has one resistance whatever its size: ${meant.join(' or ')}?`,
});
