/** Where it is set: a small drawing behind the first line of each block that can be seen. */
import * as vscode from 'vscode';
import type { DocumentSymbol } from 'vscode-languageclient';
import { type editing, messages } from '../shared/index.ts';
import type { House } from './house.ts';
import { thumbnail } from './thumbnail.ts';

/** After the last change, ms. */
const pause_ms = 400;

export function thumbnails(house: House): vscode.Disposable {
  const { log, server, settings, texts } = house;
  const decoration = vscode.window.createTextEditorDecorationType({});
  let timer: ReturnType<typeof setTimeout> | undefined;
  const later = (): void => {
    clearTimeout(timer);
    timer = setTimeout(() => void show(), pause_ms);
  };
  const show = async (): Promise<void> => {
    for (const editor of vscode.window.visibleTextEditors) {
      const wanted = settings.now.thumbnails && server.state === 'running' && texts.has(editor.document);
      try {
        const shown = wanted ? await decorationsOf(house, editor) : [];
        if (shown !== null) editor.setDecorations(decoration, shown);
      } catch (error) {
        log.debug(`No small drawings: ${String(error)}`);
      }
    }
  };
  const whenSet = (): void => {
    if (settings.now.thumbnails) later();
  };
  return vscode.Disposable.from(
    decoration,
    new vscode.Disposable(() => clearTimeout(timer)),
    settings.onDidChange(({ before, now }) => {
      if (before.thumbnails !== now.thumbnails) later();
    }),
    server.onDidChangeState(whenSet),
    server.onNotification<editing.PanelStale>(messages.solved, whenSet),
    vscode.window.onDidChangeVisibleTextEditors(whenSet),
    vscode.window.onDidChangeTextEditorVisibleRanges(whenSet),
    vscode.workspace.onDidChangeTextDocument(whenSet),
  );
}

/** Null where the text has changed meanwhile. */
async function decorationsOf(
  { server }: House,
  { document, visibleRanges }: vscode.TextEditor,
): Promise<vscode.DecorationOptions[] | null> {
  const { version } = document;
  const textDocument = { uri: document.uri.toString() };
  const setups = await server.request<DocumentSymbol[] | null>('textDocument/documentSymbol', {
    textDocument,
  });
  const lines = (setups ?? []).map(({ range }) => range.start.line);
  const seen = lines.filter((line) =>
    visibleRanges.some(({ start, end }) => start.line <= line && line <= end.line),
  );
  const made = await Promise.all(
    seen.map(async (line) => {
      const position = { line, character: 0 };
      const ask = { textDocument, position };
      const drawing = await server.request<editing.EditorDrawing | null>(messages.drawing, ask);
      const icon = drawing === null ? null : thumbnail(drawing.svg);
      return icon === null ? [] : [decorationAt(document, line, icon)];
    }),
  );
  return document.version === version ? made.flat() : null;
}

function decorationAt(document: vscode.TextDocument, line: number, icon: string): vscode.DecorationOptions {
  const contentIconPath = vscode.Uri.parse(icon, true);
  const end = document.validatePosition(new vscode.Position(line, Number.MAX_SAFE_INTEGER));
  return {
    range: new vscode.Range(end, end),
    renderOptions: { after: { contentIconPath, margin: '0 0 0 2ch' } },
  };
}
