/** Findings: asked for where the editor can ask, and sent otherwise; in both cases with those that only the solution shows. */
import {
  type Connection,
  type DocumentDiagnosticReport,
  LSPErrorCodes,
  ResponseError,
} from 'vscode-languageserver';
import type { TextDocument } from 'vscode-languageserver-textdocument';
import { diagnosticOf } from './convert.ts';
import type { House } from './house.ts';

export function findings(connection: Connection, house: House): void {
  const { documents, sheets, client } = house;
  const changed = new Set<string>();
  documents.onDidChangeContent(({ document: { uri } }) => {
    // Edits that have come together are read once.
    if (!changed.has(uri)) setTimeout(() => void settled(uri));
    changed.add(uri);
  });

  async function settled(uri: string): Promise<void> {
    changed.delete(uri);
    const document = documents.get(uri);
    if (document === undefined) return;
    try {
      if (client.pullsFindings) house.read(uri);
      else await publish(connection, house, document);
    } catch (error) {
      connection.console.error(error instanceof Error ? (error.stack ?? error.message) : String(error));
    }
  }

  documents.onDidClose(({ document: { uri } }) => {
    sheets.close(uri);
    house.lastGood.forget(uri);
    if (!client.pullsFindings) void connection.sendDiagnostics({ uri, diagnostics: [] });
  });
  connection.languages.diagnostics.on(({ textDocument }) => {
    const document = documents.get(textDocument.uri);
    return document === undefined ? nothing : pulled(house, document);
  });
}

const nothing: DocumentDiagnosticReport = { kind: 'full', items: [] };

async function pulled(
  { sheets, read, lastGood, explanations }: House,
  { uri }: TextDocument,
): Promise<DocumentDiagnosticReport> {
  const sheet = read(uri);
  if (sheet === null) return nothing;
  const examined = await sheets.examination(sheet);
  if (examined !== null) {
    lastGood.note(sheet, new Set(examined.solutions.keys()));
    const items = examined.findings.map((finding) => diagnosticOf(sheet, finding, explanations));
    return { kind: 'full', items };
  }
  const again = { retriggerRequest: true };
  throw new ResponseError(LSPErrorCodes.ServerCancelled, 'The text has changed.', again);
}

/** Sends nothing for a text that has changed meanwhile: its next version will. */
async function publish(
  connection: Connection,
  { sheets, read, lastGood, explanations }: House,
  document: TextDocument,
): Promise<void> {
  const { uri, version } = document;
  const sheet = read(uri);
  const examined = sheet === null ? null : await sheets.examination(sheet);
  if (sheet !== null && examined === null) return;
  if (sheet !== null && examined !== null) lastGood.note(sheet, new Set(examined.solutions.keys()));
  const diagnostics =
    sheet === null
      ? []
      : (examined?.findings ?? []).map((finding) => diagnosticOf(sheet, finding, explanations));
  await connection.sendDiagnostics({ uri, version, diagnostics });
}
