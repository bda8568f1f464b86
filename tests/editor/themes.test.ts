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
  await editor.command('Markdown: Open Preview to the Side');
  await preview().locator('figure.papervolt-figure svg', { hasText: '0.75 V' }).first().waitFor();
  await editor.lens('bars.md', 'Show drawing').click();
  await panel().locator('#picture svg').waitFor();
  await editor.page.locator('.tab', { hasText: 'Drawing: bars' }).click();
  await editor.command('View: Move Editor into Next Group');
  await preview().locator('figure.papervolt-figure svg', { hasText: '0.75 V' }).first().waitFor();
  await panel().locator('#picture svg').waitFor();
});

const themes = [
  { theme: 'Default Light Modern', kind: 'vscode-light', ink: 'rgb(28, 28, 28)' },
  { theme: 'Default Dark Modern', kind: 'vscode-dark', ink: 'rgb(237, 232, 222)' },
  { theme: 'Default High Contrast', kind: 'vscode-high-contrast', ink: 'rgb(255, 255, 255)' },
  { theme: 'Default High Contrast Light', kind: 'vscode-high-contrast-light', ink: 'rgb(0, 0, 0)' },
];

test.each(themes)('$theme', async ({ theme, kind, ink }) => {
  const { editor, server } = opened;
  server.set({ 'workbench.colorTheme': theme });
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
