/** Reads the workspace for the server, which may run where there are no files. Markdown of the workspace, and nothing else. */
import * as vscode from 'vscode';
import { messages } from '../shared/index.ts';
import type { House } from './house.ts';

/** A workspace of sheets has some hundreds. */
const mostFiles = 2000;
/** A longer text is no sheet, bytes. */
const longest = 1024 * 1024;

export function files({ log, server }: House): vscode.Disposable {
  return vscode.Disposable.from(
    server.onRequest<null>(messages.listFiles, async (_, token) => {
      const found = await vscode.workspace.findFiles('**/*.{md,markdown}', undefined, mostFiles, token);
      return found.map((uri) => uri.toString());
    }),
    server.onRequest<{ readonly uri: string }>(messages.readFile, async ({ uri }) => {
      try {
        return await textOf(vscode.Uri.parse(uri, true));
      } catch (error) {
        log.debug(`Not read: ${uri}: ${String(error)}`);
        return null;
      }
    }),
  );
}

/** Null for what is none of the server's concern. */
async function textOf(uri: vscode.Uri): Promise<string | null> {
  const isOurs =
    /\.(md|markdown)$/iu.test(uri.path) && vscode.workspace.getWorkspaceFolder(uri) !== undefined;
  if (!isOurs) return null;
  const { size } = await vscode.workspace.fs.stat(uri);
  if (size > longest) return null;
  return new TextDecoder().decode(await vscode.workspace.fs.readFile(uri));
}
