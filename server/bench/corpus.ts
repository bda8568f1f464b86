/**
 * A corpus of marked sheets, and how well the checks find what is marked. A line of its own marks the line above it:
 *
 *     The mid-line reads 0,75 V.
 *     <!-- expect: text-comma -->
 *
 * In `department.yaml` the mark is a remark: `# expect: department-key`. Marks are taken out before a text is read. Several codes stand
 * with commas; a code stands twice where it is found twice.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import {
  conclude,
  type Department,
  draftSheet,
  type Finding,
  lineIndex,
  type Outcome,
  readDepartment,
  type Setup,
  toldFamilies,
} from '../../shared/index.ts';

export interface MarkedText {
  /** Below the folder of the corpus. */
  readonly name: string;
  /** Without its marks. */
  readonly text: string;
  readonly marks: readonly Mark[];
}

export interface Mark {
  readonly code: string;
  /** From 0, in the text without marks. */
  readonly line: number;
}

export interface CorpusFolder {
  readonly department: MarkedText | null;
  readonly sheets: readonly MarkedText[];
}

/** What became of the marks of one text. */
export interface Verdict {
  readonly name: string;
  readonly found: readonly Mark[];
  readonly missed: readonly Mark[];
  /** Findings that no mark asks for. */
  readonly unasked: readonly Finding[];
}

/** Counts of a group of codes. */
export interface Score {
  readonly group: string;
  readonly marked: number;
  readonly found: number;
  /** Stops, errors and warnings that no mark asks for. */
  readonly unasked: number;
  readonly unaskedNotes: number;
}

/** The day on which the corpus is read. */
export const corpusDay = '2026-10-01';

const markLine = /^\s*(?:> ?)*(?:<!--|#) expect: ([a-z, -]+?)(?: -->)?\s*$/u;

export function readMarked(name: string, marked: string): MarkedText {
  const kept: string[] = [];
  const marks: Mark[] = [];
  for (const line of marked.split('\n')) {
    const codes = markLine.exec(line)?.[1];
    if (codes === undefined) kept.push(line);
    else marks.push(...codes.split(/, */u).map((code) => ({ code, line: kept.length - 1 })));
  }
  return { name, text: kept.join('\n'), marks };
}

/** The folders of the corpus by their names; a `department.yaml` in one is that of its sheets. */
export function readCorpus(root: string): readonly CorpusFolder[] {
  const folders = readdirSync(root, { withFileTypes: true }).filter((entry) => entry.isDirectory());
  return folders
    .map(({ name }) => name)
    .sort()
    .map((folder) => {
      const read = (file: string): MarkedText =>
        readMarked(`${folder}/${file}`, readFileSync(join(root, folder, file), 'utf8'));
      const sheets = readdirSync(join(root, folder)).filter((file) => file.endsWith('.md'));
      return {
        department: existsSync(join(root, folder, 'department.yaml')) ? read('department.yaml') : null,
        sheets: sheets.sort().map(read),
      };
    });
}

/** Reads every text of the folder; `outcome` solves, and may remember what it solved. */
export function judgeFolder(
  { department, sheets }: CorpusFolder,
  outcome: (setup: Setup) => Outcome,
): readonly Verdict[] {
  const reading = department && readDepartment(department);
  return [
    ...(department && reading ? [judge(department, reading.findings)] : []),
    ...sheets.map((sheet) => judge(sheet, findingsOf(sheet, reading?.department ?? null, outcome))),
  ];
}

export function findingsOf(
  { name, text }: Pick<MarkedText, 'name' | 'text'>,
  department: Department | null,
  outcome: (setup: Setup) => Outcome,
): readonly Finding[] {
  const standards = { today: corpusDay, ...(department && { department }) };
  return conclude(draftSheet({ name, text }, standards), outcome).findings;
}

export function judge({ name, text, marks }: MarkedText, findings: readonly Finding[]): Verdict {
  const index = lineIndex(text);
  const open = [...marks];
  const found: Mark[] = [];
  const unasked = findings.filter(({ code, span }) => {
    const { line } = index.placeOf(span.from);
    const at = open.findIndex((mark) => mark.code === code && mark.line === line);
    found.push(...(at < 0 ? [] : open.splice(at, 1)));
    return at < 0;
  });
  return { name, found, missed: open, unasked };
}

const stops = 'What is no practical for pupils';
const front = 'Front matter and review';
const house = 'House style and the file of a department';

/** Families of codes as they are told, with a few that are counted by themselves. */
const groupOf: ReadonlyMap<string, string> = new Map(
  toldFamilies().flatMap(({ about, told }) =>
    told.map(({ code, severity, source }) => {
      if (severity === 'stop') return [code, stops];
      if (/^(?:front|review|risk)-/u.test(code)) return [code, front];
      if (about === 'The file of a department' || source === 'house style of the department')
        return [code, house];
      return [
        code,
        about === 'Notes on safety, and what is no practical for pupils' ? 'Notes on safety' : about,
      ];
    }),
  ),
);

/** Codes of one group, as they are told. */
export const corpusGroups: readonly string[] = [...new Set(groupOf.values())];

export const codesOf = (group: string): readonly string[] =>
  [...groupOf].flatMap(([code, of]) => (of === group ? [code] : []));

export function scoresOf(verdicts: readonly Verdict[]): readonly Score[] {
  const found = verdicts.flatMap((verdict) => verdict.found);
  const missed = verdicts.flatMap((verdict) => verdict.missed);
  const unasked = verdicts.flatMap((verdict) => verdict.unasked);
  return corpusGroups.map((group) => {
    const within = <T extends { readonly code: string }>(all: readonly T[]): readonly T[] =>
      all.filter(({ code }) => groupOf.get(code) === group);
    const notes = within(unasked).filter(({ severity }) => severity === 'note').length;
    return {
      group,
      marked: within(found).length + within(missed).length,
      found: within(found).length,
      unasked: within(unasked).length - notes,
      unaskedNotes: notes,
    };
  });
}

/** Of what is told, the part that is asked for. */
export const precisionOf = ({ found, unasked }: Score): number =>
  found + unasked === 0 ? 1 : found / (found + unasked);

/** Of what is marked, the part that is found. */
export const recallOf = ({ marked, found }: Score): number => (marked === 0 ? 1 : found / marked);
