/** The language server: wires an editor's connection to the open sheets and the requests. */
import {
  type Connection,
  type Position,
  type TextDocumentIdentifier,
  TextDocuments,
} from 'vscode-languageserver/node';
import { TextDocument, type Range as TextRange } from 'vscode-languageserver-textdocument';
import manifest from '../../package.json' with { type: 'json' };
import { editing, lineIndex } from '../../shared/index.ts';
import { serverCapabilities } from './capabilities.ts';
import { type ClientFeatures, clientFeatures } from './client-features.ts';
import { completionItem } from './convert.ts';
import { findings } from './findings.ts';
import { offsetOf } from './places.ts';
import { Requests } from './requests.ts';
import { type OpenSheet, Sheets } from './sheets.ts';
import { Solutions } from './solutions.ts';
import { Solver } from './solver.ts';
import type { Listener, Thread } from './thread.ts';

export function serve(connection: Connection, start: (listener: Listener) => Thread): void {
  const edits = new LastEdits();
  const documents = new TextDocuments(edits.documents);
  const sheets = new Sheets(new Solutions(new Solver(start)));
  connection.onInitialize((params) => {
    const client = clientFeatures(params);
    answer(connection, { documents, sheets, edits, client });
    return {
      capabilities: serverCapabilities(client),
      serverInfo: { name: 'papervolt', version: manifest.version },
    };
  });
  documents.listen(connection);
  connection.listen();
}

interface House {
  readonly documents: TextDocuments<TextDocument>;
  readonly sheets: Sheets;
  readonly edits: LastEdits;
  readonly client: ClientFeatures;
}

/** Where each text was last edited. */
class LastEdits {
  private readonly starts = new Map<string, TextRange['start']>();

  readonly documents = {
    create: TextDocument.create,
    update: (
      document: TextDocument,
      changes: Parameters<typeof TextDocument.update>[1],
      version: number,
    ): TextDocument => {
      const last = changes.at(-1);
      if (last !== undefined && 'range' in last) this.starts.set(document.uri, last.range.start);
      return TextDocument.update(document, changes, version);
    },
  };

  offset(document: TextDocument): number {
    const start = this.starts.get(document.uri);
    return start === undefined ? 0 : document.offsetAt(start);
  }

  forget(uri: string): void {
    this.starts.delete(uri);
  }
}

function answer(connection: Connection, house: House): void {
  const { documents, sheets, edits, client } = house;
  const requests = new Requests(sheets, client);
  const read = (document: TextDocument): OpenSheet | null => sheets.read(document, edits.offset(document));
  findings(connection, { documents, sheets, read, client });
  documents.onDidClose(({ document }) => edits.forget(document.uri));

  /** Null at once for a text that is no sheet. */
  const on =
    <P extends { textDocument: TextDocumentIdentifier }, R>(reply: (sheet: OpenSheet, params: P) => R) =>
    (params: P): R | null => {
      const document = documents.get(params.textDocument.uri);
      const sheet = document === undefined ? null : read(document);
      return sheet === null ? null : reply(sheet, params);
    };

  connection.onHover(on((sheet, { position }) => requests.hover(sheet, position)));
  connection.languages.inlayHint.on(on((sheet, { range }) => requests.inlayHints(sheet, range)));
  connection.onCodeLens(on((sheet) => requests.codeLenses(sheet)));
  connection.onDocumentSymbol(on((sheet) => requests.symbols(sheet)));
  connection.onDefinition(on((sheet, { position }) => requests.definition(sheet, position)));
  connection.onReferences(
    on((sheet, { position, context }) => requests.references(sheet, position, context.includeDeclaration)),
  );
  connection.onDocumentHighlight(on((sheet, { position }) => requests.highlights(sheet, position)));
  connection.onPrepareRename(on((sheet, { position }) => requests.renamed(sheet, position)));
  connection.onRenameRequest(on((sheet, { position, newName }) => requests.rename(sheet, position, newName)));
  connection.onDocumentFormatting(on((sheet) => requests.formatting(sheet, null)));
  connection.onDocumentRangeFormatting(on((sheet, { range }) => requests.formatting(sheet, range)));
  connection.onCodeAction(on((sheet, params) => requests.codeActions(sheet, params)));
  connection.onFoldingRanges(on((sheet) => requests.folds(sheet)));
  connection.languages.semanticTokens.on(
    (params) => on((sheet) => requests.semanticTokens(sheet))(params) ?? { data: [] },
  );
  connection.onRequest(
    'papervolt/drawing',
    on((sheet, { position }: { textDocument: TextDocumentIdentifier; position: Position }) =>
      requests.drawing(sheet, position),
    ),
  );
  connection.onCompletion((params) => {
    const inSheet = on((sheet) => requests.completion(sheet, params.position))(params);
    const document = documents.get(params.textDocument.uri);
    if (inSheet !== null || document === undefined) return inSheet;
    return firstBlock(document, params.position, client);
  });
}

/** In a text that is no sheet yet, a block is offered behind three backticks. */
function firstBlock(document: TextDocument, position: Position, client: ClientFeatures) {
  const text = document.getText();
  const lines = lineIndex(text);
  const offers = editing.fenceCompletions({ name: '', text }, offsetOf(lines, position));
  return offers.length === 0
    ? null
    : offers.map((offer, i) => completionItem(lines, offer, i, client.snippets));
}
