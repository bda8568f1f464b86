/** What the status item says, from what is known. */

export interface Counts {
  readonly errors: number;
  readonly warnings: number;
  readonly notes: number;
}

export interface StatusTexts {
  readonly t: (message: string, ...values: readonly (string | number)[]) => string;
}

/** `2 errors, 1 note`; what there is none of is not named. */
export function countsText({ errors, warnings, notes }: Counts, { t }: StatusTexts): string {
  const parts = [
    errors === 0 ? null : errors === 1 ? t('1 error') : t('{0} errors', errors),
    warnings === 0 ? null : warnings === 1 ? t('1 warning') : t('{0} warnings', warnings),
    notes === 0 ? null : notes === 1 ? t('1 note') : t('{0} notes', notes),
  ].filter((part) => part !== null);
  return parts.length === 0 ? t('no findings') : parts.join(', ');
}
