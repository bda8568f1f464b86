/** Entry of the extension where there is Node: the language server is a process of its own. */
import * as vscode from 'vscode';
import { LanguageClient, TransportKind } from 'vscode-languageclient/node';
import { activateWith, type Extension } from './extension.ts';
import { clientId } from './ids.ts';

export function activate(context: vscode.ExtensionContext): Extension {
  const module = vscode.Uri.joinPath(context.extensionUri, 'dist', 'language-server.mjs').fsPath;
  return activateWith(context, async (options) => {
    const program = { module, transport: TransportKind.stdio };
    return new LanguageClient(clientId, 'Papervolt', program, options);
  });
}
