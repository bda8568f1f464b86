/** What is packed: the programs, pages and media that the manifest and the code name, and nothing that only builds or tests. */
import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import { serverFile } from '../../client/ids.ts';

const root = resolve(dirname(fileURLToPath(import.meta.url)), '../..');
const stage = join(root, '.cache/vsix');
const list = (): string[] =>
  execFileSync(process.execPath, [join(root, 'build/package.mjs'), '--list'], { encoding: 'utf8' })
    .split('\n')
    .filter(Boolean);

describe('the folder that is packed', () => {
  let files: readonly string[] = [];
  beforeAll(() => {
    files = list();
  });

  it('holds the programs, the pages, the licence and the notices', () => {
    for (const file of ['extension.js', 'language-server.js', 'panel.js'])
      expect(files).toContain(`dist/${file}`);
    expect(files).toContain(serverFile.join('/'));
    for (const page of ['language', 'findings', 'editor']) expect(files).toContain(`docs/${page}.md`);
    for (const file of ['LICENSE', 'THIRD-PARTY.md', 'README.md', 'package.nls.json'])
      expect(files).toContain(file);
  });

  it('holds no sources, no tests, no tools', () => {
    expect(files.filter((file) => /\.ts$|^(tests|build|server|shared|node_modules)\//.test(file))).toEqual(
      [],
    );
    expect(files.filter((file) => file.endsWith('.mjs'))).toEqual([]);
  });

  it('holds every file that its manifest names', () => {
    const manifest = readFileSync(join(stage, 'package.json'), 'utf8');
    const named = [...manifest.matchAll(/"(\.\/[^"]+)"/g)].map(([, path]) => path ?? '');
    expect(named.length).toBeGreaterThan(4);
    expect(named.filter((path) => !existsSync(join(stage, path)))).toEqual([]);
  });

  it('holds every page that its pages lead to', () => {
    const pages = files.filter((file) => file.endsWith('.md') && file !== 'THIRD-PARTY.md');
    const links = pages.flatMap((page) => {
      const text = readFileSync(join(stage, page), 'utf8').replace(
        /^(`{3,}|~{3,})[\s\S]*?^\1$|`[^`\n]+`/gm,
        '',
      );
      return [...text.matchAll(/\]\((?!#|https?:)([^)#]+)/g)].map(([, to = '']) => join(dirname(page), to));
    });
    expect(links.length).toBeGreaterThan(4);
    expect(links.filter((to) => !files.includes(to))).toEqual([]);
  });

  it('has a manifest without what is for the project alone', () => {
    const manifest = JSON.parse(readFileSync(join(stage, 'package.json'), 'utf8')) as object;
    for (const key of ['private', 'scripts', 'dependencies', 'devDependencies', 'bin', 'files'])
      expect(manifest).not.toHaveProperty(key);
  });
});
