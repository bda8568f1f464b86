/** The drawing panel and the command that opens it. */
import * as vscode from 'vscode';
import { type editing, messages } from '../shared/index.ts';
import type { House } from './house.ts';
import { commandIds } from './ids.ts';
import { createPanel } from './panel/panel.ts';

export function drawingPanel({ extensionUri, front, log, server }: House): vscode.Disposable {
  const solved = new vscode.EventEmitter<string>();
  const panel = createPanel({
    extensionUri,
    log,
    request: (method, params, token) => server.request(method, params, token),
    onSolved: solved.event,
  });
  return vscode.Disposable.from(
    panel,
    solved,
    server.onNotification<editing.PanelStale>(messages.solved, ({ uri }) => solved.fire(uri)),
    vscode.commands.registerCommand(commandIds.showDrawing, (...given: readonly unknown[]) => {
      const target = targetOf(given, front.editor ?? vscode.window.activeTextEditor);
      if (target !== null) panel.show(target.uri, target.place);
      else void vscode.window.showInformationMessage(vscode.l10n.t('Open a sheet to see its drawing.'));
    }),
  );
}

/** A code lens names its block; the palette means the cursor. */
function targetOf(
  [uri, place]: readonly unknown[],
  editor: vscode.TextEditor | undefined,
): { uri: vscode.Uri; place: editing.Place } | null {
  if (typeof uri === 'string' && isPlace(place)) return { uri: vscode.Uri.parse(uri), place };
  if (editor === undefined) return null;
  const { line, character } = editor.selection.active;
  return { uri: editor.document.uri, place: { line, character } };
}

function isPlace(value: unknown): value is editing.Place {
  if (typeof value !== 'object' || value === null) return false;
  return (
    typeof Reflect.get(value, 'line') === 'number' && typeof Reflect.get(value, 'character') === 'number'
  );
}
