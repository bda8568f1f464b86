/** The drawing panel beside the editor: it reads the paper, and what is moved on it is moved in the text. */
import type { Locator } from 'playwright-core';
import { expect, test } from 'vitest';
import { workbench } from './opened.ts';
import { packaged } from './places.ts';
import { bars } from './sheets.ts';

const opened = workbench('panel', () => ({
  extension: packaged(),
  files: { 'bars.md': bars },
  file: 'bars.md',
}));

const panel = () => opened.editor.webview('papervolt.papervolt');
const handle = (name: string): Locator => panel().locator(`[data-handle="${name}"]`);
const slip = (): Locator => panel().locator('#reading');

/** The middle of a handle on the screen. */
async function middleOf(found: Locator): Promise<{ readonly x: number; readonly y: number }> {
  await found.waitFor();
  const box = await found.boundingBox();
  if (box === null) throw new Error('the handle cannot be seen');
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

/** Pixels of the screen that 1 mm of the paper takes: the bars stand 110 mm apart, middle to middle. */
async function pixelsPerMillimetre(): Promise<number> {
  const [n, p] = [await middleOf(handle('electrode N')), await middleOf(handle('electrode P'))];
  return (p.x - n.x) / 110;
}

test('opens by the line above its block', async () => {
  const { editor } = opened;
  await editor.lens('bars.md', 'Show drawing').click();
  await panel().locator('#picture svg').waitFor();
  await handle('electrode N').waitFor();
  await editor.shot('panel');
});

test('the reading slip tells what is pointed at', async () => {
  const { editor } = opened;
  const [n, p] = [await middleOf(handle('electrode N')), await middleOf(handle('electrode P'))];
  await editor.page.mouse.move((n.x + 2 * p.x) / 3, n.y + 40);
  await slip()
    .filter({ hasText: /V at \(\d+, \d+\)\smm; \d+(\.\d+)?\sV\/m/ })
    .waitFor();
});

test('an electrode that is dragged moves in its line; one step takes it back', async () => {
  const { editor, server } = opened;
  const scale = await pixelsPerMillimetre();
  const middle = await middleOf(handle('electrode N'));
  // An end of the row lies on its middle.
  const from = { x: middle.x, y: middle.y + 40 * scale };
  await editor.page.mouse.move(from.x, from.y);
  await editor.page.mouse.down();
  for (const part of [0.25, 0.5, 0.75, 1]) await editor.page.mouse.move(from.x - 20 * scale * part, from.y);
  await editor.page.mouse.up();
  await editor.line('bars.md', '140 mm at (55, 85)').waitFor();
  // P stands 100 mm to its right, and goes with it.
  await editor.line('bars.md', '100 mm right of N').waitFor();
  await editor.shot('panel-moved');
  await editor.cursorBehind('bars.md', 'Lines of equal potential');
  await editor.press('Control+z');
  await editor.line('bars.md', '140 mm at (75, 85)').waitFor();
  await editor.save('bars.md');
  expect(server.read('bars.md')).toBe(bars);
});

test('arrow keys move it by 1 mm', async () => {
  const { editor } = opened;
  await handle('electrode N').focus();
  await handle('electrode N').press('ArrowLeft');
  await editor.line('bars.md', '140 mm at (74, 85)').waitFor();
  await handle('electrode N').press('Shift+ArrowLeft');
  await editor.line('bars.md', '140 mm at (64, 85)').waitFor();
  await editor.cursorBehind('bars.md', 'Lines of equal potential');
  await editor.revert('bars.md');
  // What follows points at the paper: the panel has to show the text as it stands.
  await handle('electrode N').and(panel().locator('[aria-label*="(75, 85)"]')).waitFor();
});

test('a click on free paper adds a probe with the next letter', async () => {
  const { editor } = opened;
  const [n, p] = [await middleOf(handle('electrode N')), await middleOf(handle('electrode P'))];
  await editor.page.mouse.click((n.x + p.x) / 2, n.y + 60);
  await editor.line('bars.md', /^probe\s+N?[A-Z]\s+at\s\(130,\s\d+\)\smm/).waitFor();
  await editor.shot('panel-probe');
  // The panel is in front now; what is about the sheet is offered all the same.
  expect(await editor.commands('Papervolt: Print')).toContain('Papervolt: Print sheet…');
  await editor.cursorBehind('bars.md', 'Lines of equal potential');
  await editor.revert('bars.md');
});

test('follows the cursor into another block', async () => {
  const { editor } = opened;
  await editor.press('Control+End', 'ArrowUp', 'ArrowUp', 'ArrowUp');
  await panel().locator('#heading', { hasText: 'wider' }).waitFor({ state: 'attached' });
});

test('nothing was refused by its policy, and nothing asked of other machines', () => {
  const { console, refused } = opened.editor;
  expect(console.filter((said) => /Content Security Policy/.test(said) && /papervolt/.test(said))).toEqual(
    [],
  );
  expect(refused).toEqual([]);
});
