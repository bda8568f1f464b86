/** The program `papervolt` as a function: reads the command line, runs one sub-command, gives its status. */
import { Command, CommanderError } from 'commander';
import manifest from '../../package.json' with { type: 'json' };
import { check } from './check.ts';
import { explain } from './explain.ts';
import { format } from './format.ts';
import { print } from './print.ts';
import { readings } from './readings.ts';
import { CommandFailure, type ExitStatus, type Shell } from './shell.ts';

/** Takes what was typed behind `papervolt`. */
export function papervolt(args: readonly string[], shell: Shell): ExitStatus {
  let status: ExitStatus = 0;
  const program = commandLine(shell, (found) => {
    status = found;
  });
  try {
    program.parse(args, { from: 'user' });
    return status;
  } catch (error) {
    if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : 2;
    const told =
      error instanceof CommandFailure ? error.message : `A mistake of Papervolt's own: ${describe(error)}`;
    shell.say(`papervolt: ${told}`);
    return 2;
  }
}

const examples = `
Examples:
  papervolt check sheets/                      what is wrong in all sheets of a folder
  papervolt check --strict --json bars.md      for a machine; warnings count as well
  papervolt readings bars.md --csv             predicted readings at probes and rows
  papervolt print bars.md --out prints         pupils, teachers and technicians
  papervolt format sheets/*.md                 tidy the blocks in place
  papervolt explain decimal-comma              what a finding means, and how to mend it

Status: 0 fine; 1 findings of severity error or stop (warnings too with --strict); 2 wrong use or failure.`;

const stdinName = ['--stdin-name <name>', 'read one sheet from standard input and call it this'] as const;
const strict = ['--strict', 'warnings count as well'] as const;

function commandLine(shell: Shell, end: (status: ExitStatus) => void): Command {
  const program = new Command('papervolt')
    .description(
      'Practical sheets for mapping electric fields on conducting paper: checked, solved, drawn and printed from Markdown.',
    )
    .version(manifest.version, '-V, --version')
    .configureOutput({
      writeOut: (text) => shell.resultText(text),
      writeErr: (text) => shell.say(text.trimEnd()),
    })
    .exitOverride()
    .showHelpAfterError('See papervolt --help.')
    .addHelpText('after', examples);

  program
    .command('check')
    .description('say what is wrong: language, units, names, geometry, physics')
    .argument('[sheets...]', 'files, folders or globs')
    .option('--json', 'findings as JSON')
    .option(...strict)
    .option(...stdinName)
    .addHelpText('after', '\nExample:\n  papervolt check sheets/ --strict')
    .action((sheets: string[], options) => end(check(sheets, options, shell)));

  program
    .command('readings')
    .description('predicted readings of one sheet')
    .argument('[sheet...]', 'exactly one sheet')
    .option('--json', 'as JSON (also without this word)')
    .option('--csv', 'one line a probe and row point')
    .option(...strict)
    .option(...stdinName)
    .addHelpText('after', '\nExample:\n  papervolt readings bars.md --csv > bars.csv')
    .action((sheets: string[], options) => end(readings(sheets, options, shell)));

  program
    .command('print')
    .description('print sheets as HTML for pupils, teachers and technicians')
    .argument('[sheets...]', 'files, folders or globs')
    .requiredOption('--out <folder>', 'folder for the prints')
    .option('--for <readers>', 'pupils, teachers or technicians alone')
    .option(...strict)
    .option(...stdinName)
    .addHelpText('after', '\nExample:\n  papervolt print bars.md --out prints --for pupils')
    .action((sheets: string[], options) => end(print(sheets, options, shell)));

  program
    .command('format')
    .description('tidy our blocks; every other line stays as it is')
    .argument('[sheets...]', 'files, folders or globs')
    .option('--check', 'write nothing; name the files that are not formatted')
    .option(...stdinName)
    .addHelpText('after', '\nExample:\n  papervolt format --check sheets/')
    .action((sheets: string[], options) => end(format(sheets, options, shell)));

  program
    .command('explain')
    .description('what a finding means, why it matters, wrong and right; all codes without one')
    .argument('[codes...]', 'codes of findings')
    .option('--json', 'as JSON')
    .addHelpText('after', '\nExample:\n  papervolt explain decimal-comma')
    .action((codes: string[], options) => end(explain(codes, options, shell)));

  return program;
}

function describe(error: unknown): string {
  return error instanceof Error ? (error.stack ?? error.message) : String(error);
}
