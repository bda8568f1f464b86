/** Findings: asked for where the editor can ask, and sent otherwise; in both cases with those that only the solution shows. */
import {
  type Connection,
  type DocumentDiagnosticReport,
  LSPErrorCodes,
  ResponseError,
  type TextDocuments,
} from 'vscode-languageserver/node';
import type { TextDocument } from 'vscode-languageserver-textdocument';
import type { ClientFeatures } from './client-features.ts';
import { diagnosticOf } from './convert.ts';
import type { OpenSheet, Sheets } from './sheets.ts';

interface Desk {
  readonly documents: TextDocuments<TextDocument>;
  readonly sheets: Sheets;
  readonly read: (document: TextDocument) => OpenSheet | null;
  readonly client: ClientFeatures;
}

export function findings(connection: Connection, desk: Desk): void {
  const { documents, sheets, client } = desk;
  const changed = new Set<string>();
  documents.onDidChangeContent(({ document: { uri } }) => {
    // Edits that have come together are read once.
    if (!changed.has(uri)) setImmediate(() => void settled(uri));
    changed.add(uri);
  });

  async function settled(uri: string): Promise<void> {
    changed.delete(uri);
    const document = documents.get(uri);
    if (document === undefined) return;
    try {
      if (client.pullsFindings) desk.read(document);
      else await publish(connection, desk, document);
    } catch (error) {
      connection.console.error(error instanceof Error ? (error.stack ?? error.message) : String(error));
    }
  }

  documents.onDidClose(({ document: { uri } }) => {
    sheets.close(uri);
    if (!client.pullsFindings) void connection.sendDiagnostics({ uri, diagnostics: [] });
  });
  connection.languages.diagnostics.on(({ textDocument }) => {
    const document = documents.get(textDocument.uri);
    return document === undefined ? nothing : pulled(desk, document);
  });
}

const nothing: DocumentDiagnosticReport = { kind: 'full', items: [] };

async function pulled({ sheets, read }: Desk, document: TextDocument): Promise<DocumentDiagnosticReport> {
  const sheet = read(document);
  if (sheet === null) return nothing;
  const examined = await sheets.examination(sheet);
  if (examined !== null) {
    return { kind: 'full', items: examined.findings.map((finding) => diagnosticOf(sheet, finding)) };
  }
  const again = { retriggerRequest: true };
  throw new ResponseError(LSPErrorCodes.ServerCancelled, 'The text has changed.', again);
}

/** Sends nothing for a text that has changed meanwhile: its next version will. */
async function publish(
  connection: Connection,
  { sheets, read }: Desk,
  document: TextDocument,
): Promise<void> {
  const { uri, version } = document;
  const sheet = read(document);
  const examined = sheet === null ? null : await sheets.examination(sheet);
  if (sheet !== null && examined === null) return;
  const diagnostics =
    sheet === null ? [] : (examined?.findings ?? []).map((finding) => diagnosticOf(sheet, finding));
  await connection.sendDiagnostics({ uri, version, diagnostics });
}
