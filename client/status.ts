/** One item beside the language: findings of the sheet in front, whether it is being solved, and for whom the preview is. */
import * as vscode from 'vscode';
import { type Audience, type editing, messages } from '../shared/index.ts';
import type { House } from './house.ts';
import { clientId, commandIds, statusId } from './ids.ts';
import { type Counts, countsText } from './status-text.ts';

const chooseId = 'papervolt.status.choose';

export function status(house: House): vscode.Disposable {
  const { front, reader, server, texts } = house;
  const item = vscode.languages.createLanguageStatusItem(statusId, texts.selector);
  item.name = 'Papervolt';
  item.command = { command: chooseId, title: vscode.l10n.t('More…') };
  let solving = false;
  const show = (): void => {
    item.busy = solving || server.state === 'starting';
    item.severity =
      server.state === 'stopped'
        ? vscode.LanguageStatusSeverity.Error
        : vscode.LanguageStatusSeverity.Information;
    item.text = server.state === 'stopped' ? vscode.l10n.t('Papervolt has stopped') : `Papervolt: ${found()}`;
    item.detail = readerText(reader.now);
  };
  show();
  return vscode.Disposable.from(
    item,
    vscode.commands.registerCommand(chooseId, () => choose(server.state !== 'stopped')),
    vscode.window.onDidChangeActiveTextEditor(show),
    vscode.languages.onDidChangeDiagnostics(({ uris }) => {
      const shown = front.editor?.document.uri.toString();
      if (uris.some((uri) => uri.toString() === shown)) show();
    }),
    reader.onDidChange(show),
    server.onDidChangeState(() => {
      solving = false;
      show();
    }),
    server.onNotification<editing.ServerState>(messages.state, ({ state }) => {
      solving = state === 'solving';
      show();
    }),
  );

  function found(): string {
    const { editor } = front;
    if (editor === null) return vscode.l10n.t('no block in this text');
    return countsText(countsOf(editor.document.uri), { t: vscode.l10n.t });
  }
}

function countsOf(uri: vscode.Uri): Counts {
  const ours = vscode.languages.getDiagnostics(uri).filter(({ source }) => source === clientId);
  const of = (...severities: vscode.DiagnosticSeverity[]): number =>
    ours.filter(({ severity }) => severities.includes(severity)).length;
  return {
    errors: of(vscode.DiagnosticSeverity.Error),
    warnings: of(vscode.DiagnosticSeverity.Warning),
    notes: of(vscode.DiagnosticSeverity.Information, vscode.DiagnosticSeverity.Hint),
  };
}

function readerText(reader: Audience): string {
  const texts: Readonly<Record<Audience, string>> = {
    pupils: vscode.l10n.t('preview as pupils see it'),
    teachers: vscode.l10n.t('preview as teachers see it'),
    technicians: vscode.l10n.t('preview as technicians see it'),
  };
  return texts[reader];
}

async function choose(runs: boolean): Promise<void> {
  const items = [
    { label: vscode.l10n.t('Show drawing'), command: commandIds.showDrawing },
    { label: vscode.l10n.t('Show as pupils see it'), command: commandIds.showForPupils },
    { label: vscode.l10n.t('Show as teachers see it'), command: commandIds.showForTeachers },
    { label: vscode.l10n.t('Show as technicians see it'), command: commandIds.showForTechnicians },
    { label: vscode.l10n.t('Print sheet…'), command: commandIds.printSheet },
    { label: vscode.l10n.t('Explain a finding'), command: commandIds.explain },
    { label: vscode.l10n.t('Restart language server'), command: commandIds.restart },
    { label: vscode.l10n.t('Show log'), command: commandIds.showLog },
  ];
  const offered = runs ? items : items.slice(-2);
  const chosen = await vscode.window.showQuickPick(offered, { placeHolder: 'Papervolt' });
  if (chosen !== undefined) await vscode.commands.executeCommand(chosen.command);
}
