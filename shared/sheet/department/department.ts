/** What a department has decided for all its sheets: severities, limits, house style, review period. Without a file all is as usual. */
import type { FindingCode } from '../../findings/catalogue.ts';
import type { Severity } from '../../findings/entry.ts';
import { type LimitName, type LimitUnit, usualLimits } from './limits.ts';

export interface Department {
  /** Name of its file; null where there is none. */
  readonly file: string | null;
  /** Of findings that the department takes more or less seriously than is usual. Never of a stop. */
  readonly severities: ReadonlyMap<FindingCode, SettableSeverity>;
  readonly limits: Limits;
  readonly style: HouseStyle;
  /** Months from one review of a sheet to the next. */
  readonly reviewMonths: number;
}

export type SettableSeverity = Exclude<Severity, 'stop'>;

export interface Limit {
  /** In `unit`, which is that of the table. */
  readonly value: number;
  readonly unit: LimitUnit;
  /** On whose word: published source, school rule, or "common practice, no source". */
  readonly source: string;
  /** True where the department allows more than is usual. */
  readonly loosened: boolean;
}

export type Limits = Readonly<Record<LimitName, Limit>>;

/** Matters on which good schools differ. Null: the department has not said, and both ways may stand. */
export interface HouseStyle {
  /** `x / mm` or `x (mm)`. */
  readonly headings: 'solidus' | 'brackets' | null;
  /** `10 %` or `10%`. */
  readonly percent: 'spaced' | 'joined' | null;
  /** `6 V d.c.` or `6 V DC`. */
  readonly directCurrent: 'd.c.' | 'DC' | null;
  /** `1500` or `1 500`; five digits and more are always in groups. */
  readonly fourDigits: 'together' | 'grouped' | null;
  /** Of a field strength. */
  readonly strength: 'V/m' | 'N/C' | null;
  /** Of sheets that do not say. */
  readonly language: 'en-GB' | 'en-US' | null;
}

export const usualDepartment: Department = {
  file: null,
  severities: new Map(),
  limits: Object.fromEntries(
    Object.entries(usualLimits).map(([name, { value, unit, source }]) => [
      name,
      { value, unit, source, loosened: false },
    ]),
    // Its keys are those of the table.
  ) as Limits,
  style: {
    headings: null,
    percent: null,
    directCurrent: null,
    fourDigits: null,
    strength: null,
    language: null,
  },
  reviewMonths: 12,
};
