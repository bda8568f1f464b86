/** What is told about a code is true: its wrong example has the finding, the right one has none, and the allowance silences it. */
import { describe, expect, it, test } from 'vitest';
import { askOf, conclude, draftSheet } from '../../shared/checks/examine.ts';
import { catalogue, type FindingCode } from '../../shared/findings/catalogue.ts';
import { type Told, toldFamilies } from '../../shared/findings/explanations/index.ts';
import type { Finding } from '../../shared/findings/finding.ts';
import { safetyCodes } from '../../shared/findings/safety-codes.ts';
import { meaningKey } from '../../shared/setup/meaning-key.ts';
import { type Outcome, outcomeOf } from '../../shared/setup/solve-setup.ts';
import { readDepartment } from '../../shared/sheet/department/read-department.ts';
import { lineIndex } from '../../shared/text/source.ts';
import { framed, type Notes } from './frames.ts';

/** No text of a few lines has these. */
const notFromText: Readonly<Partial<Record<FindingCode, string>>> = {
  'bounds-wide': 'only a setup on which the engine spends all its work is bounded so widely',
};

const codes = toldFamilies().flatMap(({ told }) => told);
const tried = codes.flatMap((one) => {
  const { code, wrong, right } = one;
  const notes: Notes = Object.hasOwn(safetyCodes, code) ? 'here' : 'elsewhere';
  return wrong === null || right === null ? [] : [{ code, one, wrong, right, notes }];
});

function found({ from, department }: Pick<Told, 'from' | 'department'>, text: string): readonly Finding[] {
  const file = readDepartment({
    name: 'department.yaml',
    text: from === 'department' ? text : (department ?? ''),
  });
  if (from === 'department') return file.findings;
  expect(file.findings).toEqual([]);
  const standards = { department: file.department, today: '2026-10-01' };
  const draft = draftSheet({ name: 'sheet.md', text }, standards);
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

const codesOf = (findings: readonly Finding[]): readonly FindingCode[] => findings.map(({ code }) => code);

/** What the frames are asked about is not an example's doing. */
const usual = new Set(
  (['here', 'elsewhere'] as const).flatMap((notes) =>
    codesOf(found({ from: 'block' }, framed('block', '', notes))),
  ),
);

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
      /\b(safe|safely|approved|compliant|harmless|low hazard|no risk|none needed)\b/i,
    );
  });

  test.each(codes.filter(({ severity }) => severity === 'stop'))('$code is never allowed', ({ allow }) => {
    expect(allow).toBeNull();
  });
});

describe('examples', () => {
  test.each(tried)('$code: the wrong one has it, until it is allowed', ({ code, one, wrong, notes }) => {
    const text = framed(one.from, wrong, notes);
    const all = found(one, text);
    const first = all.find((finding) => finding.code === code);
    expect(first, codesOf(all).join()).toBeDefined();
    if (one.allowance.kind === 'never') return;
    const index = lineIndex(text);
    const line = index.placeOf(first?.span.from ?? 0).line;
    const start = index.startOf(line);
    const indent = /^ */u.exec(text.slice(start, index.endOf(line)))?.[0] ?? '';
    const left = found(one, `${text.slice(0, start)}${indent}${one.allowance.line}\n${text.slice(start)}`);
    expect(codesOf(left)).not.toContain(code);
    expect(codesOf(left)).not.toContain('allow-unused');
  });

  test.each(tried)('$code: the right one has neither it nor a new slip', ({ code, one, ...example }) => {
    const { wrong, right, notes } = example;
    const left = found(one, framed(one.from, right, notes));
    expect(codesOf(left)).not.toContain(code);
    // A sheet that asks for notes on safety asks for others too: only what was not asked before is new.
    const asked = notes === 'here' ? codesOf(found(one, framed(one.from, wrong, notes))) : [];
    const slips = left.filter((other) => other.severity !== 'note' && !usual.has(other.code));
    expect(slips.filter((other) => !asked.includes(other.code))).toEqual([]);
  });
});
