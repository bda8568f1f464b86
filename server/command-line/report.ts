/** Findings as lines of text and as plain records. */
import { type Examination, type Finding, isSheet, lineIndex, type Severity } from '../../shared/index.ts';
import type { ExitStatus, Output } from './shell.ts';

/** Of a sheet or of a department's file. */
export interface Findings {
  readonly source: { readonly name: string; readonly text: string };
  readonly findings: readonly Finding[];
}

export const ofSheet = ({ sheet, findings }: Examination): Findings => ({ source: sheet.source, findings });

/** A finding as `papervolt check --json` and `papervolt readings --json` print it. Lines and columns from 1, UTF-16, in the file. */
export interface FindingRecord {
  readonly code: string;
  readonly severity: Severity;
  readonly message: string;
  readonly hints: readonly string[];
  readonly line: number;
  readonly column: number;
  readonly endLine: number;
  readonly endColumn: number;
}

export function findingRecords({ source, findings }: Findings): readonly FindingRecord[] {
  const lines = lineIndex(source.text);
  return findings.map(({ code, severity, message, hints, span }) => {
    const start = lines.placeOf(span.from);
    const end = lines.placeOf(span.to);
    return {
      code,
      severity,
      message,
      hints,
      line: start.line + 1,
      column: start.column + 1,
      endLine: end.line + 1,
      endColumn: end.column + 1,
    };
  });
}

/** `file:line:column: severity code message`, the hints and fixes below. */
export function findingLines(found: Findings, colors: Output['resultColors']): readonly string[] {
  const paint: Readonly<Record<Severity, (text: string) => string>> = {
    stop: (text) => colors.bold(colors.red(text)),
    error: colors.red,
    warning: colors.yellow,
    note: colors.cyan,
  };
  const records = findingRecords(found);
  return found.findings.flatMap((finding, index) => {
    const record = records[index];
    const place = `${found.source.name}:${record?.line}:${record?.column}`;
    const head = `${place}: ${paint[finding.severity](finding.severity)} ${finding.code} ${finding.message}`;
    return [head, ...advice(finding).map((line) => colors.dim(`    ${line}`))];
  });
}

function advice({ hints, fixes }: Finding): readonly string[] {
  return [...hints, ...fixes.map((fix) => `Fix: ${fix.title}`)];
}

/** Where nothing was found although nothing is wrong, it is said: a fence may be misspelt, or the wrong folder named. */
export function emptyLines(examinations: readonly Examination[]): readonly string[] {
  if (examinations.length === 0)
    return ['No sheet was found: a sheet is a Markdown file with an `electrodes` block.'];
  return examinations
    .filter(({ sheet }) => !isSheet(sheet))
    .map(({ sheet }) => `${sheet.source.name}: no \`electrodes\` block stands in it.`);
}

/** 1 with a stop or an error, and with a warning too where the caller is strict. */
export function statusOf(examined: readonly Pick<Findings, 'findings'>[], strict: boolean): ExitStatus {
  const counted: readonly Severity[] = strict ? ['stop', 'error', 'warning'] : ['stop', 'error'];
  return examined.some(({ findings }) => findings.some(({ severity }) => counted.includes(severity))) ? 1 : 0;
}
