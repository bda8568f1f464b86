/** `papervolt print`: HTML sheets for pupils, teachers and technicians. */
import { mkdirSync } from 'node:fs';
import { basename, join, relative, resolve } from 'node:path';
import writeFileAtomic from 'write-file-atomic';
import {
  type Audience,
  audiences,
  type Examination,
  type Print,
  printSheets,
  withheldBecause,
} from '../../shared/index.ts';
import { Examiner } from './examine.ts';
import { type Input, readInputs } from './inputs.ts';
import { emptyLines, findingLines, ofSheet, statusOf } from './report.ts';
import { CommandFailure, type ExitStatus, type Shell, telling } from './shell.ts';

export interface PrintOptions {
  readonly out: string;
  readonly for?: string;
  readonly strict?: boolean;
  readonly stdinName?: string;
}

export function print(named: readonly string[], options: PrintOptions, shell: Shell): ExitStatus {
  const wanted = wantedAudiences(options.for);
  if (options.out === '') throw new CommandFailure('--out needs the name of a folder.');
  const inputs = readInputs(named, shell, options.stdinName);
  refuseSameNames(inputs);
  const examiner = new Examiner(shell);
  const examinations = inputs.map((input) => examiner.examine(input));
  for (const one of examiner.departments)
    for (const line of findingLines(one, shell.sayColors)) shell.say(line);
  const folder = resolve(shell.folder, options.out);
  for (const examination of examinations) {
    const prints = printSheets(examination, wanted);
    for (const line of findingLines(ofSheet(examination), shell.sayColors)) shell.say(line);
    for (const path of writePrints(prints, folder, stemOf(examination.sheet.source.name)))
      shell.result(relative(shell.folder, path));
    for (const line of heldBack(examination, wanted, prints)) shell.say(line);
  }
  for (const line of emptyLines(examinations)) shell.say(line);
  return statusOf([...examiner.departments, ...examinations], options.strict ?? false);
}

/** Writes the prints of one sheet; each file is either the old one or the new one, never half of it. */
export function writePrints(prints: readonly Print[], folder: string, stem: string): readonly string[] {
  if (prints.length > 0)
    telling(folder, 'this folder cannot be made', () => mkdirSync(folder, { recursive: true }));
  return prints.map(({ suffix, html }) => {
    const path = join(folder, `${stem}-${suffix}.html`);
    telling(path, 'cannot be written', () => writeFileAtomic.sync(path, html));
    return path;
  });
}

/** Name of a sheet without folder and ending: `sheets/bars.md` prints as `bars-pupils.html`. */
export const stemOf = (name: string): string => basename(name).replace(/(?<=.)\.(md|markdown)$/i, '');

export function refuseSameNames(inputs: readonly Input[]): void {
  const seen = new Map<string, string>();
  for (const { name } of inputs) {
    // Some file systems hold a.html and A.html to be one file, and é written as one sign or as two.
    const stem = stemOf(name).normalize('NFC').toLowerCase();
    const other = seen.get(stem);
    if (other !== undefined)
      throw new CommandFailure(`${other} and ${name} would print to the same files. Nothing was written.`);
    seen.set(stem, name);
  }
}

/** Says who was to get a print and got none, and why. */
export function heldBack(
  { sheet, findings }: Examination,
  wanted: readonly Audience[],
  prints: readonly Print[],
): readonly string[] {
  const missing = wanted.filter((reader) => prints.every(({ audience }) => audience !== reader));
  if (missing.length === 0) return [];
  const reason = withheldBecause(sheet, findings, missing);
  const told = 'A print from an earlier run would be out of date.';
  return [`${sheet.source.name}: not printed for ${missing.join(' and ')}: ${reason}. ${told}`];
}

function wantedAudiences(word: string | undefined): readonly Audience[] {
  if (word === undefined) return audiences;
  const found = audiences.find((audience) => audience === word);
  if (!found) throw new CommandFailure(`--for takes ${audiences.join(', ')}; not "${word}".`);
  return [found];
}
