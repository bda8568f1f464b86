/** `papervolt check`: what Papervolt has to say about sheets. */
import { examineSheet } from '../../shared/index.ts';
import { readInputs } from './inputs.ts';
import { emptyLines, findingLines, findingRecords, statusOf } from './report.ts';
import type { ExitStatus, Shell } from './shell.ts';

export interface CheckOptions {
  readonly json?: boolean;
  readonly strict?: boolean;
  readonly stdinName?: string;
}

export function check(named: readonly string[], options: CheckOptions, shell: Shell): ExitStatus {
  const inputs = readInputs(named, shell, options.stdinName);
  const examinations = inputs.map(({ name, text }) => examineSheet({ name, text }));
  if (options.json) {
    const sheets = examinations.map((examination) => ({
      sheet: examination.sheet.source.name,
      findings: findingRecords(examination),
    }));
    shell.result(JSON.stringify({ sheets }, null, 2));
  } else {
    for (const examination of examinations)
      for (const line of findingLines(examination, shell.resultColors)) shell.result(line);
    shell.say(summary(examinations.length, examinations.flatMap(({ findings }) => findings).length));
  }
  for (const line of emptyLines(examinations)) shell.say(line);
  return statusOf(examinations, options.strict ?? false);
}

function summary(sheets: number, findings: number): string {
  const counted = (count: number, word: string): string => `${count} ${word}${count === 1 ? '' : 's'}`;
  const told = `${counted(sheets, 'sheet')} read, ${counted(findings, 'finding')}.`;
  return findings === 0
    ? `${told} The list of checks is not complete: whoever holds the duty decides.`
    : told;
}
