/** Tells the server what is set, while it runs. */
import type * as vscode from 'vscode';
import type { House } from './house.ts';
import type { Settings } from './settings.ts';

export function tellSettings({ log, server, settings }: House): vscode.Disposable {
  return settings.onDidChange(({ before, now }) => {
    if (server.state === 'off') return;
    // What a server can do is said once, at its start.
    const told =
      before.formatDocuments === now.formatDocuments
        ? server.notify('workspace/didChangeConfiguration', { settings: liveSettings(now) })
        : server.restart();
    told.catch((error: unknown) => log.error(`The settings were not taken over: ${String(error)}`));
  });
}

/** Settings that a running server takes over. */
export function liveSettings({ hints, lenses }: Settings): Readonly<Record<string, unknown>> {
  return { hints, lenses };
}
