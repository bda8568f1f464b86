/** `Explain a finding` and `Open the guide`: pages of docs/ in the editor's own Markdown preview. */
import * as vscode from 'vscode';
import type { House } from '../house.ts';
import { clientId } from '../ids.ts';

export async function openGuide({ extensionUri, front }: House): Promise<void> {
  await showPage(vscode.Uri.joinPath(extensionUri, 'docs', 'language.md'), front.editor);
}

/** Without a code, the one that is chosen among those of the text in front. */
export async function explain({ extensionUri, front }: House, code: unknown): Promise<void> {
  const asked = typeof code === 'string' ? code : await chosenCode(front.editor);
  if (asked === undefined) return;
  const page = vscode.Uri.joinPath(extensionUri, 'docs', 'findings.md');
  await showPage(page.with({ fragment: asked }), front.editor);
}

/** Beside the sheet, if there is one, and not following it. */
async function showPage(page: vscode.Uri, sheet: vscode.TextEditor | null): Promise<void> {
  // A panel or preview in front would push the page into a third column.
  if (sheet !== null) await vscode.window.showTextDocument(sheet.document, sheet.viewColumn);
  const command = sheet === null ? 'markdown.showPreview' : 'markdown.showLockedPreviewToSide';
  await vscode.commands.executeCommand(command, page);
}

async function chosenCode(editor: vscode.TextEditor | null): Promise<string | undefined> {
  const findings = editor === null ? [] : vscode.languages.getDiagnostics(editor.document.uri);
  const ours = findings.filter(({ source }) => source === clientId);
  const line = editor?.selection.active.line ?? 0;
  const distance = ({ range }: vscode.Diagnostic): number => Math.abs(range.start.line - line);
  const items = ours
    .sort((a, b) => distance(a) - distance(b))
    .map(({ message, code, range }) => ({
      label: codeText(code),
      description: vscode.l10n.t('line {0}', range.start.line + 1),
      detail: message,
    }));
  if (items.length === 0) {
    void vscode.window.showInformationMessage(vscode.l10n.t('Nothing was found in this text.'));
    return undefined;
  }
  const placeHolder = vscode.l10n.t('Which finding?');
  return (await vscode.window.showQuickPick(items, { placeHolder }))?.label;
}

const codeText = (code: vscode.Diagnostic['code']): string =>
  String(typeof code === 'object' ? code.value : (code ?? ''));
