import type { CatalogueEntry } from './entry.ts';

/**
 * Findings about quantities and units in the text around the blocks. Notes are matters of house style, on which good schools differ.
 * SI: SI Brochure, 9th edition (BIPM 2019); SP 811: NIST Special Publication 811 (2008).
 */
export const proseCodes = {
  'unit-space': {
    severity: 'warning',
    meaning: 'No space between a number and its unit.',
    source: 'SI 5.4.3; SP 811, 7.2',
  },
  'unit-hyphen': {
    severity: 'warning',
    meaning: 'A hyphen between a number and the symbol of a unit.',
    source: 'SI 5.4.3; SP 811, 7.2',
  },
  'angle-space': {
    severity: 'warning',
    meaning: 'A space before the degree sign of an angle.',
    source: 'SI 5.4.3; SP 811, 7.2',
  },
  'percent-space': {
    severity: 'note',
    meaning:
      'No space before a per cent sign; the SI has one, most schools do not, and the house style may decide.',
    source: 'SI 5.4.7; SP 811, 7.10.2',
  },
  'unit-case': {
    severity: 'error',
    meaning: 'The symbol of a unit with wrong capitals.',
    source: 'SI 5.2; SP 811, 6.1.2',
  },
  'prefix-case': {
    severity: 'error',
    meaning: 'A prefix with wrong capitals: K for k.',
    source: 'SI chapter 3, table of prefixes (clause from memory); SP 811, 6.2.2',
  },
  'prefix-unlikely': {
    severity: 'warning',
    meaning: 'A prefix that is hardly meant: m for M, or M for m.',
    source: 'SI chapter 3, table of prefixes (clause from memory); SP 811, 6.2.2',
  },
  'prefix-apart': {
    severity: 'error',
    meaning: 'A space between a prefix and its unit.',
    source: 'SI 5.2 and chapter 3; SP 811, 6.2.1 and 6.2.3',
  },
  'prefix-alone': { severity: 'error', meaning: 'A prefix without a unit.', source: 'SI 5.2; SP 811, 6.2.6' },
  'prefix-double': {
    severity: 'error',
    meaning: 'Two prefixes before one unit.',
    source: 'SI 5.2; SP 811, 6.2.4',
  },
  'micro-letter': {
    severity: 'note',
    meaning: 'The letter u in place of µ.',
    source: 'SI chapter 3, table of prefixes (clause from memory)',
  },
  'unit-plural': {
    severity: 'error',
    meaning: 'The symbol of a unit in the plural.',
    source: 'SI 5.2; SP 811, 6.1.3',
  },
  'unit-stop': {
    severity: 'warning',
    meaning: 'A full stop behind the symbol of a unit inside a sentence.',
    source: 'SI 5.2; SP 811, 6.1.4',
  },
  'unit-abbreviation': {
    severity: 'warning',
    meaning: 'An abbreviation in place of a symbol: secs, amps, sq. cm.',
    source: 'SI 5.2; SP 811, 6.1.8',
  },
  'unit-mixed': {
    severity: 'error',
    meaning: 'Symbols and names of units mixed: kohm, V per m.',
    source: 'SI 5.2; SP 811, 6.1.7',
  },
  'unit-name-case': {
    severity: 'warning',
    meaning: 'The name of a unit with a capital.',
    source: 'SI 5.3 (clause from memory); SP 811, 9.1',
  },
  'unit-name-apart': {
    severity: 'warning',
    meaning: 'A prefix that stands apart from the name of its unit: kilo ohms.',
    source: 'SI 5.3 (clause from memory); SP 811, 9.3',
  },
  'unit-old-name': {
    severity: 'warning',
    meaning: 'A name that a unit no longer has: degrees centigrade.',
    source: 'SP 811, 9.1',
  },
  'unit-product': {
    severity: 'error',
    meaning: 'Two symbols of units run into one word: Vm⁻¹.',
    source: 'SI 5.2; SP 811, 6.1.5',
  },
  'unit-product-stop': {
    severity: 'warning',
    meaning: 'A full stop as the sign of a product of units.',
    source: 'SI 5.2; SP 811, 6.1.5',
  },
  'unit-exponent': {
    severity: 'note',
    meaning: 'The power of a unit on the line: cm2, V m-1.',
    source: 'SI 5.2; SP 811, 6.1.5',
  },
  'unit-quotient': {
    severity: 'error',
    meaning: 'Two solidi, or a solidus before a negative power.',
    source: 'SI 5.2; SP 811, 6.1.6',
  },
  'direct-current': {
    severity: 'note',
    meaning:
      'Letters for direct or alternating current joined to the unit: VDC; or other ones than those of the house style.',
    source: 'SI 5.4.2 (clause from memory); SP 811, 7.4',
  },
  'unit-attached': {
    severity: 'warning',
    meaning: 'Words of the quantity joined to the unit: kVmax.',
    source: 'SI 5.4.2 (clause from memory); SP 811, 7.4',
  },
  'unit-alone': {
    severity: 'note',
    meaning: 'The symbol of a unit in a sentence without a number.',
    source: 'SP 811, 7.8',
  },
  'square-sign': {
    severity: 'note',
    meaning: 'Ohm per square written as if the square were a unit: Ω/sq.',
    source: 'convention of the trade; SI 5.4.2 (clause from memory)',
  },
  'square-size': {
    severity: 'error',
    meaning: 'A sheet resistance per square centimetre: the size of the square does not matter.',
    source: 'convention of the trade; SI 5.4.2 (clause from memory)',
  },
  'strength-unit': {
    severity: 'error',
    meaning: 'A field strength in volts.',
    source: 'IEC 80000-6:2022',
  },
  'potential-unit': {
    severity: 'error',
    meaning: 'A potential in volts per metre.',
    source: 'IEC 80000-6:2022',
  },
  'strength-style': {
    severity: 'warning',
    meaning:
      'A field strength in the other of the units V/m and N/C than the house style of the department has.',
    source: 'house style of the department',
  },
  'no-unit': {
    severity: 'error',
    meaning: 'A reading without its unit.',
    source: 'SI 5.4.1 (clause from memory)',
  },
  'leading-zero': { severity: 'warning', meaning: 'No digit before the decimal point.', source: 'SI 5.4.4' },
  'text-comma': {
    severity: 'warning',
    meaning: 'A decimal comma in an English text.',
    source: 'SI 5.4.4',
  },
  'thousands-comma': {
    severity: 'warning',
    meaning: 'A comma between the digits of a large number.',
    source: 'SI 5.4.4',
  },
  'digit-groups': {
    severity: 'note',
    meaning:
      'Five digits or more without spaces between groups of three; four digits where the house style has said.',
    source: 'SI 5.4.4; SP 811, 10.5.3',
  },
  'times-sign': {
    severity: 'warning',
    meaning: 'A power of ten written with another sign than ×, or on the line.',
    source: 'SI 5.4.6 (clause from memory); SP 811, 10.5.4',
  },
  'one-unit': {
    severity: 'warning',
    meaning: 'One value in two units: 1 V 500 mV.',
    source: 'SI 5.4.3',
  },
  'range-dash': {
    severity: 'warning',
    meaning: 'A dash between two values, which can be read as a minus sign.',
    source: 'SP 811, 7.7',
  },
  'sides-unit': {
    severity: 'warning',
    meaning: 'Sides of a rectangle without a unit on each, or without the sign ×.',
    source: 'SP 811, 7.7',
  },
  'plus-minus': {
    severity: 'warning',
    meaning: 'An uncertainty whose unit does not stand for value and uncertainty alike.',
    source: 'SP 811, 7.7',
  },
  'uncertainty-digits': {
    severity: 'warning',
    meaning: 'The last digits of a value and of its uncertainty do not line up.',
    source: 'GUM (JCGM 100), 7.2.6; common practice of schools',
  },
  'figures-many': {
    severity: 'warning',
    meaning: 'A result with more significant figures than its data can give.',
    source: 'common practice, no source',
  },
  'column-decimals': {
    severity: 'warning',
    meaning: 'The number of decimals varies within a column.',
    source: 'SI 5.4.4',
  },
  'heading-brackets': {
    severity: 'note',
    meaning: 'The unit of a column in brackets; the SI writes quantity / unit.',
    source: 'SI 5.4.1 (clause from memory); IUPAC Green Book, 1.1; SP 811, 7.1',
  },
  'heading-solidus': {
    severity: 'warning',
    meaning: 'The unit of a column behind a solidus, where the house style of the department has brackets.',
    source: 'house style of the department',
  },
  'heading-words': {
    severity: 'note',
    meaning: 'The unit of a column behind a comma or "in"; the SI writes quantity / unit.',
    source: 'SI 5.4.1 (clause from memory); IUPAC Green Book, 1.1; SP 811, 7.1',
  },
  'heading-solidi': {
    severity: 'warning',
    meaning: 'Two solidi in the heading of a column.',
    source: 'SI 5.4.1 (clause from memory); IUPAC Green Book, 1.1; SP 811, 7.1',
  },
  spelling: {
    severity: 'note',
    meaning: 'A word spelt the American way in a British sheet, or the other way round.',
    source: 'dictionaries; the language is said by sheet or department',
  },
  'unit-in-cell': {
    severity: 'warning',
    meaning: 'A unit in the cells of a column whose heading has it already, or has another.',
    source: 'SI 5.4.1 (clause from memory); IUPAC Green Book, 1.1; SP 811, 7.1',
  },
} as const satisfies Record<string, CatalogueEntry>;
