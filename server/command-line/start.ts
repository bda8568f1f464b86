/** `npm start`: checks, solves and prints the samples, or the sheets named, into `out/`, and shows what the engine found. */
import { dirname, join, relative } from 'node:path';
import { performance } from 'node:perf_hooks';
import { fileURLToPath } from 'node:url';
import { audiences, type Examination, printSheets, printWithin } from '../../shared/index.ts';
import { Examiner } from './examine.ts';
import { readInputs } from './inputs.ts';
import { heldBack, refuseSameNames, stemOf, writePrints } from './print.ts';
import { emptyLines, findingLines, ofSheet, statusOf } from './report.ts';
import { CommandFailure, type Shell, standardShell } from './shell.ts';

const root = dirname(dirname(fileURLToPath(import.meta.url)));

const shell = standardShell();
try {
  process.exitCode = start(process.argv.slice(2), shell);
} catch (error) {
  shell.say(
    error instanceof CommandFailure ? error.message : String(error instanceof Error ? error.stack : error),
  );
  process.exitCode = 2;
}

function start(named: readonly string[], shell: Shell): number {
  const { result, say, sayColors } = shell;
  // npm runs scripts in the project's folder and tells where the command was typed.
  const folder = process.env.INIT_CWD ?? shell.folder;
  const inputs = readInputs(named.length > 0 ? named : [join(root, 'samples')], { ...shell, folder });
  refuseSameNames(inputs);
  const out = join(root, 'out');
  const rows: string[][] = [['sheet', 'setup', 'resistance', 'current', 'time']];
  const examiner = new Examiner({ ...shell, folder });
  const examinations = inputs.map((input) => {
    const started = performance.now();
    const examination = examiner.examine(input);
    const prints = printSheets(examination, audiences);
    const took_ms = performance.now() - started;
    writePrints(prints, out, stemOf(input.name));
    rows.push(...tableRows(examination, took_ms));
    for (const line of findingLines(ofSheet(examination), sayColors)) say(line);
    for (const line of heldBack(examination, audiences, prints)) say(line);
    return examination;
  });
  for (const one of examiner.departments) for (const line of findingLines(one, sayColors)) say(line);
  for (const line of emptyLines(examinations)) say(line);
  if (examinations.length === 0) return 2;
  for (const line of table(rows)) result(line);
  say(`Prints: ${relative(folder, out) || '.'}`);
  return statusOf([...examiner.departments, ...examinations], false);
}

function tableRows({ sheet, setups, solutions }: Examination, took_ms: number): readonly string[][] {
  return setups.map((setup, index) => {
    const found = solutions.get(setup.block)?.readings;
    return [
      index === 0 ? stemOf(sheet.source.name) : '',
      setup.name,
      found?.resistance_bounds_ohm ? (printWithin(found.resistance_bounds_ohm, 'resistance') ?? '–') : '–',
      found?.current_bounds_A ? (printWithin(found.current_bounds_A, 'current') ?? '–') : '–',
      index === 0 ? `${Math.round(took_ms)} ms` : '',
    ];
  });
}

function table(rows: readonly (readonly string[])[]): readonly string[] {
  const widths = (rows[0] ?? []).map((_, column) =>
    Math.max(...rows.map((row) => (row[column] ?? '').length)),
  );
  return rows.map((row) =>
    row
      .map((cell, column) => cell.padEnd(widths[column] ?? 0))
      .join('  ')
      .trimEnd(),
  );
}
