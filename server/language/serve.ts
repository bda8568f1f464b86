/** The language server: an editor's connection, the house behind it and the rooms that answer. */
import { type Connection, TextDocuments } from 'vscode-languageserver';
import type { TextDocument } from 'vscode-languageserver-textdocument';
import manifest from '../../package.json' with { type: 'json' };
import { answers } from './answers.ts';
import { serverCapabilities } from './capabilities.ts';
import { type ClientFeatures, clientFeatures } from './client-features.ts';
import { findings } from './findings.ts';
import type { House, Room } from './house.ts';
import { LastEdits } from './last-edits.ts';
import type { Listener, Thread } from './orders.ts';
import { Sheets } from './sheets.ts';
import { Solutions } from './solutions.ts';
import { Solver } from './solver.ts';

const rooms: readonly Room[] = [findings, answers, news];

export function serve(connection: Connection, start: (listener: Listener) => Thread): void {
  const edits = new LastEdits();
  const documents = new TextDocuments<TextDocument>(edits.documents);
  const solver = new Solver(start);
  const solutions = new Solutions(solver);
  const sheets = new Sheets(solutions);
  const house = (client: ClientFeatures): House => ({
    documents,
    sheets,
    solutions,
    solver,
    client,
    read(uri) {
      const document = documents.get(uri);
      return document === undefined ? null : sheets.read(document, edits.offset(document));
    },
  });
  connection.onInitialize((params) => {
    const client = clientFeatures(params);
    for (const room of rooms) room(connection, house(client));
    return {
      capabilities: serverCapabilities(client),
      serverInfo: { name: 'papervolt', version: manifest.version },
    };
  });
  documents.onDidClose(({ document }) => edits.forget(document.uri));
  documents.listen(connection);
  connection.listen();
}
