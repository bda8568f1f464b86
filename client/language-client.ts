/** How the language client is set up, and its states in our words. Only what starts a server imports this: the client is large. */
import * as vscode from 'vscode';
import {
  type BaseLanguageClient,
  CloseAction,
  ErrorAction,
  type ErrorHandler,
  type LanguageClientOptions,
  RevealOutputChannelOn,
  State,
} from 'vscode-languageclient';
import type { House } from './house.ts';
import { commandIds } from './ids.ts';
import { liveSettings } from './live-settings.ts';
import type { RunningClient, ServerState } from './server.ts';

export function running(client: BaseLanguageClient): RunningClient {
  return {
    client,
    onDidChangeState: (listen) => client.onDidChangeState(({ newState }) => listen(stateOf(newState))),
  };
}

export function clientOptions({ log, settings, texts }: Omit<House, 'server'>): LanguageClientOptions {
  return {
    documentSelector: texts.selector,
    outputChannel: log,
    traceOutputChannel: log,
    revealOutputChannelOn: RevealOutputChannelOn.Never,
    errorHandler: new Restarts(),
    diagnosticCollectionName: 'papervolt',
    initializationOptions: () => ({
      drawings: true,
      commands: true,
      files: true,
      // Told by the setting alone: two formatters for one language make the editor ask which one to take.
      formatting: settings.now.formatDocuments,
      explanations: `command:${commandIds.explain}?%5B%22{code}%22%5D`,
      ...liveSettings(settings.now),
    }),
  };
}

/** So many times, within ms, is a server that ends started anew, and nobody is told. */
const mostRestarts = 4;
const restartsWithin_ms = 3 * 60 * 1000;

class Restarts implements ErrorHandler {
  private ends: readonly number[] = [];

  error(_error: Error, _message: unknown, count: number | undefined): { readonly action: ErrorAction } {
    return { action: count !== undefined && count <= 3 ? ErrorAction.Continue : ErrorAction.Shutdown };
  }

  /** One that keeps ending is given up, which is said once. */
  closed(): { readonly action: CloseAction; readonly handled?: boolean; readonly message: string } {
    const now = Date.now();
    this.ends = [...this.ends, now].filter((end) => now - end < restartsWithin_ms);
    if (this.ends.length <= mostRestarts)
      return {
        action: CloseAction.Restart,
        handled: true,
        message: 'The language server has stopped and is started anew.',
      };
    const message = vscode.l10n.t(
      'The language server of Papervolt keeps stopping and is not started again.',
    );
    return { action: CloseAction.DoNotRestart, message };
  }
}

function stateOf(state: State): ServerState {
  if (state === State.Running) return 'running';
  return state === State.Starting ? 'starting' : 'stopped';
}
