/** The extension as it lies in its folder, and what runs when: nothing without a sheet, one server with one, a new one on request. */
import { expect, test } from 'vitest';
import { workbench } from './opened.ts';
import { root } from './places.ts';
import { bars, ordinary } from './sheets.ts';

const opened = workbench('folder', () => ({
  extension: root,
  files: { 'bars.md': bars, 'ordinary.md': ordinary },
  file: 'ordinary.md',
}));

const servers = (): readonly number[] => opened.server.processes('language-server');

test('a text without a block starts no server, and is left alone', async () => {
  const { editor } = opened;
  await editor.command('Papervolt: Show log');
  await editor.page.locator('.part.panel .view-line', { hasText: 'the language server waits' }).waitFor();
  await editor.command('View: Toggle Panel Visibility');
  expect(servers()).toEqual([]);
  expect(await editor.page.locator('[class*="squiggly-"]').count()).toBe(0);
});

test('a sheet starts one', async () => {
  const { editor } = opened;
  await editor.openFile('bars.md');
  await editor.line('bars.md', /^probe\s+M\s.*0\.75\sV/).waitFor();
  expect(servers().length).toBe(1);
});

test('the preview has its plugin', async () => {
  const { editor } = opened;
  await editor.command('Markdown: Open Preview to the Side');
  const preview = editor.webview('vscode.markdown-language-features');
  await preview.locator('figure.papervolt-figure svg', { hasText: '0.75 V' }).first().waitFor();
});

test('the server is started anew on request, and knows the text', async () => {
  const { editor } = opened;
  const [before] = servers();
  await editor.cursorBehind('bars.md', 'Lines of equal potential');
  await editor.command('Papervolt: Restart language server');
  await expect.poll(() => servers().some((id) => id !== before)).toBe(true);
  await expect.poll(() => servers().length).toBe(1);
  await editor.cursorIn('bars.md', 'cell 1.5 V', '.5');
  await editor.press('Backspace');
  await editor.type(',');
  await editor.squiggles('error').first().waitFor();
  await editor.revert('bars.md');
  await editor.line('bars.md', /^probe\s+M\s.*0\.75\sV/).waitFor();
  await expect.poll(() => editor.squiggles('error').count()).toBe(0);
});

test('a sheet is printed for its readers beside itself', async () => {
  const { editor, server } = opened;
  await editor.command('Papervolt: Print sheet…');
  await editor.page.locator('.quick-input-list .monaco-list-row', { hasText: 'Beside the sheet' }).click();
  await expect.poll(() => server.names().filter((name) => name.endsWith('.html')).length).toBe(3);
  const pupils = server.names().find((name) => /pupils.*\.html$/.test(name)) ?? '';
  expect(server.read(pupils)).toContain('Two bars');
  expect(server.read(pupils)).not.toContain('by symmetry');
});

test('nothing was asked of other machines', () => {
  expect(opened.editor.refused).toEqual([]);
});
