import type { CatalogueEntry } from './entry.ts';

/** Findings made by the rules of `checks`, which see sheet, setups and solution together. */
export const checkCodes = {
  'supply-limit': {
    severity: 'warning',
    meaning: 'The supply would limit the current, so the voltage on the paper is lower than the setup says.',
    source: 'common practice, no source',
  },
  'meter-range': {
    severity: 'warning',
    meaning: 'A reading lies beyond the range of the meter.',
    source: 'common practice, no source',
  },
  'equipotential-missed': {
    severity: 'warning',
    meaning: 'An equipotential lies inside the supply but meets no paper.',
    source: 'common practice, no source',
  },
  'bounds-wide': {
    severity: 'note',
    meaning: 'The bounds of the solution are wider than usual; fewer digits are printed.',
  },
} as const satisfies Record<string, CatalogueEntry>;
