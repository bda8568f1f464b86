/** Neovim, set up as the page on editors says, at a sheet with slips: findings come by themselves, and what is asked is answered. */
import { spawnSync } from 'node:child_process';
import { copyFileSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { root } from './places.ts';

interface Seen {
  readonly failed?: string;
  readonly findings: readonly {
    readonly code: string;
    readonly message: string;
    readonly lnum: number;
    readonly col: number;
  }[];
  readonly fix: string;
  readonly after_fix: readonly string[];
  readonly hover: string;
  readonly completion: readonly string[];
  readonly text: readonly string[];
}

const folder = mkdtempSync(join(tmpdir(), 'papervolt-neovim-'));
const here = join(root, 'tests/editor/neovim');
const server = join(root, 'dist/language-server.mjs');
let seen: Seen;

/** The lines for Neovim of the page, with the place of the server filled in. */
function setup(): string {
  const page = readFileSync(join(root, 'docs/editor.md'), 'utf8');
  const [, lines] = /^```lua\n([\s\S]*?)^```$/m.exec(page) ?? [];
  if (lines === undefined) throw new Error('docs/editor.md has no lines for Neovim');
  return lines.replace(/'[^']*language-server\.mjs'/, JSON.stringify(server));
}

beforeAll(() => {
  expect(existsSync(server), 'the server is built').toBe(true);
  const sheet = join(folder, 'sheet.md');
  copyFileSync(join(here, 'sheet.md'), sheet);
  writeFileSync(join(folder, 'setup.lua'), setup());
  const answer = join(folder, 'seen.json');
  const run = spawnSync(
    'nvim',
    [
      '--headless',
      '--clean',
      '-n',
      '-S',
      join(folder, 'setup.lua'),
      '-c',
      `edit ${sheet}`,
      '-c',
      `luafile ${join(here, 'session.lua')}`,
    ],
    {
      encoding: 'utf8',
      timeout: 60_000,
      env: { ...process.env, PAPERVOLT_SEEN: answer, XDG_STATE_HOME: folder, XDG_CACHE_HOME: folder },
    },
  );
  if (run.error !== undefined) throw new Error(`nvim cannot be run: ${run.error.message}`);
  expect(run.status, run.stderr).toBe(0);
  seen = JSON.parse(readFileSync(answer, 'utf8')) as Seen;
  expect(seen.failed).toBeUndefined();
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

test('findings come without being asked for', () => {
  expect(seen.findings.map(({ code, lnum }) => [code, lnum])).toEqual([['decimal-comma', 10]]);
});

test('a fix mends the text, and the finding goes', () => {
  expect(seen.fix).toBe('Write 1.5 V');
  expect(seen.after_fix).toEqual([]);
});

test('hover shows the solved reading: midway between the bars, by symmetry half of the 1.5 V', () => {
  expect(seen.hover.replaceAll('\u00a0', ' ')).toContain('reading: 0.75 V');
});

test('completion offers what can stand behind a probe', () => {
  expect(seen.completion).toContain('at');
});

test('rename and formatting change the text', () => {
  expect(seen.text.slice(4, 16)).toEqual([
    '# Bars',
    '',
    'The reading at M is ?{K}.',
    '',
    '```electrodes bars',
    'paper   240 mm × 160 mm, 5 kΩ per square',
    'supply  cell 1.5 V, zinc-carbon',
    'meter   10 MΩ, resolution 0.01 V',
    'bar     N  10 mm × 120 mm at (60, 80) mm                negative',
    'bar     P  10 mm × 120 mm, 100 mm right of N            positive',
    'probe   K  at (115, 80) mm',
    '```',
  ]);
});
