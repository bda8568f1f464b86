/** Holds the findings of one rule on a marked sheet, which is read and solved. Spaces that do not break are plain ones in the marks. */
import type { Rule, Standards } from '../../../shared/checks/rule.ts';
import { check } from '../../check.ts';
import { findingsOf } from '../stated/sheets.ts';

export function checkRule(rule: Rule, marked: string, standards: Partial<Standards> = {}): void {
  check(marked, (text) =>
    findingsOf(rule, text, standards).map((one) => ({
      ...one,
      message: one.message.replace(/\u00a0/gu, ' '),
    })),
  );
}
