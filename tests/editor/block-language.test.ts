/** Blocks as a language of their own inside Markdown, snippets in both, and the walkthrough, in a workbench. */
import { beforeAll, expect, test } from 'vitest';
import { workbench } from './opened.ts';
import { packaged } from './places.ts';
import { bars } from './sheets.ts';

const opened = workbench('block-language', () => ({
  extension: packaged(),
  files: { 'bars.md': bars },
  file: 'bars.md',
}));

// Editors read what they know of a language when they first meet it; by the time the setup is solved they have.
beforeAll(async () => {
  await opened.editor.lens('bars.md', 'Show drawing').waitFor();
});

test('a remark begins with # in a block, and is a comment of HTML in the text', async () => {
  const { editor } = opened;
  await editor.cursorBehind('bars.md', /^probe/);
  await editor.command('Toggle Line Comment');
  await editor.line('bars.md', /^#\sprobe/).waitFor();
  await editor.command('Toggle Line Comment');
  await editor.line('bars.md', /^probe/).waitFor();
  await editor.cursorBehind('bars.md', /^#\s/);
  await editor.command('Toggle Line Comment');
  await editor.line('bars.md', /^<!--\s#\s/).waitFor();
  await editor.revert('bars.md');
});

test('parentheses are closed', async () => {
  const { editor } = opened;
  await editor.cursorBehind('bars.md', /^probe/);
  await editor.press('Enter');
  await editor.type('probe Q-2 at (');
  await editor.line('bars.md', /^probe\sQ-2\sat\s\(\)$/).waitFor();
  await editor.revert('bars.md');
});

test('the words of a block have colours of their own', async () => {
  const { editor } = opened;
  const classOf = (line: RegExp, word: string): Promise<string | null> =>
    editor.line('bars.md', line).locator('span span', { hasText: word }).first().getAttribute('class');
  const seen = [
    await classOf(/^probe/, 'probe'),
    await classOf(/^probe/, 'M'),
    await classOf(/^probe/, '50'),
  ];
  expect(new Set(seen).size).toBe(3);
  for (const name of seen) expect(name).toMatch(/mtk\d+/);
});

test('snippets are offered where they can stand', async () => {
  const { editor } = opened;
  await editor.cursorBehind('bars.md', /^probe/);
  await editor.press('Enter');
  await editor.type('two-b');
  await (await editor.suggestion('two-bars')).waitFor();
  await editor.press('Escape');
  await editor.revert('bars.md');
  await editor.press('Control+End', 'Enter');
  await editor.type('electrodes-l');
  await (await editor.suggestion('electrodes-like')).waitFor();
  await editor.press('Enter');
  await editor.line('bars.md', 'electrodes reversed like bars').waitFor();
  await editor.press('Escape', 'Escape');
  await editor.revert('bars.md');
});

/** Of each step, and of its picture. */
const titles = [
  ['Write a block', 'A block and its setup'],
  ['See it solved', 'The solved setup, and a reading'],
  ['Ask and tell', 'Asked: a blank for pupils, a value for teachers'],
  ['Let slips be found', 'A slip, the finding and its fix'],
  ['Print for three readers', 'Prints for pupils, teachers and technicians'],
] as const;

test('the walkthrough has five steps, each with its picture', async () => {
  const { editor } = opened;
  const box = editor.page.locator('.quick-input-widget input[type=text]');
  const row = (text: string) =>
    editor.page.locator('.quick-input-list .monaco-list-row', { hasText: text }).first();
  await editor.press('F1');
  await box.fill('>Welcome: Open Walkthrough');
  await row('Open Walkthrough').click();
  await row('Map a field with Papervolt').click();
  const steps = editor.page.locator('.gettingStartedContainer .getting-started-step');
  await steps.first().waitFor();
  expect(await steps.count()).toBe(titles.length);
  for (const [i, [title, picture]] of titles.entries()) {
    await steps.filter({ hasText: title }).click();
    await editor.webview('').locator('body > svg', { hasText: picture }).waitFor();
    await editor.shot(`walkthrough-${i + 1}`);
  }
});
