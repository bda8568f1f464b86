/** What the server says it can do. */
import { CodeActionKind, type ServerCapabilities, TextDocumentSyncKind } from 'vscode-languageserver';
import { editing } from '../../shared/index.ts';
import type { ClientFeatures } from './client-features.ts';
import { tokenLegend } from './convert.ts';
import { fixAllKind, formatKind } from './requests.ts';

export function serverCapabilities({ pullsFindings, formatting }: ClientFeatures): ServerCapabilities {
  return {
    textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental },
    ...(pullsFindings
      ? {
          diagnosticProvider: {
            identifier: 'papervolt',
            interFileDependencies: false,
            workspaceDiagnostics: false,
          },
        }
      : {}),
    hoverProvider: true,
    inlayHintProvider: true,
    codeLensProvider: {},
    completionProvider: { triggerCharacters: [' ', '{', '.', ':', '`'] },
    documentSymbolProvider: true,
    definitionProvider: true,
    referencesProvider: true,
    documentHighlightProvider: true,
    renameProvider: { prepareProvider: true },
    ...(formatting ? { documentFormattingProvider: true } : {}),
    documentRangeFormattingProvider: true,
    codeActionProvider: { codeActionKinds: [CodeActionKind.QuickFix, fixAllKind, formatKind] },
    foldingRangeProvider: true,
    semanticTokensProvider: {
      legend: { tokenTypes: tokenLegend(editing.paintKinds), tokenModifiers: [] },
      full: true,
    },
  };
}
