/** The Markdown files of the workspace, whoever reads them. */
import type { Connection } from 'vscode-languageserver';
import { editing } from '../../shared/index.ts';

export interface WorkspaceFiles {
  /** URIs of Markdown files, each once, in a stable order, `mostFiles` at most. */
  list(): Promise<readonly string[]>;
  /** Null for a file that is gone or cannot be read as text. */
  read(uri: string): Promise<string | null>;
}

export const mostFiles = 2_000;

/** Without folders, or where nobody can read them. */
export const noFiles: WorkspaceFiles = { list: async () => [], read: async () => null };

/** Read by the editor, which may have them anywhere. */
export function filesOfEditor(connection: Connection): WorkspaceFiles {
  return {
    async list() {
      const uris: unknown = await connection.sendRequest(editing.messages.listFiles, null);
      const texts = Array.isArray(uris) ? uris.filter((uri) => typeof uri === 'string') : [];
      return [...new Set(texts)].sort().slice(0, mostFiles);
    },
    async read(uri) {
      const text: unknown = await connection.sendRequest(editing.messages.readFile, { uri });
      return typeof text === 'string' ? text : null;
    },
  };
}
