/** `Show as … see it`: switches the reader of every preview, and opens one where none can be seen. */
import * as vscode from 'vscode';
import type { Audience } from '../../shared/index.ts';
import type { House } from '../house.ts';

export async function showAs({ front, reader }: House, audience: Audience): Promise<void> {
  reader.set(audience);
  const sheet = front.editor;
  if (sheet === null || previewIsSeen()) return;
  await vscode.window.showTextDocument(sheet.document, sheet.viewColumn);
  await vscode.commands.executeCommand('markdown.showPreviewToSide', sheet.document.uri);
}

/** The editor puts something of its own before the name that the Markdown preview has given itself. */
function previewIsSeen(): boolean {
  const seen = vscode.window.tabGroups.all.map(({ activeTab }) => activeTab?.input);
  return seen.some(
    (input) => input instanceof vscode.TabInputWebview && input.viewType.endsWith('markdown.preview'),
  );
}
