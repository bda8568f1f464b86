/** What a department has decided for all its sheets: severities, limits, house style, review period. Without a file all is as usual. */
import type { FindingCode } from '../../findings/catalogue.ts';
import type { Severity } from '../../findings/entry.ts';
import { type LimitName, type LimitUnit, usualLimits } from './limits.ts';
import type { HouseStyle } from './style.ts';

export interface Department {
  /** Of findings that the department takes more or less seriously than is usual. Never of a stop. */
  readonly severities: ReadonlyMap<FindingCode, SettableSeverity>;
  readonly limits: Limits;
  readonly style: HouseStyle;
  /** From one review of a sheet to the next. */
  readonly reviewMonths: number;
}

export type SettableSeverity = Exclude<Severity, 'stop'>;

export const settableSeverities: readonly SettableSeverity[] = ['error', 'warning', 'note'];

export interface Limit {
  /** In `unit`, which is that of the table. */
  readonly value: number;
  readonly unit: LimitUnit;
  /** On whose word: published source, school rule, or "common practice, no source". */
  readonly source: string;
  /** True where the department allows more than is usual. */
  readonly looser: boolean;
}

export type Limits = Readonly<Record<LimitName, Limit>>;

export const usualDepartment: Department = {
  severities: new Map(),
  limits: Object.fromEntries(
    Object.entries(usualLimits).map(([name, { value, unit, source }]) => [
      name,
      { value, unit, source, looser: false },
    ]),
    // Its keys are those of the table.
  ) as Limits,
  style: {
    headings: null,
    percent: null,
    'direct-current': null,
    'four-digits': null,
    strength: null,
    language: null,
  },
  reviewMonths: 12,
};
