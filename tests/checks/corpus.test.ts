/**
 * The corpus: sheets as people write them, clean ones and ones with seeded mistakes, against what is marked in them. Every figure is a
 * count over all sheets; a group of findings is held to the same goal whatever its size.
 */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it, test } from 'vitest';
import {
  codesOf,
  corpusGroups,
  findingsOf,
  judgeFolder,
  type MarkedText,
  precisionOf,
  readCorpus,
  readMarked,
  recallOf,
  scoresOf,
} from '../../server/bench/corpus.ts';
import { draftSheet } from '../../shared/checks/examine.ts';
import { certainEdits } from '../../shared/editing/fixes.ts';
import type { Finding } from '../../shared/findings/finding.ts';
import { meaningKey } from '../../shared/setup/meaning-key.ts';
import type { Setup } from '../../shared/setup/setup.ts';
import { type Outcome, outcomeOf } from '../../shared/setup/solve-setup.ts';
import { type Department, usualDepartment } from '../../shared/sheet/department/department.ts';
import { readDepartment } from '../../shared/sheet/department/read-department.ts';
import { lineIndex } from '../../shared/text/source.ts';
import { applied } from '../check.ts';

const goal = 0.98;
const folders = readCorpus(fileURLToPath(new URL('corpus', import.meta.url)));
const sheets = folders.flatMap((folder) => folder.sheets.map((sheet) => ({ sheet, folder })));

/** Setups of one meaning are solved once. */
const solved = new Map<string, Outcome>();
function outcome(setup: Setup): Outcome {
  const key = meaningKey(setup);
  const known = solved.get(key) ?? outcomeOf(setup, { gap: 1e-5, traces: 'equipotentials', samples: [] });
  solved.set(key, known);
  return known;
}

const verdicts = folders.flatMap((folder) => judgeFolder(folder, outcome));
const scores = scoresOf(verdicts);

describe('the corpus', () => {
  it('has clean sheets and sheets with mistakes, some of each department', () => {
    const clean = sheets.filter(({ sheet }) => sheet.marks.length === 0);
    expect(clean.length).toBeGreaterThanOrEqual(25);
    expect(sheets.length - clean.length).toBeGreaterThanOrEqual(35);
    expect(folders.filter(({ department }) => department !== null).length).toBeGreaterThanOrEqual(2);
    for (const { sheet } of sheets) expect(sheet.text, sheet.name).toContain('```electrodes');
  });

  it('keeps its clean sheets clean: no mark stands in them', () => {
    const folder = folders.find(({ sheets: [first] }) => first?.name.startsWith('clean/'));
    expect(folder?.sheets.filter(({ marks }) => marks.length > 0)).toEqual([]);
  });

  it('marks codes that there are', () => {
    const codes = new Set(corpusGroups.flatMap(codesOf));
    const marks = verdicts.flatMap(({ found, missed }) => [...found, ...missed]);
    expect(marks.filter(({ code }) => !codes.has(code))).toEqual([]);
    expect(marks.length).toBeGreaterThan(150);
  });

  it('says nothing that we never say of a practical', () => {
    const ours = /\b(?:approved|compliant|harmless|low hazard|no risk)\b/iu;
    expect(sheets.filter(({ sheet }) => ours.test(sheet.text)).map(({ sheet }) => sheet.name)).toEqual([]);
  });
});

it('is told on its page as it is counted', () => {
  const page = readFileSync(fileURLToPath(new URL('../../docs/checks.md', import.meta.url)), 'utf8');
  const rows = scores.map(
    ({ group, marked, found, unasked, unaskedNotes }) =>
      `| ${group} | ${marked} | ${found} | ${unasked} | ${unaskedNotes} |`,
  );
  expect(page).toContain(rows.join('\n'));
  expect(page).toContain(`${sheets.length} sheets`);
});

describe.each(scores)('$group', (score) => {
  it('has marks to be counted', () => {
    expect(score.marked).toBeGreaterThan(0);
  });

  it(`tells what is there: precision of ${goal} or more`, () => {
    expect(precisionOf(score), unaskedIn(score.group)).toBeGreaterThanOrEqual(goal);
  });

  it(`finds what is there: recall of ${goal} or more`, () => {
    expect(recallOf(score), missedIn(score.group)).toBeGreaterThanOrEqual(goal);
  });
});

function unaskedIn(group: string): string {
  const codes = codesOf(group);
  return verdicts
    .flatMap(({ name, unasked }) =>
      unasked
        .filter(({ code, severity }) => severity !== 'note' && codes.includes(code))
        .map(({ code, message }) => `${name}: ${code}: ${message}`),
    )
    .join('\n');
}

function missedIn(group: string): string {
  const codes = codesOf(group);
  return verdicts
    .flatMap(({ name, missed }) =>
      missed
        .filter(({ code }) => codes.includes(code))
        .map(({ code, line }) => `${name}: ${code} is not found in line ${line + 1} without marks`),
    )
    .join('\n');
}

describe('certain fixes, all at once', () => {
  const departments = new Map<string, Department>(
    folders.flatMap(({ department, sheets: own }) =>
      department === null
        ? []
        : own.map(({ name }) => [name, readDepartment(department).department] as const),
    ),
  );
  const findings = ({ name, text }: Pick<MarkedText, 'name' | 'text'>): readonly Finding[] =>
    findingsOf({ name, text }, departments.get(name) ?? usualDepartment, outcome);
  const isCertain = ({ fixes }: Finding): boolean => fixes.some(({ certain }) => certain);
  const withFixes = sheets.filter(({ sheet }) => findings(sheet).some(isCertain));

  it('there are some in many sheets', () => {
    expect(withFixes.length).toBeGreaterThan(12);
  });

  test.each(withFixes)('$sheet.name', ({ sheet }) => {
    const before = findings(sheet);
    const edits = certainEdits(before);
    const wanted = before
      .filter(isCertain)
      .flatMap(({ fixes }) => fixes.find(({ certain }) => certain)?.edits ?? []);
    expect(edits, 'no two meet').toHaveLength(wanted.length);
    const mended = { name: sheet.name, text: applied(sheet.text, edits) };
    const after = findings(mended);
    expect(after.filter(isCertain).map(told(mended)), 'nothing is left to mend').toEqual([]);
    expect(certainEdits(after), 'a second time changes nothing').toEqual([]);
    const known = new Set(before.map(({ code }) => code));
    expect(
      after.filter(({ code, severity }) => severity !== 'note' && !known.has(code)).map(told(mended)),
      'and nothing new is found',
    ).toEqual([]);
    expect(meanings(mended), 'blocks mean what they meant').toEqual(meanings(sheet));
  });

  const told =
    ({ text }: Pick<MarkedText, 'text'>) =>
    ({ code, message, span }: Finding): string =>
      `${lineIndex(text).placeOf(span.from).line + 1}: ${code}: ${message}`;

  /** Of the setups without errors: a line that could not be read means something once it is mended. */
  function meanings({ name, text }: Pick<MarkedText, 'name' | 'text'>): readonly string[] {
    return draftSheet({ name, text })
      .setups.filter((_, i) => soundBlocks(name).includes(i))
      .map(meaningKey);
  }

  function soundBlocks(name: string): readonly number[] {
    const sheet = sheets.find((one) => one.sheet.name === name)?.sheet;
    const draft = draftSheet({ name, text: sheet?.text ?? '' });
    return draft.setups.flatMap(({ solvable, findings: own }, i) => {
      const all = [...own, ...(draft.sheet.blocks[i]?.block.findings ?? [])];
      return solvable && all.every(({ severity }) => severity !== 'error') ? [i] : [];
    });
  }
});

describe('reading marks', () => {
  it('takes them out and counts lines without them', () => {
    const { text, marks } = readMarked(
      'a.md',
      'one\n<!-- expect: unit-space, unit-case -->\ntwo\n  # expect: spelling\n',
    );
    expect(text).toBe('one\ntwo\n');
    expect(marks).toEqual([
      { code: 'unit-space', line: 0 },
      { code: 'unit-case', line: 0 },
      { code: 'spelling', line: 1 },
    ]);
  });

  it('leaves other comments', () => {
    const text = 'one\n<!-- papervolt: allow spelling because so -->\n<!-- expected -->\n';
    expect(readMarked('a.md', text)).toEqual({ name: 'a.md', text, marks: [] });
  });
});
