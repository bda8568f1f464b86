/** An editor with a workspace, started and opened at a file; and its end, with a picture where a test has failed. */
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, onTestFailed } from 'vitest';
import { confine, launchBrowser, viewport } from './browser.ts';
import { CodeServer, type WorkbenchOptions } from './code-server.ts';
import { EditorPage } from './editor-page.ts';

export interface Opened {
  readonly server: CodeServer;
  readonly editor: EditorPage;
}

/** One workbench for all tests of a file. The parts are there once the tests run. */
export function workbench(name: string, options: () => WorkbenchOptions & { readonly file: string }): Opened {
  let browser: Browser | null = null;
  let server: CodeServer | null = null;
  let editor: EditorPage | null = null;
  beforeAll(async () => {
    const { file, ...rest } = options();
    server = await CodeServer.start(rest);
    browser = await launchBrowser();
    editor = await openedAt(browser, server, file);
  });
  afterAll(async () => {
    await browser?.close();
    await server?.stop();
  });
  beforeEach(({ task }) => {
    onTestFailed(() => editor?.shot(`failed-${name}-${task.name.replace(/\W+/g, '-')}`));
  });
  return {
    get server() {
      return started(server);
    },
    get editor() {
      return started(editor);
    },
  };
}

/** Opens the workspace of a server in a browser, with a file in front. */
async function openedAt(browser: Browser, server: CodeServer, file: string): Promise<EditorPage> {
  const context = await browser.newContext({ viewport, reducedMotion: 'reduce' });
  const refused = await confine(context, new URL(server.url).host);
  const editor = new EditorPage(await context.newPage(), refused);
  await editor.page.goto(addressOf(server, [['openFile', server.uriOf(`${server.work}/${file}`)]]));
  await editor.editor(file).locator('.view-line').first().waitFor({ timeout: 60_000 });
  await editor.started();
  await editor.closeSideBar();
  return editor;
}

/** The payload is what the workbench is told beyond its folder. */
export function addressOf(server: CodeServer, payload: readonly (readonly [string, string])[]): string {
  const said = encodeURIComponent(JSON.stringify(payload));
  return `${server.url}/?folder=${encodeURIComponent(server.work)}&payload=${said}`;
}

function started<T>(part: T | null): T {
  if (part === null) throw new Error('asked for before the tests run');
  return part;
}
