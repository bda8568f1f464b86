/** The language server as a process of its own, where there is Node. */
import * as vscode from 'vscode';
import { LanguageClient, TransportKind } from 'vscode-languageclient/node';
import type { House } from './house.ts';
import { clientId, serverFile } from './ids.ts';
import { clientOptions, running } from './language-client.ts';
import type { RunningClient } from './server.ts';

export async function makeClient(house: Omit<House, 'server'>): Promise<RunningClient> {
  const module = vscode.Uri.joinPath(house.extensionUri, ...serverFile).fsPath;
  const program = { module, transport: TransportKind.stdio };
  return running(new LanguageClient(clientId, 'Papervolt', program, clientOptions(house)));
}
