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
import { LastGood } from './last-good.ts';
import { news } from './news.ts';
import type { Listener, Thread } from './orders.ts';
import { panel } from './panel.ts';
import { preview } from './preview.ts';
import { printing } from './printing.ts';
import { Settings, settings } from './settings.ts';
import { Sheets } from './sheets.ts';
import { Solutions } from './solutions.ts';
import { Solver } from './solver.ts';
import { filesOfEditor, noFiles, type WorkspaceFiles } from './workspace-files.ts';
import { workspaceSymbols } from './workspace-symbols.ts';

/** In no order. */
const rooms: readonly Room[] = [
  findings,
  answers,
  workspaceSymbols,
  settings,
  news,
  preview,
  panel,
  printing,
];

/** What the program round the server knows of its machine. */
export interface Surroundings {
  /** The Markdown files of folders, which are URIs; not there where nobody can read them. */
  readonly files?: (folders: readonly string[]) => WorkspaceFiles;
  /** Where findings are explained unless the editor knows better: a URI with `{code}` in it. */
  readonly explanations?: string;
}

export function serve(
  connection: Connection,
  start: (listener: Listener) => Thread,
  around: Surroundings = {},
): void {
  const edits = new LastEdits();
  const documents = new TextDocuments<TextDocument>(edits.documents);
  const solver = new Solver(start);
  const solutions = new Solutions(solver);
  const sheets = new Sheets(solutions);
  const lastGood = new LastGood(solutions);
  const house = (client: ClientFeatures, options: unknown): House => ({
    documents,
    sheets,
    solutions,
    solver,
    lastGood,
    client,
    settings: new Settings(options),
    files: client.files ? filesOfEditor(connection) : (around.files?.(client.folders) ?? noFiles),
    explanations: client.explanations ?? around.explanations ?? null,
    read(uri) {
      const document = documents.get(uri);
      return document === undefined ? null : sheets.read(document, edits.offset(document));
    },
  });
  connection.onInitialize((params) => {
    const client = clientFeatures(params);
    const built = house(client, params.initializationOptions);
    for (const room of rooms) room(connection, built);
    return {
      capabilities: serverCapabilities(client),
      serverInfo: { name: 'papervolt', version: manifest.version },
    };
  });
  documents.onDidClose(({ document }) => edits.forget(document.uri));
  documents.listen(connection);
  connection.listen();
}
