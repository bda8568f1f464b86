/** The licence notices are those of the packages installed. */
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';

const root = resolve(dirname(fileURLToPath(import.meta.url)), '../..');
const notices = readFileSync(join(root, 'THIRD-PARTY.md'), 'utf8');

it('THIRD-PARTY.md is what build/third-party.mjs writes', () => {
  const written = execFileSync(process.execPath, [join(root, 'build/third-party.mjs'), '--print'], {
    encoding: 'utf8',
  });
  expect(notices).toBe(written);
});

it('names every package that the programs depend on', () => {
  const { dependencies } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as {
    readonly dependencies: Readonly<Record<string, string>>;
  };
  const names = Object.keys(dependencies);
  expect(names.length).toBeGreaterThan(5);
  for (const name of names) expect(notices).toContain(`\n## ${name} `);
});
