/** The licence notices are those of the packages installed. */
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
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

it('names every package that a bundle holds', async () => {
  const bundler = readFileSync(join(root, 'build/bundle.mjs'), 'utf8');
  const entryPoints = [...bundler.matchAll(/'((?:server|client)\/[\w/-]+\.ts)'/g)].map(
    ([, file = '']) => file,
  );
  expect(entryPoints.length).toBeGreaterThan(6);
  const { metafile } = await build({
    absWorkingDir: root,
    entryPoints,
    outdir: 'unwritten',
    bundle: true,
    platform: 'node',
    format: 'esm',
    // One bundle runs on Node, another one in a browser.
    conditions: ['node', 'browser'],
    external: ['vscode'],
    metafile: true,
    write: false,
    logLevel: 'error',
  });
  const packages = new Set(
    Object.keys(metafile.inputs).flatMap((file) => {
      const [, name] = /.*node_modules\/((?:@[^/]+\/)?[^/]+)\//.exec(file) ?? [];
      return name === undefined ? [] : [name];
    }),
  );
  expect(packages.size).toBeGreaterThan(15);
  expect([...packages].filter((name) => !notices.includes(`\n## ${name} `))).toEqual([]);
});
