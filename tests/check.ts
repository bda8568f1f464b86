/**
 * Tests as documents: a text with marks under its lines that say which findings are made there.
 *
 *     supply cell 1,5 V
 *                 ^^^ error decimal-comma decimal comma
 *                 => supply cell 1.5 V
 *
 * Carets lie under the span, a `|` under an empty one; `…` behind them: the span goes on in the next lines. Then severity, code, and if
 * you like a part of the message. Lines with `=>` show the marked line after each fix, in order; all of them or none. A finding that is
 * not marked, and a mark that is not found, fail the test, which then shows the document as it should be marked.
 */
import { expect } from 'vitest';
import type { Finding, Fix } from '../shared/findings/finding.ts';
import { type LineIndex, lineIndex } from '../shared/text/source.ts';

/** Holds the findings made for the text against its marks. */
export function check(marked: string, findingsOf: (text: string) => readonly Finding[]): void {
  const expected = parseMarks(dedent(marked));
  const shown = show(expected, findingsOf(expected.text));
  expect(shown).toBe(dedent(marked));
}

/** The text without its marks. */
export function unmarked(marked: string): string {
  return parseMarks(dedent(marked)).text;
}

/** The text after the edits of a fix. */
export function applied(text: string, edits: Fix['edits']): string {
  const ordered = [...edits].sort((a, b) => b.span.from - a.span.from);
  return ordered.reduce(
    (old, edit) => old.slice(0, edit.span.from) + edit.text + old.slice(edit.span.to),
    text,
  );
}

/** A text written indented in a test: without the first and last line break and the indentation that all lines share. */
export function dedent(text: string): string {
  const lines = text
    .replace(/^\n/u, '')
    .replace(/\n[ ]*$/u, '')
    .split('\n');
  const indents = lines
    .filter((line) => line.trim() !== '')
    .map((line) => line.length - line.trimStart().length);
  const indent = indents.length === 0 ? 0 : Math.min(...indents);
  return lines.map((line) => line.slice(indent)).join('\n');
}

interface Mark {
  readonly line: number;
  /** Columns in characters, and whether the span goes on. */
  readonly from: number;
  readonly to: number;
  readonly open: boolean;
  readonly severity: string;
  readonly code: string;
  readonly says: string;
  readonly fixes: string[];
  /** The lines as written. */
  readonly raw: string[];
}

interface Marked {
  readonly text: string;
  readonly marks: readonly Mark[];
}

const markPattern = /^( *)(\^+…?|\|) (stop|error|warning|note) ([a-z-]+) ?(.*)$/u;
const fixPattern = /^ *=> (.*)$/u;

function parseMarks(marked: string): Marked {
  const kept: string[] = [];
  const marks: Mark[] = [];
  for (const line of marked.split('\n')) {
    const [all, space = '', carets = '', severity = '', code = '', says = ''] = markPattern.exec(line) ?? [];
    const fix = fixPattern.exec(line)?.[1];
    const last = marks.at(-1);
    if (fix !== undefined && last !== undefined && last.line === kept.length - 1) {
      last.fixes.push(fix);
      last.raw.push(line);
    } else if (all !== undefined) {
      const from = space.length;
      const to = carets === '|' ? from : from + carets.replace('…', '').length;
      const open = carets.endsWith('…');
      marks.push({ line: kept.length - 1, from, to, open, severity, code, says, fixes: [], raw: [line] });
    } else kept.push(line);
  }
  return { text: kept.join('\n'), marks };
}

/** The document with the marks that stand, and for findings without a mark one as it could be written. */
function show({ text, marks }: Marked, findings: readonly Finding[]): string {
  const index = lineIndex(text);
  const unused = new Set(marks);
  const below = new Map<number, string[]>();
  const ordered = [...findings].sort((a, b) => a.span.from - b.span.from || a.span.to - b.span.to);
  for (const finding of ordered) {
    const actual = markOf(text, index, finding);
    const mark = [...unused].find((candidate) => fits(candidate, actual));
    if (mark !== undefined) unused.delete(mark);
    const lines = below.get(actual.line) ?? [];
    below.set(actual.line, [...lines, ...(mark ?? actual).raw]);
  }
  return text
    .split('\n')
    .flatMap((line, i) => [line, ...(below.get(i) ?? [])])
    .join('\n');
}

function fits(mark: Mark, actual: Mark): boolean {
  const same = mark.line === actual.line && mark.from === actual.from && mark.to === actual.to;
  const sameFixes = mark.fixes.length === 0 || mark.fixes.join('\n') === actual.fixes.join('\n');
  const sameKind =
    mark.severity === actual.severity && mark.code === actual.code && mark.open === actual.open;
  return same && sameKind && sameFixes && actual.says.includes(mark.says);
}

function markOf(text: string, index: LineIndex, finding: Finding): Mark {
  const { line } = index.placeOf(finding.span.from);
  const start = index.startOf(line);
  const end = index.endOf(line);
  const from = characters(text, start, finding.span.from);
  const to = from + characters(text, finding.span.from, Math.min(finding.span.to, end));
  const open = finding.span.to > end;
  const fixes = finding.fixes.map((fix) => lineAfter(text, line, fix));
  const space = ' '.repeat(from);
  const carets = (to === from ? '|' : '^'.repeat(to - from)) + (open ? '…' : '');
  const { severity, code, message: says } = finding;
  const raw = [`${space}${carets} ${severity} ${code} ${says}`, ...fixes.map((fix) => `${space}=> ${fix}`)];
  return { line, from, to, open, severity, code, says, fixes, raw };
}

/** The marked line, or what became of it. */
function lineAfter(text: string, line: number, fix: Fix): string {
  return applied(text, fix.edits).split('\n')[line] ?? '';
}

function characters(text: string, from: number, to: number): number {
  return [...text.slice(from, to)].length;
}
