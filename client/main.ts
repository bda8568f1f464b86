/** Entry of the extension, in Node and in a browser: what differs is where the language server runs. It is loaded when it is needed. */
import type * as vscode from 'vscode';
import { activateWith, type Extension } from './extension.ts';
import type { ClientMaker } from './house.ts';

export function activate(context: vscode.ExtensionContext): Extension {
  return activateWith(context, makeClient);
}

const inNode = typeof process === 'object' && process.versions?.node !== undefined;

const makeClient: ClientMaker = async (house) => {
  const program = inNode ? await import('./server-process.ts') : await import('./server-worker.ts');
  return program.makeClient(house);
};
