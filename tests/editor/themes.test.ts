/** Editor, preview and panel side by side in the four kinds of themes: drawn in the theme's colours, without barriers. */
import type { Frame } from 'playwright-core';
import { expect, test } from 'vitest';
import { barriers } from './accessible.ts';
import { workbench } from './opened.ts';
import { packaged } from './places.ts';
import { bars } from './sheets.ts';

const opened = workbench('themes', () => ({
  extension: packaged(),
  files: { 'bars.md': bars },
  file: 'bars.md',
}));

const preview = () => opened.editor.webview('vscode.markdown-language-features');
const panel = () => opened.editor.webview('papervolt.papervolt');

async function panelFrame(): Promise<Frame> {
  const body = await panel().locator('body').elementHandle();
  const frame = await body?.ownerFrame();
  if (frame === null || frame === undefined) throw new Error('there is no panel');
  return frame;
}

test('three columns are opened', async () => {
  const { editor } = opened;
  await editor.page.setViewportSize({ width: 1800, height: 1000 });
  await editor.command('View: Split Editor Right');
  const second = editor.page.locator('.editor-group-container').nth(1);
  await second.locator('.codelens-decoration a', { hasText: 'Show drawing' }).first().click();
  await panel().locator('#picture svg').waitFor();
  await second.locator('.view-line').first().click();
  await editor.command('Markdown: Open Preview');
  await preview().locator('figure.papervolt-figure svg', { hasText: '0.75 V' }).first().waitFor();
});

const themes = [
  { theme: 'Light Modern', kind: 'vscode-light', ink: 'rgb(28, 28, 28)' },
  { theme: 'Dark Modern', kind: 'vscode-dark', ink: 'rgb(237, 232, 222)' },
  { theme: 'Dark High Contrast', kind: 'vscode-high-contrast', ink: 'rgb(255, 255, 255)' },
  { theme: 'Light High Contrast', kind: 'vscode-high-contrast-light', ink: 'rgb(0, 0, 0)' },
];

test.each(themes)('$theme', async ({ theme, kind, ink }) => {
  const { editor } = opened;
  await editor.chooseTheme(theme);
  for (const page of [preview(), panel()]) {
    await page.locator(`body.${kind}`).waitFor();
    const text = page.locator('svg text').first();
    await expect
      .poll(() => text.evaluate((element) => getComputedStyle(element).fill), { message: `ink in ${theme}` })
      .toBe(ink);
  }
  await editor.shot(`theme-${kind}`);
  expect(await barriers(await panelFrame())).toEqual([]);
});
