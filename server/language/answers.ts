/** Which request of the protocol is answered by what. */
import type { Connection, Position, Range, TextDocumentIdentifier } from 'vscode-languageserver';
import { editing, fenceCompletions, lineIndex } from '../../shared/index.ts';
import { completionItem } from './convert.ts';
import type { House } from './house.ts';
import { Requests } from './requests.ts';
import type { OpenSheet } from './sheets.ts';

export function answers(connection: Connection, house: House): void {
  const requests = new Requests(house);

  /** Null at once for a text that is no sheet, and where there is nothing to tell. */
  const on =
    <P extends { textDocument: TextDocumentIdentifier }, R>(reply: (sheet: OpenSheet, params: P) => R) =>
    (params: P): R | null => {
      const sheet = house.read(params.textDocument.uri);
      const answer = sheet === null ? null : reply(sheet, params);
      return Array.isArray(answer) && answer.length === 0 ? null : answer;
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
  connection.onSelectionRanges(on((sheet, { positions }) => requests.selections(sheet, positions)));
  connection.onDocumentLinks(on((sheet) => requests.links(sheet)));
  connection.onSignatureHelp(on((sheet, { position }) => requests.signature(sheet, position)));
  const painted = on((sheet, { range }: { textDocument: TextDocumentIdentifier; range: Range | null }) =>
    requests.semanticTokens(sheet, range),
  );
  const { semanticTokens } = connection.languages;
  semanticTokens.on(({ textDocument }) => painted({ textDocument, range: null }) ?? { data: [] });
  semanticTokens.onRange(({ textDocument, range }) => painted({ textDocument, range }) ?? { data: [] });
  connection.onRequest(
    editing.messages.drawing,
    on((sheet, { position }: editing.TextPlace) => requests.drawing(sheet, position)),
  );
  connection.onCompletion((params) => {
    const inSheet = on((sheet) => requests.completion(sheet, params.position))(params);
    return inSheet ?? firstBlock(house, params);
  });
}

/** In a text that is no sheet yet, a block is offered behind three backticks. */
function firstBlock(
  { documents, client }: House,
  place: { textDocument: TextDocumentIdentifier; position: Position },
) {
  const document = documents.get(place.textDocument.uri);
  if (document === undefined) return null;
  const text = document.getText();
  const offers = fenceCompletions({ name: '', text }, document.offsetAt(place.position));
  if (offers.length === 0) return null;
  const lines = lineIndex(text);
  return offers.map((offer, i) => completionItem(lines, offer, i, client.snippets));
}
