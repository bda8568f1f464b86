/** What the server says it can do. */
import { CodeActionKind, type ServerCapabilities, TextDocumentSyncKind } from 'vscode-languageserver';
import { editing } from '../../shared/index.ts';
import type { ClientFeatures } from './client-features.ts';
import { actionKinds } from './code-actions.ts';
import { tokenLegend } from './convert.ts';

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
    signatureHelpProvider: { triggerCharacters: [' ', ','] },
    documentSymbolProvider: true,
    workspaceSymbolProvider: true,
    definitionProvider: true,
    referencesProvider: true,
    documentHighlightProvider: true,
    documentLinkProvider: {},
    renameProvider: { prepareProvider: true },
    // An editor may take a formatter of ranges for one of whole texts: both are offered, or neither.
    ...(formatting ? { documentFormattingProvider: true, documentRangeFormattingProvider: true } : {}),
    codeActionProvider: { codeActionKinds: [CodeActionKind.QuickFix, ...Object.values(actionKinds)] },
    foldingRangeProvider: true,
    selectionRangeProvider: true,
    semanticTokensProvider: {
      legend: { tokenTypes: tokenLegend(editing.paintKinds), tokenModifiers: [] },
      full: true,
      range: true,
    },
  };
}
