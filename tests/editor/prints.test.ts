/** Printed sheets in a browser: nothing on them keeps a person from reading them, and they ask for nothing. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { barriers } from './accessible.ts';
import { launchBrowser } from './browser.ts';
import { root } from './places.ts';

let browser: Browser;
const folder = mkdtempSync(join(tmpdir(), 'papervolt-prints-'));

beforeAll(async () => {
  const program = join(root, 'dist', 'papervolt.mjs');
  execFileSync(process.execPath, [program, 'print', join(root, 'samples'), '--out', folder]);
  browser = await launchBrowser();
});
afterAll(async () => {
  await browser.close();
  rmSync(folder, { recursive: true });
});

test('every print of every sample', { timeout: 120_000 }, async () => {
  const names = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) =>
    name.endsWith('.html'),
  );
  expect(names.length).toBeGreaterThanOrEqual(12);
  const page = await browser.newPage();
  const asked: string[] = [];
  page.on('request', (request) => asked.push(request.url()));
  const found: string[] = [];
  for (const name of names) {
    await page.goto(pathToFileURL(join(folder, name)).href);
    found.push(...(await barriers(page.mainFrame())).map((barrier) => `${name}: ${barrier}`));
  }
  expect(found).toEqual([]);
  expect(asked.filter((url) => !url.startsWith('file:') && !url.startsWith('data:'))).toEqual([]);
});
