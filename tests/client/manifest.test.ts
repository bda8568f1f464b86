/** The manifest, the ids in the code and the extension's page say the same. */
import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { commandIds, contextIds, settingIds } from '../../client/ids.ts';

const read = (file: string): string => readFileSync(new URL(`../../${file}`, import.meta.url), 'utf8');

interface Manifest {
  readonly main: string;
  readonly browser: string;
  readonly engines: { readonly vscode: string };
  readonly activationEvents: readonly string[];
  readonly capabilities: unknown;
  readonly contributes: {
    readonly commands: readonly {
      readonly command: string;
      readonly title: string;
      readonly category: string;
    }[];
    readonly menus: Readonly<Record<string, readonly { readonly command: string; readonly when?: string }[]>>;
    readonly configuration: { readonly properties: Readonly<Record<string, { readonly default: unknown }>> };
  };
}

const manifest = JSON.parse(read('package.json')) as Manifest;
const words = JSON.parse(read('package.nls.json')) as Readonly<Record<string, string>>;
const page = read('client/README.md');
const { commands, menus, configuration } = manifest.contributes;
const said = (text: string): string => text.replace(/^%(.*)%$/, (_, key: string) => words[key] ?? '');

describe('manifest', () => {
  it('names every command of the code and no other, all of one category', () => {
    expect(commands.map(({ command }) => command)).toEqual(Object.values(commandIds));
    expect(new Set(commands.map(({ category }) => category))).toEqual(new Set(['Papervolt']));
  });

  it('names every setting of the code and no other', () => {
    expect(Object.keys(configuration.properties).sort()).toEqual(Object.values(settingIds).sort());
  });

  it('has a text for every key it uses, and no other', () => {
    const used = [...read('package.json').matchAll(/"%([^%"]+)%"/g)].map(([, key]) => key ?? '');
    expect(used.length).toBeGreaterThan(15);
    expect([...new Set(used)].sort()).toEqual(Object.keys(words).sort());
  });

  it('asks in its menus only for context keys that the code sets', () => {
    const asked = Object.values(menus).flatMap((items) =>
      items.flatMap(({ when }) => when?.match(/papervolt\.\w+/g) ?? []),
    );
    expect(new Set(asked)).toEqual(new Set(Object.values(contextIds)));
  });

  it('offers in the palette outside Markdown only what begins or explains', () => {
    const guarded = new Map((menus.commandPalette ?? []).map(({ command, when }) => [command, when]));
    const free = Object.values(commandIds).filter((id) => !guarded.has(id));
    expect(free).toEqual([commandIds.newSheet, commandIds.openGuide]);
    for (const when of guarded.values()) expect(when).toMatch(/^editorLangId == markdown/);
  });

  it('offers what is about a sheet also while a preview or the panel beside it is in front', () => {
    const about = [commandIds.showDrawing, commandIds.printSheet, commandIds.copyDrawing, commandIds.fixAll];
    const guarded = new Map((menus.commandPalette ?? []).map(({ command, when }) => [command, when]));
    for (const id of about) expect(guarded.get(id)).toBe(`editorLangId == markdown || ${contextIds.inSheet}`);
  });

  it('is woken by Markdown alone, and works where the workspace is not trusted or not on a disk', () => {
    expect(manifest.activationEvents).toEqual(['onLanguage:markdown']);
    expect(manifest.capabilities).toEqual({
      untrustedWorkspaces: { supported: true },
      virtualWorkspaces: true,
    });
  });

  it('changes nothing of how Markdown is formatted and binds no keys', () => {
    expect(configuration.properties[settingIds.formatDocuments]?.default).toBe(false);
    expect(manifest.contributes).not.toHaveProperty('keybindings');
    expect(manifest.contributes).not.toHaveProperty('configurationDefaults');
  });

  it('is no module for the editor: its host in browsers takes none', () => {
    expect(manifest).not.toHaveProperty('type');
    expect(manifest.browser).toMatch(/\.js$/);
  });
});

describe('client/README.md', () => {
  it('tells every command', () => {
    const told = [...page.matchAll(/^\| (Papervolt: [^|]+?) \|/gm)].map(([, title]) => title);
    expect([...told].sort()).toEqual(commands.map(({ title }) => `Papervolt: ${said(title)}`).sort());
  });

  it('tells every setting', () => {
    const told = [...page.matchAll(/^\| `(papervolt\.[^`]+)` \|/gm)].map(([, id]) => id);
    expect(told).toEqual(Object.values(settingIds));
  });

  it('shows no picture, and links to nothing that is not packed', () => {
    expect(page).not.toMatch(/!\[/);
    expect(
      [...page.matchAll(/\]\(([^)]+)\)/g)].filter(
        ([, to = '']) => !existsSync(new URL(`../../${to}`, import.meta.url)),
      ),
    ).toEqual([]);
  });
});
