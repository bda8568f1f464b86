/** How the heading of a column says its unit. */
import { type UnitReading, wholeUnit } from './unit-reading.ts';

export type HeadingForm =
  /** `V / mV`. */
  | 'solidus'
  /** `E / V/m`: the unit has a solidus of its own and no brackets. */
  | 'solidi'
  /** `V (mV)`. */
  | 'brackets'
  /** `voltage in V`, `distance, mm`. */
  | 'words';

export interface Heading {
  readonly form: HeadingForm;
  /** Of the quantity: `V`, `Distance from N`. */
  readonly quantity: string;
  readonly unit: UnitReading;
  /** As written. */
  readonly written: string;
  /** Where the quantity ends and where the unit's text begins and ends, with brackets if it has any. */
  readonly quantityTo: number;
  readonly unitFrom: number;
  readonly unitTo: number;
}

const forms: readonly (readonly [RegExp, 'solidus' | 'brackets' | 'words'])[] = [
  [/^([^/]*[^/\s])([ \u00a0]*\/[ \u00a0]*)(\S.*)$/u, 'solidus'],
  [/^(.*[^\s])([ \u00a0]*)([([][^()[\]]{1,16}[)\]])$/u, 'brackets'],
  [/^(.*[^\s,])(,? in |, ?)(\S{1,12})$/u, 'words'],
];

/** Null where no unit is said, or where one letter may be something else. */
export function headingOf(text: string): Heading | null {
  const lead = text.length - text.trimStart().length;
  const trimmed = text.trim();
  for (const [pattern, form] of forms) {
    const [, quantity = '', link = '', written] = pattern.exec(trimmed) ?? [];
    if (written === undefined) continue;
    const bare = written.replace(/^[([](.*)[)\]]$/u, '$1');
    const unit = wholeUnit(bare);
    if (unit === null || unit.slips.length > 0 || !plausible(quantity, unit)) continue;
    const bracketed = bare !== written;
    const solidi = form === 'solidus' && !bracketed && bare.includes('/');
    const quantityTo = lead + quantity.length;
    const unitFrom = quantityTo + link.length;
    return {
      form: solidi ? 'solidi' : form,
      quantity,
      unit,
      written: bare,
      quantityTo,
      unitFrom,
      unitTo: unitFrom + written.length,
    };
  }
  return null;
}

/** "Group (A)", "Answer, C" name no unit; "I (A)" does. */
function plausible(quantity: string, unit: UnitReading): boolean {
  if (unit.named || unit.measure === 'angle' || unit.measure === 'percent') return false;
  if (!/^(?:[ACFJNWhs])$/u.test(unit.symbol)) return true;
  return /^(?:[IQFWPt]|.*(?:current|charge|force|time|energy|power|capacitance).*)$/iu.test(quantity);
}
