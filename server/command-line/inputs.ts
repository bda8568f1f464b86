/** From what was typed (files, folders, globs, standard input) to sheets: read as UTF-8, in a stable order, each once. */
import { readFileSync, statSync } from 'node:fs';
import { isAbsolute, relative, resolve } from 'node:path';
import { globSync } from 'tinyglobby';
import { isSheet, readSheet } from '../../shared/index.ts';
import { CommandFailure } from './output.ts';

export interface Input {
  /** As shown in messages: relative to the working folder where it lies below it. */
  readonly name: string;
  /** Null for standard input. */
  readonly path: string | null;
  readonly text: string;
}

export interface InputOptions {
  readonly folder: string;
  /** Name to show for standard input; null where it is not read. */
  readonly stdinName: string | null;
}

const skipped = ['**/node_modules/**', '**/.*/**'];

/**
 * Files named outright are always read; folders and globs give the Markdown files in them that hold one of our blocks, or one
 * whose first word is a near miss.
 */
export function readInputs(named: readonly string[], options: InputOptions): readonly Input[] {
  if (options.stdinName !== null) {
    if (named.length > 0) throw new CommandFailure('Give either files or --stdin-name, not both.');
    return [{ name: options.stdinName, path: null, text: readFileSync(0, 'utf8') }];
  }
  if (named.length === 0) throw new CommandFailure('Name a sheet, a folder or a glob. See --help.');
  const found = new Map<string, Input>();
  for (const name of named)
    for (const input of expand(name, options.folder)) found.set(input.path ?? input.name, input);
  return [...found.values()];
}

function expand(name: string, folder: string): readonly Input[] {
  const path = resolve(folder, name);
  const kind = statSync(path, { throwIfNoEntry: false });
  if (kind?.isFile()) return [readInput(path, folder)];
  const pattern = kind?.isDirectory() ? '**/*.{md,markdown}' : name.replaceAll('\\', '/');
  const cwd = kind?.isDirectory() ? path : folder;
  const paths = globSync(pattern, { cwd, absolute: true, ignore: skipped }).sort();
  if (paths.length === 0 && !kind?.isDirectory())
    throw new CommandFailure(`${name}: there is no such file or folder, and no file matches.`);
  return paths.map((file) => readInput(resolve(file), folder)).filter(concernsUs);
}

/** A sheet, or a file with something to say about a near miss such as a misspelt fence. */
function concernsUs({ name, text }: Input): boolean {
  const sheet = readSheet({ name, text });
  return isSheet(sheet) || sheet.findings.length > 0;
}

function readInput(path: string, folder: string): Input {
  const shown = relative(folder, path);
  return { name: shown.startsWith('..') || isAbsolute(shown) ? path : shown, path, text: readText(path) };
}

function readText(path: string): string {
  try {
    return readFileSync(path, 'utf8');
  } catch (error) {
    throw new CommandFailure(
      `${path}: cannot be read (${error instanceof Error ? error.message : String(error)}).`,
    );
  }
}
