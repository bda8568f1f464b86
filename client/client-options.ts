/** How the language client is set up, on every platform. */
import type { LanguageClientOptions } from 'vscode-languageclient';
import { RevealOutputChannelOn } from 'vscode-languageclient';
import type { House } from './house.ts';
import { commandIds } from './ids.ts';
import type { Settings } from './settings.ts';

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

/** Settings that a running server takes over. */
export function liveSettings({ hints, lenses }: Settings): Readonly<Record<string, unknown>> {
  return { hints, lenses };
}
