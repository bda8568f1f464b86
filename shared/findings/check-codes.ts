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
  'equipotentials-close': {
    severity: 'warning',
    meaning: 'Equipotentials lie closer together than the meter can tell apart.',
    source: 'common practice, no source',
  },
  'probe-on-metal': {
    severity: 'note',
    meaning: 'A probe stands on metal and reads the same wherever it stands there.',
    source: 'an electrode is one equipotential (electrostatics of conductors)',
  },
  'probe-screened': {
    severity: 'note',
    meaning: 'A probe stands inside closed hollow metal, where there is no field.',
    source: 'no field inside a closed hollow conductor (electrostatics of conductors)',
  },
  'no-current': {
    severity: 'warning',
    meaning: 'The paper does not join the positive and the negative metal: no current flows.',
    source: 'Ohm’s law',
  },
  'cell-drain': {
    severity: 'warning',
    meaning: 'A lesson takes more charge from a cell than is common practice.',
    source: 'common practice, no source; the limit may be the department’s',
  },
  'paper-heat': {
    severity: 'warning',
    meaning: 'More heat is made in the paper or at a clip than is common practice.',
    source: 'common practice, no source; the limit may be the department’s',
  },
  'meter-loading': {
    severity: 'warning',
    meaning: 'The current through the meter lowers a reading by more than the meter’s resolution.',
    source: 'Thévenin’s theorem; 200 times the sheet resistance is common practice, no source',
  },
  'edge-near': {
    severity: 'warning',
    meaning: 'The text leaves the paper’s edge out of account, but an electrode lies close to it.',
    source: 'common practice, no source: 10 mm',
  },
  'field-not-uniform': {
    severity: 'warning',
    meaning: 'The text calls a field uniform that varies by more than a twentieth.',
    source: 'common practice, no source: 5 %',
  },
  'radial-law': {
    severity: 'warning',
    meaning: 'The text gives a disc in a ring the laws of a point charge in space.',
    source: 'coaxial conductors: V goes as ln r, the field strength as 1/r',
  },
  'paper-tiled': {
    severity: 'note',
    meaning: 'A paper is larger than a printed page, so that a full-size print goes over several pages.',
    source: 'ISO 216 and ANSI/ASME Y14.1, less the margins of a print',
  },
  'bounds-wide': {
    severity: 'note',
    meaning: 'The bounds of the solution are wider than usual; fewer digits are printed.',
  },
} as const satisfies Record<string, CatalogueEntry>;
