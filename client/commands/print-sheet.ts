/** `Print sheet…`: one self-contained HTML file for each reader, in a folder on whatever file system the workspace has. */
import * as vscode from 'vscode';
import { type editing, messages } from '../../shared/index.ts';
import type { House } from '../house.ts';
import { printName } from './print-names.ts';

export async function printSheet(house: House): Promise<void> {
  const document = house.front.editor?.document;
  if (document === undefined) {
    void vscode.window.showInformationMessage(vscode.l10n.t('Open a sheet to print it.'));
    return;
  }
  const ask: editing.PrintAsk = { textDocument: { uri: document.uri.toString() } };
  const progress = { location: vscode.ProgressLocation.Window, title: vscode.l10n.t('Printing the sheet…') };
  const answer = await vscode.window.withProgress(progress, () =>
    house.server.request<editing.PrintAnswer | null>(messages.print, ask),
  );
  const withheld = answer?.withheld ?? [];
  if (answer === null || answer.prints.length === 0) {
    const said = [vscode.l10n.t('Nothing was printed.'), ...withheld].join(' ');
    void vscode.window.showWarningMessage(said);
    return;
  }
  const folder = await chosenFolder(document);
  if (folder === undefined) return;
  const files = answer.prints.map(({ suffix, html }) => ({
    uri: vscode.Uri.joinPath(folder, printName(document.uri.path, suffix)),
    html,
  }));
  for (const { uri, html } of files) await written(uri, html);
  house.log.info(`Printed ${files.map(({ uri }) => uri.toString()).join(', ')}`);
  await offerToOpen(
    files.map(({ uri }) => uri),
    withheld,
  );
}

/** Undefined where the question is dismissed. */
async function chosenFolder(document: vscode.TextDocument): Promise<vscode.Uri | undefined> {
  const beside = document.isUntitled ? undefined : vscode.Uri.joinPath(document.uri, '..');
  const writable = beside !== undefined && vscode.workspace.fs.isWritableFileSystem(beside.scheme) !== false;
  const here = { label: vscode.l10n.t('Beside the sheet'), folder: beside };
  const elsewhere = { label: vscode.l10n.t('In another folder…'), folder: undefined };
  const items = writable ? [here, elsewhere] : [elsewhere];
  const placeHolder = vscode.l10n.t('Where shall the prints be written?');
  const chosen = items.length === 1 ? items[0] : await vscode.window.showQuickPick(items, { placeHolder });
  if (chosen === undefined || chosen.folder !== undefined) return chosen?.folder;
  const start = beside ?? vscode.workspace.workspaceFolders?.[0]?.uri;
  const picked = await vscode.window.showOpenDialog({
    canSelectFiles: false,
    canSelectFolders: true,
    openLabel: vscode.l10n.t('Print here'),
    ...(start === undefined ? {} : { defaultUri: start }),
  });
  return picked?.[0];
}

/** Says which file could not be written, and why. */
async function written(uri: vscode.Uri, html: string): Promise<void> {
  try {
    await writeWhole(uri, html);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    throw new Error(vscode.l10n.t('{0} was not written. {1}', nameOf(uri), why), { cause: error });
  }
}

/** The file is either the old one or the new one, never half of it. */
async function writeWhole(uri: vscode.Uri, text: string): Promise<void> {
  const { fs } = vscode.workspace;
  await keepFolder(uri);
  const unfinished = uri.with({ path: `${uri.path}.unfinished` });
  try {
    await fs.writeFile(unfinished, new TextEncoder().encode(text));
    await fs.rename(unfinished, uri, { overwrite: true });
  } catch (error) {
    // There may be none; what is told is why there is no print.
    await fs.delete(unfinished).then(undefined, () => undefined);
    throw error;
  }
}

/** A folder of that name would be replaced with all that is in it. */
async function keepFolder(uri: vscode.Uri): Promise<void> {
  const there = await vscode.workspace.fs.stat(uri).then(undefined, () => null);
  if (there !== null && (there.type & vscode.FileType.Directory) !== 0)
    throw new Error(vscode.l10n.t('There is a folder of that name.'));
}

const nameOf = ({ path }: vscode.Uri): string => path.slice(path.lastIndexOf('/') + 1);

async function offerToOpen(uris: readonly vscode.Uri[], withheld: readonly string[]): Promise<void> {
  const names = uris.map(nameOf);
  const said = [vscode.l10n.t('Printed: {0}.', names.join(', ')), ...withheld].join(' ');
  const open = vscode.l10n.t('Open');
  const show =
    withheld.length === 0 ? vscode.window.showInformationMessage : vscode.window.showWarningMessage;
  if ((await show(said, open)) !== open) return;
  const chosen =
    names.length === 1
      ? names[0]
      : await vscode.window.showQuickPick(names, { placeHolder: vscode.l10n.t('Which print?') });
  const uri = uris.find((_, i) => names[i] === chosen);
  if (uri !== undefined) await openPrint(uri);
}

/** A browser can open what lies on the machine of the person; elsewhere the editor shows the text of the file. */
async function openPrint(uri: vscode.Uri): Promise<void> {
  const here = vscode.env.uiKind === vscode.UIKind.Desktop && vscode.env.remoteName === undefined;
  if (here && uri.scheme === 'file') await vscode.env.openExternal(uri);
  else await vscode.commands.executeCommand('vscode.open', uri);
}
