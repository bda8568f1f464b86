/** `Apply all certain fixes` and `Format blocks`: actions of the server for the whole text, or for what is selected. */
import * as vscode from 'vscode';
import type { House } from '../house.ts';
import { actionKinds } from '../ids.ts';

export const fixAll = (house: House): Promise<void> =>
  apply(house, actionKinds.fixAll, vscode.l10n.t('There is nothing that can be fixed with certainty.'));

export const formatBlocks = (house: House): Promise<void> =>
  apply(house, actionKinds.format, vscode.l10n.t('The blocks are in order.'));

async function apply({ front }: House, kind: string, nothing: string): Promise<void> {
  const { editor } = front;
  if (editor === null) {
    void vscode.window.setStatusBarMessage(vscode.l10n.t('There is no block in this text.'), 5000);
    return;
  }
  const { document, selection } = editor;
  const whole = new vscode.Range(0, 0, document.lineCount, 0);
  const actions = await vscode.commands.executeCommand<readonly vscode.CodeAction[]>(
    'vscode.executeCodeActionProvider',
    document.uri,
    selection.isEmpty ? whole : selection,
    kind,
  );
  const edit = actions.find((action) => action.kind?.value === kind)?.edit;
  if (edit === undefined) void vscode.window.setStatusBarMessage(nothing, 5000);
  else await vscode.workspace.applyEdit(edit);
}
