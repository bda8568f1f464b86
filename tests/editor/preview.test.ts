/** The built-in Markdown preview of a sheet: solved figures that stay where they are, values, readers, and the last good drawing. */
import type { ElementHandle, Locator } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { workbench } from './opened.ts';
import { packaged } from './places.ts';
import { bars } from './sheets.ts';

const opened = workbench('preview', () => ({
  extension: packaged(),
  files: { 'bars.md': bars },
  file: 'bars.md',
}));

const preview = () => opened.editor.webview('vscode.markdown-language-features');
const figures = (): Locator => preview().locator('figure.papervolt-figure');

/** All its words, seen or not. */
const read = async (): Promise<string> => (await preview().locator('body').textContent()) ?? '';

/** The figure as the very element that it is now. */
async function nodeOf(figure: Locator): Promise<ElementHandle<Element>> {
  const node = await figure.elementHandle();
  if (node === null) throw new Error('there is no figure');
  return node as ElementHandle<Element>;
}

/** Whether the element that a figure was is still what its id finds, and was never out of the page. */
const isStill = (node: ElementHandle<Element>): Promise<boolean> =>
  node.evaluate((element) => element.isConnected && document.getElementById(element.id) === element);

describe('figures', () => {
  test('are solved drawings with their values', async () => {
    const { editor } = opened;
    await editor.command('Markdown: Open Preview to the Side');
    await figures().first().locator('svg').waitFor();
    await expect.poll(() => figures().count()).toBe(2);
    await figures().first().locator('svg', { hasText: '0.75 V' }).waitFor();
    await preview().locator('.papervolt-value', { hasText: '0.75 V' }).first().waitFor();
    await expect.poll(() => preview().locator('.papervolt-waiting').count()).toBe(0);
    await editor.shot('preview');
  });

  test('stay the same elements while prose and headings are typed', async () => {
    const { editor } = opened;
    const nodes = [await nodeOf(figures().nth(0)), await nodeOf(figures().nth(1))];
    await editor.cursorBehind('bars.md', 'Lines of equal potential');
    await editor.type(' They are drawn below.');
    await preview().getByText('They are drawn below.').waitFor();
    await editor.cursorBehind('bars.md', '# Two bars');
    await editor.type(' and more');
    await preview().locator('h1', { hasText: 'Two bars and more' }).waitFor();
    await editor.press('Enter', 'Enter');
    await editor.type('A paragraph between.');
    await preview().getByText('A paragraph between.').waitFor();
    expect(await Promise.all(nodes.map(isStill))).toEqual([true, true]);
    await editor.revert('bars.md');
    await preview().getByText('A paragraph between.').waitFor({ state: 'detached' });
    expect(await Promise.all(nodes.map(isStill))).toEqual([true, true]);
  });

  test('know the line of their block, so that the preview scrolls with the text', async () => {
    const { editor } = opened;
    const line = bars.split('\n').indexOf('```electrodes bars');
    expect(await figures().first().getAttribute('data-line')).toBe(String(line));
    expect(await figures().first().getAttribute('class')).toContain('code-line');
    const scrolled = (): Promise<number> =>
      preview()
        .locator('body')
        .evaluate(() => window.scrollY);
    await editor.press('Control+Home');
    await expect.poll(scrolled).toBe(0);
    await editor.cursorBehind('bars.md', '# Two bars');
    await editor.press('Control+End');
    await expect.poll(scrolled).toBeGreaterThan(100);
    await editor.press('Control+Home');
    await expect.poll(scrolled).toBeLessThan(50);
  });

  test('change with their block, in a frame that keeps its size', async () => {
    const { editor } = opened;
    const size = (): Promise<{ width: number; height: number } | null> =>
      figures().first().locator('svg').first().boundingBox();
    const before = await size();
    const drawn = await figures().first().innerHTML();
    await editor.cursorIn('bars.md', '10 mm × 140 mm at (75, 85) mm', '75');
    await editor.press('Delete');
    await editor.type('8');
    await editor.line('bars.md', 'at (78, 85) mm').waitFor();
    await expect.poll(() => figures().first().innerHTML()).not.toBe(drawn);
    await expect.poll(() => preview().locator('.papervolt-waiting').count()).toBe(0);
    const after = await size();
    expect([after?.width, after?.height]).toEqual([before?.width, before?.height]);
    await editor.revert('bars.md');
    await expect.poll(() => figures().first().innerHTML()).toBe(drawn);
  });

  test('keep their last good drawing, dimmed, over the message of a slip', async () => {
    const { editor } = opened;
    const drawing = (): Promise<string> => figures().first().locator('svg').first().innerHTML();
    const [before, drawn] = [await figures().first().boundingBox(), await drawing()];
    await editor.cursorBehind('bars.md', 'right of N positive');
    await editor.press('Control+Backspace', 'Backspace');
    const stale = figures().first().locator('.papervolt-stale');
    await stale.locator('svg').waitFor();
    await figures().first().locator('.papervolt-message').waitFor();
    expect(await stale.evaluate((element) => Number(getComputedStyle(element).opacity))).toBeLessThan(0.8);
    expect(await drawing()).toBe(drawn);
    const after = await figures().first().boundingBox();
    expect([after?.width, after?.height]).toEqual([before?.width, before?.height]);
    await editor.shot('preview-stale');
    await editor.revert('bars.md');
    await expect.poll(() => preview().locator('.papervolt-stale').count()).toBe(0);
  });
});

describe('readers', () => {
  test('pupils get blanks, and neither values nor answers', async () => {
    const { editor } = opened;
    await editor.command('Papervolt: Show as pupils see it');
    await preview().locator('.papervolt-reader', { hasText: 'pupils' }).waitFor();
    await preview().locator('.papervolt-blank').first().waitFor();
    const text = await read();
    expect(text).toContain('What is the reading half-way?');
    for (const secret of ['0.75', 'by symmetry', 'Between the bars the paper', 'two strips of copper'])
      expect(text).not.toContain(secret);
    await editor.shot('preview-pupils');
  });

  test('technicians get their passages', async () => {
    const { editor } = opened;
    await editor.command('Papervolt: Show as technicians see it');
    await preview().getByText('Cut two strips of copper').waitFor();
    expect(await read()).not.toContain('by symmetry');
    await expect.poll(() => preview().locator('.papervolt-waiting').count()).toBe(0);
    await editor.shot('preview-technicians');
  });

  test('teachers get all', async () => {
    const { editor } = opened;
    await editor.command('Papervolt: Show as teachers see it');
    await preview().getByText('by symmetry').waitFor();
    await preview().getByText('Between the bars the paper').waitFor();
  });
});

test('nothing was disabled in the preview, and nothing asked of other machines', async () => {
  expect(await preview().getByText('Some content has been disabled').count()).toBe(0);
  expect(opened.editor.refused).toEqual([]);
});
