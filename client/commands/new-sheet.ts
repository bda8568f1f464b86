/** `New practical sheet`: a starting point, in a text that is not saved yet. */
import * as vscode from 'vscode';
import { newSheets } from '../../shared/index.ts';

export async function newSheet(): Promise<void> {
  const items = newSheets.map((sheet) => ({ label: sheet.label, detail: sheet.detail, sheet }));
  const placeHolder = vscode.l10n.t('What lies on the paper?');
  const chosen = await vscode.window.showQuickPick(items, { placeHolder, matchOnDetail: true });
  if (chosen === undefined) return;
  const document = await vscode.workspace.openTextDocument({
    language: 'markdown',
    content: chosen.sheet.text,
  });
  await vscode.window.showTextDocument(document);
}
