/** Starts the language server with the first sheet that is open; without one nothing runs. */
import * as vscode from 'vscode';
import type { House } from './house.ts';
import { contextIds } from './ids.ts';

export function waking({ log, server, texts }: House): vscode.Disposable {
  const listeners: vscode.Disposable[] = [];
  const sleep = (): void => vscode.Disposable.from(...listeners.splice(0)).dispose();
  const wakeFor = (document: vscode.TextDocument): boolean => {
    if (!texts.has(document)) return false;
    sleep();
    log.info(`A sheet is open: ${vscode.workspace.asRelativePath(document.uri)}`);
    void vscode.commands.executeCommand('setContext', contextIds.running, true);
    server
      .start()
      .catch((error: unknown) => log.error(`The language server does not start: ${String(error)}`));
    return true;
  };
  if (!vscode.workspace.textDocuments.some(wakeFor)) {
    log.info('No sheet is open: the language server waits.');
    listeners.push(
      vscode.workspace.onDidOpenTextDocument(wakeFor),
      vscode.workspace.onDidChangeTextDocument(({ document }) => wakeFor(document)),
    );
  }
  return new vscode.Disposable(sleep);
}
