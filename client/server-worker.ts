/** The language server as a web worker, in a browser. */
import * as vscode from 'vscode';
import { LanguageClient } from 'vscode-languageclient/browser';
import type { House } from './house.ts';
import { clientId, serverFile } from './ids.ts';
import { clientOptions, running } from './language-client.ts';
import type { RunningClient } from './server.ts';

export async function makeClient(house: Omit<House, 'server'>): Promise<RunningClient> {
  const source = await vscode.workspace.fs.readFile(vscode.Uri.joinPath(house.extensionUri, ...serverFile));
  return running(new LanguageClient(clientId, 'Papervolt', workerOf(source), clientOptions(house)));
}

/** From its source: an editor may refuse a worker from the place that the extension lies at. */
function workerOf(source: Uint8Array): Worker {
  const url = URL.createObjectURL(new Blob([source.slice()], { type: 'text/javascript' }));
  return new Worker(url, { name: `${clientId}-server` });
}
