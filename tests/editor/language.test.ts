/** The language server's work as a teacher sees it in a workbench, from the package that teachers install. */
import { describe, expect, test } from 'vitest';
import { workbench } from './opened.ts';
import { packaged } from './places.ts';
import { bars, slips, wild } from './sheets.ts';

const opened = workbench('language', () => ({
  extension: packaged(),
  files: { 'bars.md': bars, 'slips.md': slips, 'wild.md': wild },
  file: 'slips.md',
}));

describe('findings', () => {
  test('are underlined, and listed with a code that leads to its explanation', async () => {
    const { editor } = opened;
    await editor.squiggles('error').first().waitFor({ timeout: 60_000 });
    const row = (await editor.problems()).filter({ hasText: 'decimal comma' });
    await row.waitFor();
    expect(await row.textContent()).toContain('papervolt');
    const code = row.locator('a', { hasText: 'decimal-comma' });
    await code.waitFor();
    expect(await code.getAttribute('href')).toContain('decimal-comma');
    await editor.shot('problems');
    await editor.command('View: Toggle Panel Visibility');
  });

  test('a quick fix mends its place, and its finding is gone', async () => {
    const { editor } = opened;
    await editor.cursorIn('slips.md', 'cell 1,5 V', '1,5');
    await editor.press('Control+.');
    await editor.page.locator('.action-widget .monaco-list-row', { hasText: 'Write 1.5 V' }).waitFor();
    await editor.press('Enter');
    await editor.line('slips.md', 'cell 1.5 V').waitFor();
    await expect.poll(() => editor.squiggles('error').count()).toBe(1);
    await editor.cursorIn('slips.md', 'prob M', 'prob');
    await editor.press('Control+.');
    await editor.page.locator('.action-widget .monaco-list-row', { hasText: 'Write probe' }).waitFor();
    await editor.press('Enter');
    await editor.line('slips.md', 'probe M').waitFor();
    await expect.poll(() => editor.squiggles('error').count()).toBe(0);
  });

  test('all certain fixes are made by one command', async () => {
    const { editor } = opened;
    await editor.command('Papervolt: Apply all certain fixes');
    await editor.line('slips.md', 'The reading is 5 V.').waitFor();
    await expect.poll(() => editor.squiggles('warning').count()).toBe(0);
    await editor.save('slips.md');
    expect(opened.server.read('slips.md')).toBe(
      slips.replace('1,5', '1.5').replace('prob ', 'probe ').replace('5V', '5 V'),
    );
  });
});

describe('a solved setup', () => {
  test('stands beside its text: readings, current and resistance', async () => {
    const { editor } = opened;
    await editor.openFile('bars.md');
    await editor.line('bars.md', /^probe\s+M\s.*0\.75\sV/).waitFor();
    await editor.line('bars.md', /^supply\s.*mA.*Ω/).waitFor();
    await editor.lens('bars.md', 'Show drawing').waitFor();
    await editor.lens('bars.md', /kΩ/).waitFor();
    await editor.shot('solved');
  });

  test('is drawn in the hover over its first line', async () => {
    const { editor } = opened;
    await editor.cursorIn('bars.md', '```electrodes bars', 'electrodes');
    const drawing = (await editor.hover()).locator('img');
    await drawing.waitFor();
    const size = await drawing.evaluate(async (image) => {
      if (!(image instanceof HTMLImageElement)) return null;
      await image.decode();
      return [image.naturalWidth, image.naturalHeight];
    });
    expect(size?.every((side) => side > 100)).toBe(true);
    await editor.shot('hover-drawing');
    await editor.press('Escape');
  });

  test('is told in the hover over an electrode', async () => {
    const { editor } = opened;
    await editor.cursorIn('bars.md', /^bar\s+P/, 'P');
    const hover = await editor.hover();
    await hover.filter({ hasText: /1\.50\sV/ }).waitFor();
    await hover.filter({ hasText: /mA/ }).waitFor();
    await editor.shot('hover-electrode');
    await editor.press('Escape');
  });
});

describe('while typing', () => {
  test('words of the language are offered, with help', async () => {
    const { editor } = opened;
    await editor.cursorBehind('bars.md', 'field-lines 11');
    await editor.press('Enter');
    await editor.type('pro');
    await editor.press('Control+Space');
    await editor.suggestions().filter({ hasText: 'probe' }).first().waitFor();
    await editor.shot('completion');
    await editor.press('Escape');
    await editor.revert('bars.md');
  });

  test('a line is filled in as a snippet', async () => {
    const { editor } = opened;
    await editor.cursorBehind('bars.md', 'field-lines 11');
    await editor.press('Enter');
    await editor.type('dis');
    await editor.press('Control+Space');
    await editor.suggestions().filter({ hasText: /^disc/ }).first().click();
    await editor.line('bars.md', /^disc\s+\S+\s+diameter/).waitFor();
    await editor.page.locator('.finish-snippet-placeholder, .snippet-placeholder').first().waitFor({
      state: 'attached',
    });
    await editor.press('Escape', 'Escape');
    await editor.revert('bars.md');
  });

  test('units are offered behind a number', async () => {
    const { editor } = opened;
    await editor.cursorBehind('bars.md', 'field-lines 11');
    await editor.press('Enter');
    await editor.type('copper 0.2 ');
    await editor.press('Control+Space');
    await editor.suggestions().filter({ hasText: /^mm/ }).first().waitFor();
    await editor.press('Escape');
    await editor.revert('bars.md');
  });

  test('the form of the line is shown', async () => {
    const { editor } = opened;
    await editor.cursorBehind('bars.md', 'field-lines 11');
    await editor.press('Enter');
    await editor.type('disc D ');
    await editor.press('Control+Shift+Space');
    const form = editor.page.locator('.parameter-hints-widget.visible');
    await form.filter({ hasText: 'diameter' }).waitFor();
    await editor.shot('signature');
    await editor.press('Escape', 'Escape');
    await editor.revert('bars.md');
  });

  test('comment signs of the block are set and taken away', async () => {
    const { editor } = opened;
    await editor.cursorBehind('bars.md', 'field-lines 11');
    await editor.press('Control+/');
    await editor.line('bars.md', /^#\s?field-lines/).waitFor();
    await editor.press('Control+/');
    await editor.line('bars.md', /^field-lines/).waitFor();
  });
});

describe('changes of the text', () => {
  test('a probe is renamed in its block, in the block like it and in inserts', async () => {
    const { editor, server } = opened;
    await editor.cursorIn('bars.md', /^probe\s+M/, 'M');
    await editor.press('F2');
    const box = editor.page.locator('.rename-box input');
    await box.waitFor();
    await box.fill('H');
    await editor.press('Enter');
    await editor.line('bars.md', /^probe\s+H/).waitFor();
    await editor.save('bars.md');
    expect(server.read('bars.md')).toBe(
      bars.replace('probe   M', 'probe   H').replaceAll('bars.M', 'bars.H').replace('wider.M', 'wider.H'),
    );
    await editor.press('Control+z');
    await editor.line('bars.md', /^probe\s+M/).waitFor();
    await editor.save('bars.md');
  });

  test('blocks are set in columns, prose is left alone', async () => {
    const { editor, server } = opened;
    await editor.openFile('wild.md');
    await editor.command('Papervolt: Format blocks');
    await editor.line('wild.md', /^bar\s{5}N\s{2}10\smm/).waitFor();
    await editor.save('wild.md');
    const parts = (text: string): readonly string[] => text.split(/```electrodes wild\n|```\n/);
    const [before, block, after] = parts(server.read('wild.md'));
    expect([before, after]).toEqual([parts(wild)[0], parts(wild)[2]]);
    expect(block?.split('\n').map((line) => line.slice(0, 8).trimEnd())).toEqual([
      'paper',
      'supply',
      'bar',
      'bar',
      'probe',
      '',
    ]);
  });
});

test('nothing was asked of other machines', () => {
  expect(opened.editor.refused).toEqual([]);
});
