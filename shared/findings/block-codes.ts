import type { CatalogueEntry } from './entry.ts';

/** Findings made by the room `block`: the writing of a line, before it is known what the line means. */
export const blockCodes = {
  'word-unknown': { severity: 'error', meaning: 'A word that is not known at this place of a line.' },
  'word-unexpected': {
    severity: 'error',
    meaning: 'Something that does not belong at this place of a line.',
  },
  'part-missing': { severity: 'error', meaning: 'A line leaves out something that it needs.' },
  'part-twice': { severity: 'error', meaning: 'A line says the same thing twice.' },
  'name-missing': { severity: 'error', meaning: 'A name is missing.' },
  'name-form': {
    severity: 'error',
    meaning: 'A name does not begin with a letter, or has signs other than letters, digits and hyphens.',
  },
  'name-reserved': {
    severity: 'error',
    meaning: 'A name that means something else in inserts or on the opening line.',
  },
  'unit-missing': { severity: 'error', meaning: 'A number without its unit.' },
  'unit-unknown': { severity: 'error', meaning: 'A unit that is not known.' },
  'unit-capitals': {
    severity: 'error',
    meaning: 'A unit with wrong capitals.',
    source: 'SI Brochure, 9th edition, 5.2',
  },
  'unit-inches': { severity: 'error', meaning: 'A length in inches.' },
  'unit-dimension': {
    severity: 'error',
    meaning: 'A quantity of another kind than the one that belongs here.',
  },
  'unit-shared': { severity: 'error', meaning: 'A list in which only the last number has a unit.' },
  'unit-unlikely': { severity: 'warning', meaning: 'A prefix that is hardly meant: m for M, or M for m.' },
  'decimal-comma': { severity: 'error', meaning: 'A comma in place of the decimal point.' },
  'number-power': { severity: 'error', meaning: 'A number with a power of ten, such as 1e3.' },
  'number-whole': { severity: 'error', meaning: 'A count that is not a whole number.' },
  'number-positive': { severity: 'error', meaning: 'A size that is zero or negative.' },
  'coordinates-form': { severity: 'error', meaning: 'Coordinates that are not a pair in round brackets.' },
  'per-square-missing': {
    severity: 'warning',
    meaning: 'A sheet resistance without the words “per square”.',
  },
  'cells-total': { severity: 'note', meaning: 'What cells in series make together.' },
  'cells-each': {
    severity: 'warning',
    meaning: 'Cells whose voltage looks like that of the whole row of cells.',
  },
  'prong-sizes': {
    severity: 'note',
    meaning: 'A prong that is wider than long: perhaps its length was written first.',
  },
  'allow-form': {
    severity: 'warning',
    meaning: 'A remark that begins to allow a finding without saying which, or why.',
  },
} as const satisfies Record<string, CatalogueEntry>;
