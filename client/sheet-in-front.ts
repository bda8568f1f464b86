/** Whether the editor in front shows a sheet: for menus and for the status item. */
import * as vscode from 'vscode';
import type { House } from './house.ts';
import { contextIds } from './ids.ts';

export function sheetInFront({ texts }: House): vscode.Disposable {
  let told: boolean | null = null;
  const look = (): void => {
    const document = vscode.window.activeTextEditor?.document;
    const isSheet = document !== undefined && texts.has(document);
    if (isSheet === told) return;
    told = isSheet;
    void vscode.commands.executeCommand('setContext', contextIds.inSheet, isSheet);
  };
  look();
  return vscode.Disposable.from(
    vscode.window.onDidChangeActiveTextEditor(look),
    vscode.workspace.onDidChangeTextDocument(({ document }) => {
      if (document === vscode.window.activeTextEditor?.document) look();
    }),
  );
}
