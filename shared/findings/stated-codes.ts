import type { CatalogueEntry } from './entry.ts';

/**
 * Findings about numbers of the text that the solution contradicts. Their fixes write the solved value and are never applied unasked:
 * the setup may be what is wrong.
 */
export const statedCodes = {
  'stated-reading': {
    severity: 'warning',
    meaning: 'A reading that the text states is not the one that the setup gives.',
    source: 'the solution of the setup',
  },
  'stated-table': {
    severity: 'warning',
    meaning: 'A reading in a table of expected readings is not the one that the setup gives.',
    source: 'the solution of the setup',
  },
  'stated-strength': {
    severity: 'warning',
    meaning: 'A field strength that the text states is not the one that the setup gives.',
    source: 'the solution of the setup',
  },
  'stated-sum': {
    severity: 'warning',
    meaning: 'A worked example of E = V/d does not come out.',
    source: 'E = V/d, for a uniform field',
  },
  'stated-current': {
    severity: 'warning',
    meaning: 'A current that the text states is not the one that the setup draws.',
    source: 'the solution of the setup',
  },
  'stated-resistance': {
    severity: 'warning',
    meaning: 'A resistance of the paper that the text states is not the one that the setup gives.',
    source: 'the solution of the setup',
  },
  'stated-supply': {
    severity: 'warning',
    meaning: 'The text and the setup name different voltages or numbers of cells.',
    source: 'common practice, no source',
  },
  'stated-sheet-resistance': {
    severity: 'warning',
    meaning: 'The text and the setup name different sheet resistances.',
    source: 'common practice, no source',
  },
} as const satisfies Record<string, CatalogueEntry>;

export type StatedCode = keyof typeof statedCodes;
