/** `papervolt check`: what Papervolt has to say about sheets. */
import { Examiner } from './examine.ts';
import { readInputs } from './inputs.ts';
import { emptyLines, findingLines, findingRecords, ofSheet, statusOf } from './report.ts';
import type { ExitStatus, Shell } from './shell.ts';

export interface CheckOptions {
  readonly json?: boolean;
  readonly strict?: boolean;
  readonly stdinName?: string;
}

export function check(named: readonly string[], options: CheckOptions, shell: Shell): ExitStatus {
  const inputs = readInputs(named, shell, options.stdinName);
  const examiner = new Examiner(shell);
  const examinations = inputs.map((input) => examiner.examine(input));
  const { departments } = examiner;
  const found = [...departments, ...examinations.map(ofSheet)];
  if (options.json) {
    const result = {
      sheets: examinations.map(ofSheet).map((one) => ({
        sheet: one.source.name,
        findings: findingRecords(one),
      })),
      departments: departments.map((one) => ({
        department: one.source.name,
        findings: findingRecords(one),
      })),
    };
    shell.result(JSON.stringify(result, null, 2));
  } else {
    for (const one of found) for (const line of findingLines(one, shell.resultColors)) shell.result(line);
    shell.say(summary(examinations.length, found.flatMap(({ findings }) => findings).length));
  }
  for (const line of emptyLines(examinations)) shell.say(line);
  return statusOf(found, options.strict ?? false);
}

function summary(sheets: number, findings: number): string {
  const counted = (count: number, word: string): string => `${count} ${word}${count === 1 ? '' : 's'}`;
  const told = `${counted(sheets, 'sheet')} read, ${counted(findings, 'finding')}.`;
  return findings === 0
    ? `${told} The list of checks is not complete: whoever holds the duty decides.`
    : told;
}
