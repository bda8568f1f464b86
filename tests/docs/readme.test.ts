/** What the README shows works: its example of a sheet, and the commands it names. */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { safetyCodes } from '../../shared/findings/safety-codes.ts';
import { examineSheet, formatSheet } from '../../shared/index.ts';
import { folder } from '../server/command-line/program.ts';

const readme = readFileSync(new URL('../../README.md', import.meta.url), 'utf8');

it('its sheet is formatted, and solved without a finding', () => {
  const [, sheet = ''] = /````markdown\n([\s\S]*?)````/.exec(readme) ?? [];
  expect(formatSheet(sheet)).toBe(sheet);
  const { findings, solutions } = examineSheet({ name: 'readme.md', text: sheet });
  // It shows a setup, not a whole sheet.
  expect(findings.filter(({ code }) => !Object.hasOwn(safetyCodes, code))).toEqual([]);
  expect(solutions.size).toBe(1);
});

it('every command and option that it names is there', () => {
  const rows = [...readme.matchAll(/^\| `papervolt ([a-z]+)[^|]*\|[^|\n]*\|$/gm)];
  expect(rows.map(([, command]) => command)).toEqual(['check', 'readings', 'print', 'format', 'explain']);
  for (const [row, command = ''] of rows) {
    const help = folder().run([command, '--help']).stdout;
    for (const [option] of row.matchAll(/--[a-z-]+/g)) expect(help).toContain(option);
    // All but one read sheets.
    if (command !== 'explain') expect(help).toContain('--stdin-name');
  }
});
