/** Risk assessment and reviews in the front matter, against a day that the test sets. */
import { describe, expect, it, test } from 'vitest';
import { monthsLater } from '../../../shared/checks/safety/review.ts';
import { usualDepartment } from '../../../shared/sheet/department/department.ts';
import { applied } from '../../check.ts';
import { codesOf, findingsOf, sheetWith } from './safety.ts';

const bare = sheetWith().replace(/^---[\s\S]*?---\n\n/u, '');
const fronted = (front: string): string => `---\n${front}\n---\n\n${bare}`;
const today = '2026-10-01';

describe('a risk assessment', () => {
  const missing = (text: string): boolean => codesOf(text).includes('risk-assessment-missing');

  it('is asked for, and can be given or be to come', () => {
    expect(missing(bare)).toBe(true);
    expect(missing(fronted('title: T'))).toBe(true);
    expect(missing(fronted('risk-assessment: RA-7, of 2026-09-01'))).toBe(false);
    expect(missing(fronted('risk-assessment: to be assessed'))).toBe(false);
    expect(missing(bare.replace('- Wash', '- Risk assessment: RA-12.\n- Wash'))).toBe(false);
    expect(missing(bare.replace('- Wash', '- Read the risk assessment.\n- Wash'))).toBe(true);
  });

  test.each([
    ['in the front matter', fronted('title: T'), '---\ntitle: T\nrisk-assessment: to be assessed\n---\n\n'],
    ['in a front matter of its own', bare, '---\nrisk-assessment: to be assessed\n---\n\n'],
    ['in an empty one', fronted('# nothing'), '---\n# nothing\nrisk-assessment: to be assessed\n---\n\n'],
  ])('has its fix %s', (_, text, head) => {
    const [fix] = findingsOf(text).find(({ code }) => code === 'risk-assessment-missing')?.fixes ?? [];
    const fixed = applied(text, fix?.edits ?? []);
    expect(fixed).toBe(head + bare);
    expect(missing(fixed)).toBe(false);
    expect(fix?.certain).toBe(false);
  });

  it('is said to be the affair of whoever holds the duty', () => {
    const hints = (text: string): string =>
      findingsOf(text)
        .find(({ code }) => code === 'risk-assessment-missing')
        ?.hints.join(' ') ?? '';
    expect(hints(bare)).toContain('Whoever holds the duty where you work (in the UK the employer) decides.');
    expect(hints(fronted('language: en-US'))).toContain('district and state rules');
  });
});

describe('a review', () => {
  const codes = (front: string, day: string | null): readonly string[] =>
    codesOf(fronted(`risk-assessment: RA-7\n${front}`), { today: day });

  test.each([
    ['next-review: 2027-09-01', today, []],
    ['next-review: 2026-10-01', today, []],
    ['next-review: 2026-09-30', today, ['review-past']],
    ['next-review: 2026-09-30', null, []],
    ['next-review: soon', today, []],
    ['reviewed: 2025-10-01\nnext-review: 2027-09-01', today, []],
    ['reviewed: 2025-09-30\nnext-review: 2027-09-01', today, ['review-stale']],
    ['reviewed: 2025-09-30\nnext-review: 2027-09-01', null, []],
    ['reviewed: 2025-09-30\nnext-review: 2026-09-01', today, ['review-past']],
    ['reviewed: 2026-09-30', today, ['review-missing']],
    ['title: T', null, ['review-missing']],
  ])('%s on %s', (front, day, expected) => {
    expect(codes(front, day)).toEqual(expected);
  });

  it('comes round as often as the department says', () => {
    const text = fronted('risk-assessment: RA-7\nreviewed: 2025-09-30\nnext-review: 2027-09-01');
    const department = { ...usualDepartment, reviewMonths: 24 };
    expect(codesOf(text, { today, department })).toEqual([]);
  });

  it('is offered one period after the last one', () => {
    const fixOn = (front: string, day: string | null): string | undefined =>
      findingsOf(fronted(front), { today: day }).find(({ code }) => code === 'review-missing')?.fixes[0]
        ?.title;
    expect(fixOn('reviewed: 2026-09-30', null)).toBe('Add “next-review: 2027-09-30”');
    expect(fixOn('title: T', '2026-10-01')).toBe('Add “next-review: 2027-10-01”');
    expect(fixOn('title: T', null)).toBeUndefined();
  });
});

test.each([
  ['2026-03-12', 12, '2027-03-12'],
  ['2026-01-31', 1, '2026-02-28'],
  ['2028-01-31', 1, '2028-02-29'],
  ['2024-02-29', 12, '2025-02-28'],
  ['2026-11-30', 3, '2027-02-28'],
  ['2026-12-15', 24, '2028-12-15'],
])('%s and %i months are %s', (date, months, later) => {
  expect(monthsLater(date, months)).toBe(later);
});
