/** Entry of the extension in a browser: the language server is a web worker. */
import * as vscode from 'vscode';
import { LanguageClient } from 'vscode-languageclient/browser';
import { activateWith, type Extension } from './extension.ts';
import { clientId } from './ids.ts';

export function activate(context: vscode.ExtensionContext): Extension {
  const program = vscode.Uri.joinPath(context.extensionUri, 'dist', 'language-server-web.js');
  return activateWith(context, async (options) => {
    const source = await vscode.workspace.fs.readFile(program);
    return new LanguageClient(clientId, 'Papervolt', workerOf(source), options);
  });
}

/** From its source: an editor may refuse a worker from the place that the extension lies at. */
function workerOf(source: Uint8Array): Worker {
  const url = URL.createObjectURL(new Blob([source.slice()], { type: 'text/javascript' }));
  return new Worker(url, { name: `${clientId}-server` });
}
