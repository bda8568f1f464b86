/** The extension in an editor that is nothing but a browser: server and solver are web workers there. */
import { afterAll, beforeAll, beforeEach, expect, onTestFailed, test } from 'vitest';
import type { EditorPage } from './editor-page.ts';
import { root } from './places.ts';
import { bars, slips } from './sheets.ts';
import { startWebBuild, type WebBuild } from './web-build.ts';

let build: WebBuild;
let editor: EditorPage;

beforeAll(async () => {
  build = await startWebBuild(root, { 'bars.md': bars, 'slips.md': slips });
  ({ editor } = build);
  await editor.started();
  await openFromExplorer('slips.md');
});
afterAll(() => build.stop());
beforeEach(({ task }) => {
  onTestFailed(() => editor.shot(`failed-web-${task.name.replace(/\W+/g, '-')}`));
});

/** Nothing searches this workspace, so that files are not found by their name. */
async function openFromExplorer(file: string): Promise<void> {
  const row = editor.page.locator('.explorer-folders-view .monaco-list-row', { hasText: file });
  await row.dblclick({ timeout: 60_000 });
  await editor.editor(file).locator('.view-line').first().waitFor();
}

test('slips are underlined', async () => {
  await editor.squiggles('error').first().waitFor({ timeout: 60_000 });
  const row = (await editor.problems()).filter({ hasText: 'decimal comma' });
  await row.waitFor();
  await editor.command('View: Toggle Panel Visibility');
});

test('a setup is solved: readings, and its drawing in the hover', async () => {
  await openFromExplorer('bars.md');
  await editor.closeSideBar();
  await editor.line('bars.md', /^probe\s+M\s.*0\.75\sV/).waitFor();
  await editor.cursorIn('bars.md', '```electrodes bars', 'electrodes');
  const drawing = (await editor.hover()).locator('img');
  await drawing.waitFor();
  await expect
    .poll(() => drawing.evaluate((image) => image instanceof HTMLImageElement && image.naturalWidth))
    .toBeGreaterThan(100);
  await editor.press('Escape');
});

test('the preview shows solved figures', async () => {
  await editor.command('Markdown: Open Preview to the Side');
  const preview = editor.webview('vscode.markdown-language-features');
  await preview.locator('figure.papervolt-figure svg', { hasText: '0.75 V' }).first().waitFor();
  await editor.shot('web-preview');
});

test('the panel draws, and moves an electrode by a key', async () => {
  await editor.lens('bars.md', 'Show drawing').click();
  const panel = editor.webview('papervolt.papervolt');
  const handle = panel.locator('[data-handle="electrode N"]');
  await handle.waitFor();
  await handle.focus();
  await handle.press('ArrowLeft');
  await editor.line('bars.md', '140 mm at (74, 85)').waitFor();
  await editor.shot('web-panel');
});

test('nothing was asked of other machines', () => {
  expect(build.editor.refused).toEqual([]);
});
