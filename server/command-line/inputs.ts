/** From what was typed (files, folders, globs, standard input) to sheets: read as UTF-8, in a stable order, each once. */
import { isUtf8 } from 'node:buffer';
import { readFileSync, type Stats, statSync } from 'node:fs';
import { isAbsolute, relative, resolve } from 'node:path';
import { globSync } from 'tinyglobby';
import { isSheet, readSheet } from '../../shared/index.ts';
import { CommandFailure, type Shell, telling } from './shell.ts';

export interface Input {
  /** As shown in messages: relative to the working folder where it lies below it. */
  readonly name: string;
  /** Null for standard input. */
  readonly path: string | null;
  readonly text: string;
}

/**
 * Files named outright are always read; folders and globs give the Markdown files in them that hold one of our blocks, or one
 * whose first word is a near miss.
 */
export function readInputs(
  named: readonly string[],
  shell: Pick<Shell, 'folder' | 'readStandardInput'>,
  stdinName?: string,
): readonly Input[] {
  if (stdinName !== undefined) return [standardInput(named, stdinName, shell)];
  if (named.length === 0) throw new CommandFailure('Name a sheet, a folder or a glob. See --help.');
  const found = new Map<string, Input>();
  for (const name of named)
    for (const input of expand(name, shell.folder)) found.set(input.path ?? input.name, input);
  return [...found.values()];
}

/** One sheet from standard input, under the name given with `--stdin-name`. */
function standardInput(
  named: readonly string[],
  name: string,
  shell: Pick<Shell, 'readStandardInput'>,
): Input {
  if (named.length > 0) throw new CommandFailure('Give either files or --stdin-name, not both.');
  if (name === '') throw new CommandFailure('--stdin-name needs a name, such as bars.md.');
  const bytes = telling(name, 'standard input cannot be read', () => shell.readStandardInput());
  return asInput({ name, path: null, bytes });
}

function expand(name: string, folder: string): readonly Input[] {
  // An empty variable of a script would otherwise mean the whole folder.
  if (name === '') throw new CommandFailure('A name is empty. Name a sheet, a folder or a glob.');
  const path = resolve(folder, name);
  const kind = kindOf(path);
  if (kind && !kind.isDirectory()) return [asInput(readFile(path, folder))];
  const paths = kind ? markdownIn('**/*', path) : markdownIn(name.replaceAll('\\', '/'), folder);
  if (paths.length === 0 && !kind)
    throw new CommandFailure(`${name}: there is no such file or folder, and no Markdown file matches.`);
  return paths
    .map((file) => readFile(file, folder))
    .filter(concernsUs)
    .map(asInput);
}

/** Null where nothing stands under this name, and where it leads through a file or in a circle. */
export function kindOf(path: string): Stats | null {
  try {
    return statSync(path);
  } catch {
    return null;
  }
}

function markdownIn(pattern: string, cwd: string): readonly string[] {
  return globSync(pattern, { cwd, absolute: true, ignore: '**/node_modules/**', expandDirectories: false })
    .filter((path) => /\.(md|markdown)$/i.test(path))
    .map((path) => resolve(path))
    .sort();
}

interface Read {
  readonly name: string;
  readonly path: string | null;
  readonly bytes: Buffer;
}

function readFile(path: string, folder: string): Read {
  const name = shownName(path, folder);
  return { name, path, bytes: telling(name, 'cannot be read', () => readFileSync(path)) };
}

/** A sheet, or a file with something to say about a near miss such as a misspelt fence. */
function concernsUs({ name, bytes }: Read): boolean {
  const wide = bytes[0] === 0xff && bytes[1] === 0xfe;
  const sheet = readSheet({ name, text: bytes.toString(wide ? 'utf16le' : 'utf8') });
  return isSheet(sheet) || sheet.findings.length > 0;
}

function asInput({ name, path, bytes }: Read): Input {
  return { name, path, text: textOf(name, bytes) };
}

/** Relative to the working folder where it lies below it. */
export function shownName(path: string, folder: string): string {
  const below = relative(folder, path);
  return below.startsWith('..') || isAbsolute(below) ? path : below;
}

export function textOf(name: string, bytes: Buffer): string {
  if (!isUtf8(bytes))
    throw new CommandFailure(`${name}: is not UTF-8, so that its letters cannot be told. Save it as UTF-8.`);
  return bytes.toString('utf8');
}
