/** `papervolt print`: HTML sheets for pupils, teachers and technicians. */
import { mkdirSync } from 'node:fs';
import { basename, join, relative, resolve } from 'node:path';
import writeFileAtomic from 'write-file-atomic';
import {
  type Audience,
  audiences,
  type Examination,
  examineSheet,
  type Print,
  printSheets,
} from '../../shared/index.ts';
import { type Input, readInputs } from './inputs.ts';
import { CommandFailure, type ExitStatus, type Output } from './output.ts';
import { findingLines, statusOf } from './report.ts';

export interface PrintOptions {
  readonly out: string;
  readonly for?: string;
  readonly strict?: boolean;
  readonly stdinName?: string;
}

export function print(named: readonly string[], options: PrintOptions, output: Output): ExitStatus {
  const wanted = wantedAudiences(options.for);
  const inputs = readInputs(named, { folder: process.cwd(), stdinName: options.stdinName ?? null });
  refuseSameNames(inputs);
  const examinations = inputs.map(({ name, text }) => examineSheet({ name, text }));
  const folder = resolve(options.out);
  examinations.forEach((examination, index) => {
    const stem = stemOf(inputs[index]?.name ?? '');
    for (const line of findingLines(examination, output)) output.say(line);
    for (const path of writePrints(printSheets(examination, wanted), folder, stem))
      output.result(relative('', path) || path);
    for (const line of heldBack(examination, wanted)) output.say(`${examination.sheet.source.name}: ${line}`);
  });
  return statusOf(examinations, options.strict ?? false);
}

/** Writes the prints of one sheet; each file is either the old one or the new one, never half of it. */
export function writePrints(prints: readonly Print[], folder: string, stem: string): readonly string[] {
  mkdirSync(folder, { recursive: true });
  return prints.map(({ suffix, html }) => {
    const path = join(folder, `${stem}-${suffix}.html`);
    writeFileAtomic.sync(path, html);
    return path;
  });
}

export const stemOf = (name: string): string => basename(name).replace(/\.(md|markdown)$/i, '');

export function refuseSameNames(inputs: readonly Input[]): void {
  const seen = new Map<string, string>();
  for (const { name } of inputs) {
    // Compared without case: some file systems hold a.html and A.html to be one file.
    const stem = stemOf(name).toLowerCase();
    const other = seen.get(stem);
    if (other)
      throw new CommandFailure(`${other} and ${name} would print to the same files. Nothing was written.`);
    seen.set(stem, name);
  }
}

function wantedAudiences(word: string | undefined): readonly Audience[] {
  if (word === undefined) return audiences;
  const found = audiences.find((audience) => audience === word);
  if (!found) throw new CommandFailure(`--for takes ${audiences.join(', ')}; not "${word}".`);
  return [found];
}

function heldBack({ findings }: Examination, wanted: readonly Audience[]): readonly string[] {
  const has = (severity: string): boolean => findings.some((finding) => finding.severity === severity);
  const told = 'A print from an earlier run would be out of date.';
  if (has('error')) {
    const missing = wanted.filter((audience) => audience !== 'teachers');
    return missing.length > 0
      ? [`not printed for ${missing.join(' and ')}: the sheet has errors. ${told}`]
      : [];
  }
  return has('stop') && wanted.includes('pupils')
    ? [`not printed for pupils: not a pupil practical as written. ${told}`]
    : [];
}
