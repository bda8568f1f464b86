/** The page on editors tells of every command, setting and option, and its lines for other editors start the server. */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it, test } from 'vitest';
import { safetyCodes } from '../../shared/findings/safety-codes.ts';
import { examineSheet } from '../../shared/index.ts';

const root = resolve(dirname(fileURLToPath(import.meta.url)), '../..');
const read = (file: string): string => readFileSync(join(root, file), 'utf8');
const page = read('docs/editor.md');

interface Manifest {
  readonly engines: { readonly vscode: string };
  readonly contributes: {
    readonly commands: readonly { readonly command: string; readonly title: string }[];
    readonly configuration: { readonly properties: Readonly<Record<string, { readonly default: unknown }>> };
    readonly walkthroughs: readonly { readonly title: string }[];
  };
}
const manifest: Manifest = JSON.parse(read('package.json'));
const strings: Readonly<Record<string, string>> = JSON.parse(read('package.nls.json'));
/** `%command.newSheet%` as people see it. */
const said = (title: string): string => strings[title.replaceAll('%', '')] ?? title;

/** Cells of the rows of a section's table. */
function rows(heading: string, text = page): readonly (readonly string[])[] {
  const section = text.split(/^## /m).find((part) => part.startsWith(`${heading}\n`)) ?? '';
  const lines = section.split('\n').filter((line) => line.startsWith('| '));
  return lines.slice(2).map((line) => line.slice(2, -2).split(' | '));
}

it('has every command of the manifest', () => {
  const titles = manifest.contributes.commands.map(({ title }) => said(title));
  expect(titles.length).toBeGreaterThan(10);
  expect(
    rows('Commands')
      .map(([title]) => title)
      .sort(),
  ).toEqual(titles.sort());
});

it('names no command that is not there', () => {
  const titles = manifest.contributes.commands.map(({ title }) => said(title));
  const named = [...page.matchAll(/\*Papervolt: ([^*]+)\*/g)].map(([, title = '']) => title);
  expect(named.length).toBeGreaterThan(8);
  expect(named.filter((title) => !titles.includes(title))).toEqual([]);
});

it('has every setting of the manifest, with its default', () => {
  const { properties } = manifest.contributes.configuration;
  const settings = Object.entries(properties).map(([id, { default: usual }]) => [id, JSON.stringify(usual)]);
  const written = rows('Settings').map((row) => row.slice(0, 2).map((cell) => cell.replaceAll('`', '')));
  expect(written.sort()).toEqual(settings.sort());
});

it('has the least version of the editor, the packed file and the title of the walkthrough', () => {
  const [, least] = /^\^(\d+\.\d+)/.exec(manifest.engines.vscode) ?? [];
  expect(page).toContain(`Version ${least} or newer`);
  expect(page).toContain('`dist/papervolt.vsix`');
  for (const { title } of manifest.contributes.walkthroughs) expect(page).toContain(`"${said(title)}"`);
});

it('has every snippet', () => {
  const snippets = JSON.parse(read('syntaxes/papervolt.code-snippets')) as Record<string, { prefix: string }>;
  for (const { prefix } of Object.values(snippets)) expect(page).toContain(`\`${prefix}\``);
});

it('has every option that the server reads', () => {
  const source = read('server/language/client-features.ts') + read('server/language/settings.ts');
  const options = [
    ...[...source.matchAll(/optionOf\(options, '(\w+)'\)/g)].map(([, name = '']) => name),
    ...[...source.matchAll(/\bread\('(\w+)'\)/g)].map(([, name = '']) => name),
  ];
  expect(options.length).toBeGreaterThan(5);
  const written = rows('Other editors').flatMap(([names = '']) =>
    [...names.matchAll(/`(\w+)`/g)].map(([, name = '']) => name),
  );
  expect(written.sort()).toEqual([...options].sort());
});

describe('the page of the extension', () => {
  const own = read('client/README.md');

  it('has every command and setting too', () => {
    const titles = manifest.contributes.commands.map(({ title }) => `Papervolt: ${said(title)}`);
    const settings = Object.keys(manifest.contributes.configuration.properties).map((id) => `\`${id}\``);
    expect(
      rows('Commands', own)
        .map(([title]) => title)
        .sort(),
    ).toEqual(titles.sort());
    expect(
      rows('Settings', own)
        .map(([id]) => id)
        .sort(),
    ).toEqual(settings.sort());
  });

  it('shows a sheet that is solved without a finding', () => {
    const [, text = ''] = /````markdown\n([\s\S]*?)````/.exec(own) ?? [];
    const { findings, solutions } = examineSheet({ name: 'sheet.md', text });
    // It shows a setup, not a whole sheet.
    const left = findings.filter(({ code }) => !Object.hasOwn(safetyCodes, code));
    expect(left.map(({ message }) => message)).toEqual([]);
    expect(solutions.size).toBe(1);
  });

  it('leads nowhere outside, and shows no picture from elsewhere', () => {
    expect(own).not.toMatch(/https?:|!\[/);
  });
});

describe('lines for other editors', () => {
  const section = page.split(/^## Other editors$/m)[1] ?? '';
  const fences = [...section.matchAll(/^\*\*(\w+)[^\n]*\n\n```(\w+)\n([\s\S]*?)^```$/gm)].map(
    ([, editor = '', language = '', text = '']) => ({ editor, language, text }),
  );

  it('are there', () => {
    expect(fences.map(({ editor }) => editor)).toEqual(['Neovim', 'Helix', 'Emacs', 'Kate', 'Sublime']);
  });

  test.each(fences)('$editor starts the server', ({ language, text }) => {
    const written = [...text.matchAll(/'([^'\n]*)'|"([^"\n]*)"/g)].map(([, a, b]) => a ?? b ?? '');
    const at = written.indexOf('node');
    expect(written[at + 1]).toBe('/path/to/papervolt/dist/language-server.mjs');
    expect(written[at + 2]).toBe('--stdio');
    if (language === 'json') expect(() => JSON.parse(text)).not.toThrow();
  });

  it('is a command line that runs, and ends with its input', () => {
    expect(section).toContain('\nnode dist/language-server.mjs --stdio\n');
    const server = join(root, 'dist/language-server.mjs');
    const { status, stdout, stderr } = spawnSync(process.execPath, [server, '--stdio'], {
      input: '',
      encoding: 'utf8',
      timeout: 20_000,
    });
    // 1, as the protocol has it for an editor that goes without taking its leave.
    expect({ status, stdout, stderr }).toEqual({ status: 1, stdout: '', stderr: '' });
  });
});
