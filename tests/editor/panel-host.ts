/** The panel's page in a browser, without an editor and without a server: the extension's side of the talk runs here, over the core. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';
import type { Browser, Page } from 'playwright-core';
import { Conversation, englishConversation } from '../../client/panel/conversation.ts';
import { englishWords, panelHtml } from '../../client/panel/html.ts';
import type { ToPage } from '../../client/panel/protocol.ts';
import {
  askOf,
  type Draft,
  draftSheet,
  editing,
  fieldReader,
  fieldStages,
  lineIndex,
  type Outcome,
  outcomeOf,
} from '../../shared/index.ts';
import { root } from './places.ts';

const origin = 'https://panel.test';
const uri = 'file:///sheet.md';

/** An open text and what is asked of it, answered as the server would. */
export class SheetHost {
  text: string;
  version = 1;
  /** All texts that there were, the newest last: what undo would go back through. */
  readonly history: string[] = [];
  readonly sent: ToPage[] = [];
  readonly wentTo: editing.Place[] = [];
  readonly logged: string[] = [];
  title = '';
  private lastGood: editing.PanelPicture | null = null;
  readonly conversation: Conversation;

  constructor(text: string, post: (message: ToPage) => void) {
    this.text = text;
    this.conversation = new Conversation(
      {
        ask: (method, params) => ({
          answer: Promise.resolve().then(() => this.answer(method, params)),
          cancel: () => undefined,
        }),
        post: (message) => {
          this.sent.push(message);
          post(message);
        },
        name: (title) => {
          this.title = title;
        },
        version: () => this.version,
        apply: async (_, edits) => {
          this.edit(edits);
          return true;
        },
        goTo: (_, place) => void this.wentTo.push({ line: place.line, character: place.character }),
        log: (message) => void this.logged.push(message),
        after: (milliseconds, run) => void setTimeout(run, milliseconds),
      },
      englishConversation,
    );
    this.conversation.lookAt({ uri, place: { line: 0, character: 0 } });
  }

  /** As if somebody typed. */
  type(text: string): void {
    this.history.push(this.text);
    this.text = text;
    this.version++;
    void this.conversation.refresh();
  }

  private edit(edits: readonly editing.PlacedEdit[]): void {
    const lines = lineIndex(this.text);
    const offset = ({ line, character }: editing.Place): number =>
      lines.offsetOf({ line, column: character });
    const spans = edits.map(({ range, newText }) => ({
      span: { from: offset(range.start), to: offset(range.end) },
      text: newText,
    }));
    this.type(editing.editedText(this.text, spans));
  }

  private answer(method: string, params: unknown): unknown {
    const draft = draftSheet({ name: 'sheet.md', text: this.text });
    switch (method) {
      case editing.messages.panel:
        return this.panel(draft);
      case editing.messages.slip:
        return slip(draft, params as editing.PointAsk);
      case editing.messages.move:
        return this.moved(draft, params as editing.MoveAsk);
      case editing.messages.addProbe: {
        const { block, x_mm, y_mm } = params as editing.PointAsk;
        return this.written(editing.probeLine(draft, block, { x: x_mm, y: y_mm }), null);
      }
      default:
        throw new Error(`nobody asks for ${method}`);
    }
  }

  private panel(draft: Draft): editing.PanelDrawing {
    const { drawing, outcome, picture } = this.drawn(draft, 0);
    if (outcome.solved !== null) this.lastGood = picture;
    return outcome.solved === null && this.lastGood !== null
      ? { ...drawing, ...this.lastGood, stale: true }
      : drawing;
  }

  private moved(draft: Draft, { block, handle, by_mm, draw }: editing.MoveAsk): editing.Moved {
    const moving = editing.moveHandle(draft, block, handle, by_mm);
    if (!draw || 'refusal' in moving) return this.written(moving, null);
    const supposed = draftSheet({ name: 'sheet.md', text: editing.editedText(this.text, moving.edits) });
    return this.written(moving, this.drawn(supposed, block).drawing);
  }

  private written(moving: editing.Moving, drawing: editing.PanelDrawing | null): editing.Moved {
    if ('refusal' in moving) return moving;
    const place = placesIn(this.text);
    const edits = moving.edits.map(({ span, text }) => ({
      range: { start: place(span.from), end: place(span.to) },
      newText: text,
    }));
    return { edits, version: this.version, drawing, handle: moving.handle, said: moving.said };
  }

  private drawn(
    draft: Draft,
    block: number,
  ): { drawing: editing.PanelDrawing; outcome: Outcome; picture: editing.PanelPicture } {
    const [setup, place] = [draft.setups[block], placesIn(draft.sheet.source.text)];
    if (setup === undefined) throw new Error('the sheet of the test has a block');
    const outcome = outcomeOf(setup, askOf(draft, setup));
    const picture = editing.panelPicture(setup, outcome.solved);
    if (picture === null) throw new Error('the block of the test has paper');
    const handles = editing.handlesOf(draft, block).map((handle) => ({
      id: handle.id,
      kind: handle.kind,
      label: handle.label,
      x_mm: handle.point.x,
      y_mm: handle.point.y,
      path: editing.handlePath(handle.outlines),
      place: place(handle.span.from),
    }));
    const message = editing.blockRemark(draft, block, {
      solved: outcome.solved !== null,
      trouble: outcome.trouble,
    });
    const drawing = { ...picture, version: this.version, block, handles, stale: false, message };
    return { drawing, outcome, picture };
  }
}

function slip(draft: Draft, { block, x_mm, y_mm }: editing.PointAsk): editing.Slip | null {
  const setup = draft.setups[block];
  if (setup === undefined) return null;
  const at = { x: x_mm, y: y_mm };
  if (!setup.solvable) return editing.slipAt(setup, null, at);
  const stages = fieldStages(setup, askOf(draft, setup));
  let step = stages.next();
  while (step.done !== true) step = stages.next();
  return editing.slipAt(setup, step.value.ok ? fieldReader(setup, step.value.field) : null, at);
}

function placesIn(text: string): (offset: number) => editing.Place {
  const lines = lineIndex(text);
  return (offset) => {
    const { line, column } = lines.placeOf(offset);
    return { line, character: column };
  };
}

export interface OpenPanel {
  readonly page: Page;
  readonly host: SheetHost;
  /** What the page wanted from elsewhere, and what went wrong in it. */
  readonly complaints: readonly string[];
}

/** Kinds of themes, as the editor names them on the page's body. */
export type ThemeClass =
  | 'vscode-light'
  | 'vscode-dark'
  | 'vscode-high-contrast'
  | 'vscode-high-contrast vscode-high-contrast-light';

/** Opens the page over a sheet, with the policy that it has in an editor. */
export async function openPanel(
  browser: Browser,
  text: string,
  theme: ThemeClass = 'vscode-light',
): Promise<OpenPanel> {
  const context = await browser.newContext({
    viewport: { width: 640, height: 760 },
    reducedMotion: 'reduce',
  });
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on('pageerror', (error) => complaints.push(String(error)));
  page.on('console', (message) => {
    if (message.type() === 'error') complaints.push(message.text());
  });
  const files = await pageFiles();
  await context.route('**/*', (route) => {
    const file = files[route.request().url()];
    if (file === undefined) complaints.push(`asked for ${route.request().url()}`);
    return file === undefined ? route.abort() : route.fulfill(file);
  });
  const posted: ToPage[] = [];
  let ready = false;
  const deliver = (message: ToPage): void => {
    if (!ready) posted.push(message);
    else void page.evaluate((data) => window.postMessage(data, '*'), message);
  };
  const host = new SheetHost(text, deliver);
  await page.exposeFunction('toExtension', (data: unknown) => {
    ready = true;
    host.conversation.hear(data);
  });
  await page.addInitScript((name) => {
    const send = (data: unknown): unknown => Reflect.get(window, 'toExtension')(data);
    Reflect.set(window, 'acquireVsCodeApi', () => ({ postMessage: send, setState: () => undefined }));
    document.addEventListener('DOMContentLoaded', () => document.body.classList.add(...name.split(' ')));
  }, theme);
  await page.goto(`${origin}/`);
  await page.locator('#picture svg').waitFor();
  return { page, host, complaints };
}

type Fulfilment = { readonly contentType: string; readonly body: string };

async function pageFiles(): Promise<Readonly<Record<string, Fulfilment>>> {
  const { outputFiles } = await build({
    absWorkingDir: root,
    entryPoints: ['client/panel/page/main.ts'],
    bundle: true,
    write: false,
    format: 'iife',
    target: 'chrome122',
    logLevel: 'warning',
  });
  const html = panelHtml({
    style: `${origin}/panel.css`,
    script: `${origin}/panel.js`,
    source: origin,
    nonce: 'onlyfortests',
    words: englishWords,
  });
  return {
    [`${origin}/`]: { contentType: 'text/html', body: html },
    [`${origin}/panel.css`]: {
      contentType: 'text/css',
      body: readFileSync(join(root, 'client/media/panel.css'), 'utf8'),
    },
    [`${origin}/panel.js`]: { contentType: 'text/javascript', body: outputFiles[0]?.text ?? '' },
  };
}
