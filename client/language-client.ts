/** How the language client is set up, and its states in our words. Only what starts a server imports this: the client is large. */
import {
  type BaseLanguageClient,
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

function stateOf(state: State): ServerState {
  if (state === State.Running) return 'running';
  return state === State.Starting ? 'starting' : 'stopped';
}
