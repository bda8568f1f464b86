/** `papervolt check`: what Papervolt has to say about sheets. */
import { examineSheet } from '../../shared/index.ts';
import { readInputs } from './inputs.ts';
import type { ExitStatus, Output } from './output.ts';
import { findingLines, findingRecords, statusOf } from './report.ts';

export interface CheckOptions {
  readonly json?: boolean;
  readonly strict?: boolean;
  readonly stdinName?: string;
}

export function check(named: readonly string[], options: CheckOptions, output: Output): ExitStatus {
  const inputs = readInputs(named, { folder: process.cwd(), stdinName: options.stdinName ?? null });
  const examinations = inputs.map(({ name, text }) => examineSheet({ name, text }));
  if (options.json) {
    const sheets = examinations.map((examination) => ({
      sheet: examination.sheet.source.name,
      findings: findingRecords(examination),
    }));
    output.result(JSON.stringify({ sheets }, null, 2));
  } else {
    for (const examination of examinations)
      for (const line of findingLines(examination, output)) output.result(line);
    output.say(summary(examinations.length, examinations.flatMap(({ findings }) => findings).length));
  }
  return statusOf(examinations, options.strict ?? false);
}

function summary(sheets: number, findings: number): string {
  const counted = (count: number, word: string): string => `${count} ${word}${count === 1 ? '' : 's'}`;
  const told = `${counted(sheets, 'sheet')} read, ${counted(findings, 'finding')}.`;
  return findings === 0
    ? `${told} The list of checks is not complete: whoever holds the duty decides.`
    : told;
}
