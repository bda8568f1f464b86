/** What all parts of the server share: the open texts, what is known of them, and who is at the other end. */
import type { Connection, TextDocuments } from 'vscode-languageserver';
import type { TextDocument } from 'vscode-languageserver-textdocument';
import type { ClientFeatures } from './client-features.ts';
import type { LastGood } from './last-good.ts';
import type { Settings } from './settings.ts';
import type { OpenSheet, Sheets } from './sheets.ts';
import type { Solutions } from './solutions.ts';
import type { Solver } from './solver.ts';
import type { WorkspaceFiles } from './workspace-files.ts';

export interface House {
  readonly documents: TextDocuments<TextDocument>;
  readonly sheets: Sheets;
  readonly solutions: Solutions;
  readonly solver: Solver;
  /** The last setup of each block that had a solution. */
  readonly lastGood: LastGood;
  readonly client: ClientFeatures;
  readonly settings: Settings;
  readonly files: WorkspaceFiles;
  /** Where a finding is explained: a URI with `{code}` in it. */
  readonly explanations: string | null;
  /** The sheet as its text stands now; null for a text that is not open or has none of our blocks. */
  read(uri: string): OpenSheet | null;
}

/**
 * A part of the server: it takes up the requests and notifications that it answers. Called once, before the editor hears that the
 * server is there.
 */
export type Room = (connection: Connection, house: House) => void;
