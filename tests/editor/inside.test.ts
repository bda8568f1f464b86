/** The extension from its unpacked folder, asked by another extension in the same host: steadier than what can be seen. */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';
import { beforeAll, expect, test, vi } from 'vitest';
import { confine, launchBrowser } from './browser.ts';
import { CodeServer } from './code-server.ts';
import { EditorPage } from './editor-page.ts';
import type { Result } from './inside/index.ts';
import { addressOf } from './opened.ts';
import { root, shots } from './places.ts';
import { bars } from './sheets.ts';

const program = join(shots, 'inside', 'index.cjs');
let results: readonly Result[] = [];

beforeAll(async () => {
  await build({
    entryPoints: [join(root, 'tests/editor/inside/index.ts')],
    outfile: program,
    bundle: true,
    platform: 'node',
    format: 'cjs',
    external: ['vscode'],
  });
  const server = await CodeServer.start({ extension: null, files: { 'bars.md': bars } });
  const browser = await launchBrowser();
  try {
    const context = await browser.newContext();
    const editor = new EditorPage(await context.newPage(), await confine(context, new URL(server.url).host));
    await editor.page.goto(
      addressOf(server, [
        ['extensionDevelopmentPath', server.uriOf(root)],
        ['extensionTestsPath', server.uriOf(program)],
      ]),
    );
    const file = join(server.work, 'results.json');
    results = await vi.waitFor(() => resultsIn(file, editor), { timeout: 90_000, interval: 100 });
  } finally {
    await browser.close();
    await server.stop();
  }
});

function resultsIn(file: string, editor: EditorPage): readonly Result[] {
  if (!existsSync(file)) throw new Error(`no results\n${editor.console.slice(-30).join('\n')}`);
  return JSON.parse(readFileSync(file, 'utf8')) as readonly Result[];
}

test('all requests are asked', () => {
  expect(results.length).toBeGreaterThan(15);
});

test('each gives what it should', () => {
  expect(results.filter(({ error }) => error !== null)).toEqual([]);
});
