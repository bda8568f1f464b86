/** What is told about a code is true: its wrong example has the finding, the right one has none, and the allowance silences it. */
import { describe, expect, it, test } from 'vitest';
import { askOf, conclude, draftSheet } from '../../shared/checks/examine.ts';
import { catalogue, type FindingCode } from '../../shared/findings/catalogue.ts';
import { type Told, toldFamilies } from '../../shared/findings/explanations/index.ts';
import type { Finding } from '../../shared/findings/finding.ts';
import { meaningKey } from '../../shared/setup/meaning-key.ts';
import { type Outcome, outcomeOf } from '../../shared/setup/solve-setup.ts';
import { readDepartment } from '../../shared/sheet/department/read-department.ts';
import { lineIndex } from '../../shared/text/source.ts';
import { framed } from './frames.ts';

/** No text of a few lines has these. */
const notFromText: Readonly<Partial<Record<FindingCode, string>>> = {
  'allow-stop': 'no finding of severity stop is made yet',
  'bounds-wide': 'only a setup on which the engine spends all its work is bounded so widely',
};

const codes = toldFamilies.flatMap(({ told }) => told);
const tried = codes.flatMap((one) => {
  const { code, wrong, right } = one;
  return wrong === null || right === null ? [] : [{ code, one, wrong, right }];
});

function found({ from, department }: Pick<Told, 'from' | 'department'>, text: string): readonly Finding[] {
  const file = readDepartment({
    name: 'department.yaml',
    text: from === 'department' ? text : (department ?? ''),
  });
  if (from === 'department') return file.findings;
  expect(file.findings).toEqual([]);
  const draft = draftSheet({ name: 'sheet.md', text }, { department: file.department });
  return conclude(draft, (setup) => {
    const ask = askOf(draft, setup, { gap: 1e-4, traces: true });
    const key = meaningKey(setup) + JSON.stringify(ask);
    const outcome = outcomes.get(key) ?? outcomeOf(setup, ask);
    outcomes.set(key, outcome);
    return outcome;
  }).findings;
}

/** Most excerpts stand in the same frame, which is solved once. */
const outcomes = new Map<string, Outcome>();

/** What a plain sheet is asked about is not the example's doing. */
const usual = new Set(found({ from: 'block' }, framed('block', '')).map(({ code }) => code));

describe('each code', () => {
  it('has an explanation', () => {
    expect(codes.map(({ code }) => code).sort()).toEqual(Object.keys(catalogue).sort());
  });

  it('has an example unless no short text can have it', () => {
    const without = codes.filter(({ wrong, right }) => wrong === null || right === null);
    expect(without.map(({ code }) => code)).toEqual(Object.keys(notFromText));
  });

  test.each(codes)('$code says why in a few plain words', ({ why, allow }) => {
    expect(why).toMatch(/^[A-Z`].*[.]$/s);
    expect(why.split(/[.?!] /).length).toBeLessThanOrEqual(3);
    expect(`${why} ${allow}`).not.toMatch(
      /\b(safe|safely|approved|compliant|harmless|low hazard|no risk)\b/i,
    );
  });
});

describe('examples', () => {
  test.each(tried)('$code: the wrong one has it, until it is allowed', ({ code, one, wrong }) => {
    const text = framed(one.from, wrong);
    const all = found(one, text);
    const first = all.find((finding) => finding.code === code);
    expect(first, all.map((finding) => finding.code).join()).toBeDefined();
    if (one.allowance.kind === 'never') return;
    const index = lineIndex(text);
    const line = index.placeOf(first?.span.from ?? 0).line;
    const start = index.startOf(line);
    const indent = /^ */u.exec(text.slice(start, index.endOf(line)))?.[0] ?? '';
    const left = found(one, `${text.slice(0, start)}${indent}${one.allowance.line}\n${text.slice(start)}`);
    const spoken = left.map((finding) => finding.code).filter((other) => !usual.has(other));
    expect(spoken).not.toContain(code);
    expect(spoken).not.toContain('allow-unused');
  });

  test.each(tried)('$code: the right one has neither it nor a new slip', ({ code, one, right }) => {
    const left = found(one, framed(one.from, right)).filter((finding) => !usual.has(finding.code));
    expect(left.filter((finding) => finding.code === code || finding.severity !== 'note')).toEqual([]);
  });
});
