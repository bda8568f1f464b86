/** House rules that a linter does not hold: sizes of files, no machine paths, no escapes from the type checker, no skipped tests. */
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const root = resolve(dirname(fileURLToPath(import.meta.url)), '../..');
const tracked = execFileSync('git', ['ls-files'], { cwd: root, encoding: 'utf8' })
  .split('\n')
  .filter(Boolean);
const read = (file: string): string => readFileSync(join(root, file), 'utf8');
const sources = tracked.filter((file) => /\.(ts|mjs)$/.test(file) && file !== 'tests/project/tidy.test.ts');

const linesThat = (pattern: RegExp, files: readonly string[]): string[] =>
  files.flatMap((file) =>
    read(file)
      .split('\n')
      .flatMap((line, index) => (pattern.test(line) ? [`${file}:${index + 1}: ${line.trim()}`] : [])),
  );

describe('tidy', () => {
  it('sees the whole tree', () => {
    expect(sources.length).toBeGreaterThan(100);
  });

  it('no source file is over 700 lines', () => {
    expect(sources.filter((file) => read(file).split('\n').length > 700)).toEqual([]);
  });

  it('the type checker and the linter are not silenced', () => {
    expect(
      linesThat(
        /(^(?!\s*(\/?\*|\/\/)).*(:\s*any\b|\bas any\b|<any>)|@ts-(ignore|expect-error|nocheck)|eslint-disable)/,
        sources,
      ),
    ).toEqual([]);
  });

  it('no test is skipped, exclusive or left to do', () => {
    expect(linesThat(/\b(it|test|describe)\.(skip|only|todo)\b/, sources)).toEqual([]);
  });

  it('no path of a developer machine stands in the tree', () => {
    const texts = tracked.filter(
      (file) =>
        /\.(ts|mjs|json|md|yml|yaml|svg)$/.test(file) &&
        file !== 'package-lock.json' &&
        file !== 'tests/project/tidy.test.ts',
    );
    expect(linesThat(/(^|[\s'"`(])\/(home|root|work|Users|tmp)\//, texts)).toEqual([]);
  });
});
