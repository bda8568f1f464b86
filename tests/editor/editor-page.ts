/** An editor in the browser as a person handles it: by lines, keys, commands and what can be seen. */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { FrameLocator, Locator, Page } from 'playwright-core';
import { shots } from './places.ts';

/** How long anything may take to be seen, ms: long enough for a machine that does other things as well. */
const patience = 30_000;

export class EditorPage {
  readonly page: Page;
  /** Requests for other machines; there must be none. */
  readonly refused: readonly string[];
  /** What the console of the browser says. */
  readonly console: string[] = [];

  constructor(page: Page, refused: readonly string[]) {
    this.page = page;
    this.refused = refused;
    page.setDefaultTimeout(patience);
    page.on('console', (message) => this.console.push(`${message.type()}: ${message.text()}`));
  }

  editor(file: string): Locator {
    return this.page.locator(`.editor-instance .monaco-editor[data-uri$="/${file}"]`);
  }

  /** Resolves when all that the editor does at its start is done; what is clicked before may be forgotten. */
  async started(): Promise<void> {
    const started = (): boolean => performance.getEntriesByName('code/LifecyclePhase/Eventually').length > 0;
    await this.page.waitForFunction(started, null, { timeout: 60_000 });
  }

  async closeSideBar(): Promise<void> {
    const bar = this.page.locator('.part.sidebar');
    await bar.waitFor();
    await this.press('Control+b');
    await bar.waitFor({ state: 'hidden' });
  }

  /** By its name in the workspace; resolves when its lines are seen. */
  async openFile(file: string): Promise<void> {
    const box = this.page.locator('.quick-input-widget input[type=text]');
    await this.press('Control+p');
    await box.fill(file);
    // Not by Enter: the list may still be the one from before the name was typed.
    await this.page.locator('.quick-input-list .monaco-list-row', { hasText: file }).first().click();
    await box.waitFor({ state: 'hidden' });
    await this.editor(file).locator('.view-line').first().waitFor();
  }

  /** Resolves when the file in front is written. */
  async save(file: string): Promise<void> {
    await this.command('File: Save');
    const tab = this.page.locator('.tabs-container .tab', { hasText: file }).first();
    await tab.and(this.page.locator(':not(.dirty)')).waitFor();
  }

  /** Takes back all that was not saved. */
  async revert(file: string): Promise<void> {
    await this.command('File: Revert File');
    const tab = this.page.locator('.tabs-container .tab', { hasText: file }).first();
    await tab.and(this.page.locator(':not(.dirty)')).waitFor();
  }

  /** The first line that holds the text and can be seen. White space counts as one space in words, and as itself in patterns. */
  line(file: string, text: string | RegExp): Locator {
    return this.editor(file).locator('.view-line').filter({ hasText: text }).first();
  }

  /** Puts the cursor at the end of a line. */
  async cursorBehind(file: string, text: string | RegExp): Promise<void> {
    await this.line(file, text).click();
    await this.page.keyboard.press('End');
  }

  /** Puts the cursor into a word, behind its first letter. */
  async cursorIn(file: string, line: string | RegExp, word: string): Promise<void> {
    const found = this.line(file, line);
    await found.waitFor();
    const { x, y } = await found.evaluate(placeOfWord, word);
    await this.page.mouse.click(x, y);
  }

  async press(...keys: readonly string[]): Promise<void> {
    for (const key of keys) await this.page.keyboard.press(key);
  }

  type(text: string): Promise<void> {
    return this.page.keyboard.type(text);
  }

  /** By the title that the list of commands shows. */
  async command(title: string): Promise<void> {
    await this.choose(title);
    await this.page.locator('.quick-input-widget input[type=text]').waitFor({ state: 'hidden' });
  }

  /** From the list of commands, whatever comes next. */
  private async choose(title: string): Promise<void> {
    await this.press('F1');
    await this.page.locator('.quick-input-widget input[type=text]').fill(`>${title}`);
    await this.page.locator(`.quick-input-list .monaco-list-row[aria-label^="${title}"]`).first().click();
  }

  /** The titles of all commands that the list shows for the words. */
  async commands(words: string): Promise<readonly string[]> {
    const box = this.page.locator('.quick-input-widget input[type=text]');
    await this.press('F1');
    await box.fill(`>${words}`);
    const rows = this.page.locator('.quick-input-list .monaco-list-row');
    await rows.filter({ hasText: words }).first().waitFor();
    const titles = await rows.locator('.label-name').allTextContents();
    await this.press('Escape');
    await box.waitFor({ state: 'hidden' });
    return titles;
  }

  /** By the name that the list of themes shows. */
  async chooseTheme(name: string): Promise<void> {
    await this.choose('Preferences: Color Theme');
    const box = this.page.getByPlaceholder('Select Color Theme');
    await box.fill(name);
    await this.page.locator('.quick-input-list .monaco-list-row', { hasText: name }).first().click();
    await box.waitFor({ state: 'hidden' });
  }

  async goTo(line: number, column: number): Promise<void> {
    const box = this.page.locator('.quick-input-widget input[type=text]');
    await this.press('Control+g');
    await box.fill(`:${line}:${column}`);
    await this.press('Enter');
    await box.waitFor({ state: 'hidden' });
  }

  /** What is said where the cursor stands. */
  async hover(): Promise<Locator> {
    await this.press('Control+k', 'Control+i');
    const hover = this.page.locator('.monaco-hover:not(.workbench-hover)').filter({ visible: true }).first();
    await hover.waitFor();
    return hover;
  }

  squiggles(severity: 'error' | 'warning' | 'info'): Locator {
    return this.page.locator(`.squiggly-${severity}`);
  }

  lens(file: string, text: string | RegExp): Locator {
    return this.editor(file)
      .locator('.codelens-decoration')
      .locator('a, span')
      .filter({ hasText: text })
      .first();
  }

  suggestions(): Locator {
    return this.page.locator('.suggest-widget.visible .monaco-list-row');
  }

  /**
   * One that depends on the language of the place. A line that was just typed still has that of the text around the block until the
   * editor has read its grammar again, in its own time and without a sign: then it has to be asked once more, as a person would.
   */
  async suggestion(text: string): Promise<Locator> {
    const found = this.suggestions().filter({ hasText: text }).first();
    for (const end = Date.now() + patience; Date.now() < end; ) {
      await this.press('Control+Space');
      const seen = await found.waitFor({ timeout: 1000 }).then(
        () => true,
        () => false,
      );
      if (seen) break;
      await this.press('Escape');
    }
    return found;
  }

  /** Rows of the list of problems, which is opened. */
  async problems(): Promise<Locator> {
    await this.command('Problems: Focus on Problems View');
    return this.page.locator('.markers-panel .monaco-list-row');
  }

  /** The page that an extension shows: a frame in a frame. */
  webview(extension: string): FrameLocator {
    return this.page
      .frameLocator(`iframe.webview.ready[src*="extensionId=${extension}"]`)
      .frameLocator('iframe#active-frame');
  }

  async shot(name: string): Promise<void> {
    mkdirSync(shots, { recursive: true });
    await this.page.screenshot({ path: join(shots, `${name}.png`) });
  }
}

/** Run in the page: the place on the screen behind the first letter of a word. */
function placeOfWord(line: Element, word: string): { readonly x: number; readonly y: number } {
  const texts = document.createTreeWalker(line, NodeFilter.SHOW_TEXT);
  const letters: (readonly [Node, number])[] = [];
  for (let node = texts.nextNode(); node !== null; node = texts.nextNode())
    for (let i = 0; i < (node.textContent ?? '').length; i++) letters.push([node, i]);
  const text = letters.map(([node, i]) => node.textContent?.charAt(i)).join('');
  const [node, i] = letters[text.replaceAll('\u00a0', ' ').indexOf(word)] ?? [null, 0];
  if (node === null) throw new Error(`no ${word} in ${text}`);
  const range = document.createRange();
  range.setStart(node, i);
  range.setEnd(node, i + 1);
  const { right, top, height } = range.getBoundingClientRect();
  return { x: right - 1, y: top + height / 2 };
}
