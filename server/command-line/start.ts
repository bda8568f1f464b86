/** `npm start`: checks, solves and prints the samples, or the sheets named, into `out/`, and shows what the engine found. */
import { dirname, join, relative, resolve } from 'node:path';
import { performance } from 'node:perf_hooks';
import { fileURLToPath } from 'node:url';
import { audiences, type Examination, examineSheet, printSheets, printWithin } from '../../shared/index.ts';
import { readInputs } from './inputs.ts';
import { CommandFailure, type Output, standardOutput } from './output.ts';
import { refuseSameNames, stemOf, writePrints } from './print.ts';
import { findingLines, statusOf } from './report.ts';

const root = dirname(dirname(fileURLToPath(import.meta.url)));

const output = standardOutput();
try {
  process.exitCode = start(process.argv.slice(2), output);
} catch (error) {
  output.say(
    error instanceof CommandFailure ? error.message : String(error instanceof Error ? error.stack : error),
  );
  process.exitCode = 2;
}

function start(named: readonly string[], { result, say, colors }: Output): number {
  // npm runs scripts in the project's folder and tells where the command was typed.
  const folder = process.env.INIT_CWD ?? process.cwd();
  const inputs = readInputs(named.length > 0 ? named : [join(root, 'samples')], { folder, stdinName: null });
  if (inputs.length === 0)
    throw new CommandFailure('No sheet was found: a sheet is a Markdown file with an `electrodes` block.');
  refuseSameNames(inputs);
  const out = join(root, 'out');
  const rows: string[][] = [['sheet', 'setup', 'resistance', 'current', 'time']];
  const examinations = inputs.map(({ name, text }) => {
    const started = performance.now();
    const examination = examineSheet({ name, text });
    const prints = printSheets(examination, audiences);
    const took_ms = performance.now() - started;
    writePrints(prints, out, stemOf(name));
    rows.push(...tableRows(examination, took_ms));
    for (const line of findingLines(examination, { colors })) say(line);
    return examination;
  });
  for (const line of table(rows)) result(line);
  say(`Prints: ${relative(folder, resolve(out)) || '.'}`);
  return statusOf(examinations, false);
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
