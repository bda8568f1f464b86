/** The panel's page in a real browser: pointing, adding, moving by pointer and by keys, what a screen reader and a strict policy find. */
import { mkdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import type { Browser, Locator } from 'playwright-core';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { launchBrowser } from './browser.ts';
import { type OpenPanel, openPanel, type ThemeClass } from './panel-host.ts';
import { shots } from './places.ts';

const bars = `# Two bars

\`\`\`electrodes bars
paper   240 mm × 160 mm, 5 kΩ per square
supply  cell 1.5 V
meter   10 MΩ, resolution 0.01 V
bar     N  10 mm × 120 mm at (60, 80) mm        negative
bar     P  10 mm × 120 mm, 100 mm right of N    positive
row     A  from (70, 40) mm to (160, 40) mm every 10 mm
probe   B  at (100, 95) mm
\`\`\`
`;

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

const line = ({ host }: OpenPanel, word: string): string =>
  host.text.split('\n').find((one) => one.startsWith(word)) ?? '';
const reading = ({ page }: OpenPanel): Locator => page.locator('#reading');

/** A place of the paper, mm, in the window. */
async function windowPlace(
  { page, host }: OpenPanel,
  x: number,
  y: number,
): Promise<{ x: number; y: number }> {
  const drawing = host.sent
    .flatMap((message) => (message.kind === 'drawing' ? [message.drawing] : []))
    .at(-1);
  if (drawing === undefined) throw new Error('nothing is drawn');
  const { left, top, scale } = drawing.frame;
  return page.locator('#hands').evaluate(
    (layer, [u, v]) => {
      const at = new DOMPoint(u, v).matrixTransform((layer as SVGSVGElement).getScreenCTM() ?? undefined);
      return { x: at.x, y: at.y };
    },
    [left + scale * x, top - scale * y] as const,
  );
}

async function pointAt(panel: OpenPanel, x: number, y: number): Promise<void> {
  const at = await windowPlace(panel, x, y);
  await panel.page.mouse.move(at.x, at.y);
}

async function said(panel: OpenPanel, pattern: RegExp): Promise<void> {
  await vi.waitFor(async () => expect(await reading(panel).textContent()).toMatch(pattern), 5000);
}

test('pointing reads the paper: volts, place, strength, and where the field leads', async () => {
  const panel = await openPanel(browser, bars);
  await pointAt(panel, 115, 80);
  // Midway between bars by symmetry half of the cell; 1.5 V over 100 mm is 15 V/m, a little less where the field spreads.
  await said(panel, /^0\.75\u00a0V at \(115, 80\)\u00a0mm; 1[45]\.\d\u00a0V\/m toward N$/);
  expect(await panel.page.locator('#directions').getAttribute('transform')).toBe('rotate(-180)');
  await pointAt(panel, 165, 80);
  await said(panel, /1\.50\u00a0V at \(165, 80\)\u00a0mm, on P: no field in metal/);
  expect(panel.complaints).toEqual([]);
});

test('a click on free paper adds a probe with the next letter', async () => {
  const panel = await openPanel(browser, bars);
  await pointAt(panel, 130, 60);
  await panel.page.mouse.down();
  await panel.page.mouse.up();
  await vi.waitFor(() => expect(panel.host.text).toMatch(/^probe\s+C\s+at \(130, 60\) mm$/m), 5000);
  await panel.page.locator('[data-handle="probe C"]').waitFor();
  expect(panel.host.history.length).toBe(1);
});

test('dragging shows the move before it is made, and makes it once', async () => {
  const panel = await openPanel(browser, bars);
  await pointAt(panel, 165, 80);
  await panel.page.mouse.down();
  await pointAt(panel, 170, 80);
  await pointAt(panel, 175, 80);
  await said(panel, /110 mm right of N/);
  expect(panel.host.text).toBe(bars);
  await panel.page.mouse.up();
  await vi.waitFor(() => expect(line(panel, 'bar     P')).toContain('110 mm right of N'), 5000);
  expect(panel.host.history).toEqual([bars]);
});

test('Escape takes a drag back', async () => {
  const panel = await openPanel(browser, bars);
  const before = await panel.page.locator('#picture').innerHTML();
  await pointAt(panel, 100, 95);
  await panel.page.mouse.down();
  await pointAt(panel, 120, 110);
  await said(panel, /120, 110/);
  await panel.page.keyboard.press('Escape');
  await panel.page.mouse.up();
  expect(await panel.page.locator('#picture').innerHTML()).toBe(before);
  expect(panel.host.history).toEqual([]);
});

test('arrow keys move what has the focus, a burst in one change, and the focus stays', async () => {
  const panel = await openPanel(browser, bars);
  const probe = panel.page.locator('[data-handle="probe B"]');
  await probe.focus();
  for (const key of ['ArrowRight', 'ArrowRight', 'Shift+ArrowUp']) await panel.page.keyboard.press(key);
  await vi.waitFor(() => expect(line(panel, 'probe')).toContain('(102, 105) mm'), 5000);
  expect(panel.host.history).toEqual([bars]);
  expect(await probe.evaluate((element) => element === document.activeElement)).toBe(true);
  await panel.page.keyboard.press('Enter');
  await vi.waitFor(() => expect(panel.host.wentTo.length).toBe(1));
  expect(bars.split('\n')[panel.host.wentTo[0]?.line ?? 0]).toContain('probe   B');
});

test('without a mouse the cross reads any place and adds a probe there', async () => {
  const panel = await openPanel(browser, bars);
  await panel.page.keyboard.press('Tab');
  await said(panel, /at \(120, 80\)/);
  await panel.page.keyboard.press('Shift+ArrowRight');
  await panel.page.keyboard.press('ArrowDown');
  await said(panel, /at \(130, 79\)/);
  expect(await reading(panel).getAttribute('aria-live')).toBe('polite');
  await panel.page.keyboard.press('p');
  await vi.waitFor(() => expect(panel.host.text).toMatch(/^probe\s+C\s+at \(130, 79\) mm$/m), 5000);
  await panel.page.keyboard.press('Tab');
  expect(await panel.page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toMatch(
    /^bar N/,
  );
});

test('what cannot be solved keeps the last drawing, dimmed, in the same place, and says why', async () => {
  const panel = await openPanel(browser, bars);
  const before = await panel.page.locator('#picture').boundingBox();
  panel.host.type(bars.replace('100 mm right of N ', '0.01 mm right of N'));
  await panel.page.locator('#stage.stale').waitFor();
  expect(await panel.page.locator('#remark').textContent()).toMatch(/N|P/);
  expect(await panel.page.locator('#picture').boundingBox()).toEqual(before);
  mkdirSync(shots, { recursive: true });
  await panel.page.screenshot({ path: join(shots, 'panel-stale.png') });
});

test('colours that the system forces are taken over, and lines are still drawn', async () => {
  const panel = await openPanel(browser, bars, 'vscode-high-contrast');
  await panel.page.emulateMedia({ forcedColors: 'active', colorScheme: 'dark' });
  const lines = panel.page.locator('#panel-field-lines g').first();
  const stroke = await lines.evaluate((element) => getComputedStyle(element).stroke);
  const ground = await panel.page.evaluate(() => getComputedStyle(document.body).backgroundColor);
  expect(stroke).toMatch(/^rgb/);
  // Not the theme's own blue.
  expect(stroke).not.toBe('rgb(108, 198, 255)');
  expect(stroke).not.toBe(ground);
  mkdirSync(shots, { recursive: true });
  await panel.page.screenshot({ path: join(shots, 'panel-forced-colours.png') });
});

const themes: readonly ThemeClass[] = [
  'vscode-light',
  'vscode-dark',
  'vscode-high-contrast',
  'vscode-high-contrast vscode-high-contrast-light',
];
const axe = createRequire(import.meta.url).resolve('axe-core/axe.min.js');

test.each(themes)('can be used by everyone: %s', async (theme) => {
  const panel = await openPanel(browser, bars, theme);
  await panel.page.keyboard.press('Tab');
  await said(panel, /120, 80/);
  const shot = (what: string): Promise<unknown> =>
    panel.page.screenshot({ path: join(shots, `panel-${theme.split(' ').at(-1)}-${what}.png`) });
  mkdirSync(shots, { recursive: true });
  await shot('cross');
  await panel.page.keyboard.press('Tab');
  await panel.page.keyboard.press('Shift+ArrowLeft');
  await said(panel, /bar N/);
  await shot('moving');
  await panel.page.keyboard.press('Escape');
  await panel.page.locator('summary').click();
  await shot('words');
  expect(panel.complaints).toEqual([]);
  await panel.page.evaluate(readFileSync(axe, 'utf8'));
  const found: unknown = await panel.page.evaluate(
    'axe.run().then(({ violations }) => violations.map(({ id, nodes }) => [id, ...nodes.map((n) => n.html)]))',
  );
  expect(found).toEqual([]);
});
