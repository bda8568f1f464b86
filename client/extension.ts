/** The extension: sets up its parts, each with what it needs, and hands the Markdown preview its plugin before any server runs. */
import * as vscode from 'vscode';
import { features } from './features.ts';
import type { ClientMaker, House } from './house.ts';
import { clientId } from './ids.ts';
import { startPreview } from './preview/feature.ts';
import { Reader } from './reader.ts';
import { Server } from './server.ts';
import { CurrentSettings } from './settings.ts';
import { SheetInFront } from './sheet-in-front.ts';
import { SheetTexts } from './sheet-texts.ts';

/** What the editor's own Markdown extension asks for. */
export interface Extension {
  extendMarkdownIt<M>(markdown: M): M;
}

export function activateWith(context: vscode.ExtensionContext, makeClient: ClientMaker): Extension {
  const began = Date.now();
  const log = vscode.window.createOutputChannel('Papervolt', { log: true });
  const settings = new CurrentSettings();
  const reader = new Reader(settings);
  const texts = new SheetTexts();
  const front = new SheetInFront(texts);
  const shared = { extensionUri: context.extensionUri, log, settings, reader, texts, front };
  const server = new Server(() => makeClient(shared), log);
  const house: House = { ...shared, server };
  const preview = startPreview(house);
  context.subscriptions.push(
    log,
    settings,
    reader,
    front,
    server,
    preview,
    ...features.map((start) => start(house)),
  );
  log.info(
    `${clientId} ${String(context.extension.packageJSON.version)} is ready, after ${Date.now() - began} ms.`,
  );
  return { extendMarkdownIt: (markdown) => preview.extendMarkdownIt(markdown) };
}
