/** The commands, by id. One that fails says so once, and the log tells why. */
import * as vscode from 'vscode';
import type { House } from '../house.ts';
import { commandIds } from '../ids.ts';
import { copyDrawing, Descriptions, describeDrawing } from './describe-drawing.ts';
import { explain, openGuide } from './explain.ts';
import { fixAll, formatBlocks } from './mend.ts';
import { newSheet } from './new-sheet.ts';
import { printSheet } from './print-sheet.ts';
import { showAs } from './show-as.ts';

type Command = (argument: unknown) => unknown;

export function commands(house: House): vscode.Disposable {
  const { log, server } = house;
  const descriptions = new Descriptions();
  // `Show drawing` belongs to the panel.
  const table: Readonly<Record<Exclude<keyof typeof commandIds, 'showDrawing'>, Command>> = {
    newSheet,
    printSheet: () => printSheet(house),
    describeDrawing: () => describeDrawing(house, descriptions),
    copyDrawing: () => copyDrawing(house),
    showForPupils: () => showAs(house, 'pupils'),
    showForTeachers: () => showAs(house, 'teachers'),
    showForTechnicians: () => showAs(house, 'technicians'),
    fixAll: () => fixAll(house),
    formatBlocks: () => formatBlocks(house),
    restart: () => server.restart(),
    showLog: () => log.show(true),
    explain: (code) => explain(house, code),
    openGuide: () => openGuide(house),
  };
  const registered = Object.entries(table).map(([name, command]) => {
    const id = commandIds[name as keyof typeof table];
    return vscode.commands.registerCommand(id, (argument: unknown) =>
      guarded(log, id, () => command(argument)),
    );
  });
  return vscode.Disposable.from(descriptions, ...registered);
}

async function guarded(log: vscode.LogOutputChannel, id: string, run: () => unknown): Promise<void> {
  try {
    await run();
  } catch (error) {
    log.error(`${id}: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`);
    const show = vscode.l10n.t('Show log');
    const said = vscode.l10n.t(
      'Papervolt could not do this: {0}',
      error instanceof Error ? error.message : String(error),
    );
    if ((await vscode.window.showErrorMessage(said, show)) === show) log.show(true);
  }
}
