/** Offers a block behind three backticks while no language server runs: with the block, one starts. */
import * as vscode from 'vscode';
import { fenceCompletions, snippetText } from '../shared/index.ts';
import type { House } from './house.ts';

export function firstBlock({ server, texts }: House): vscode.Disposable {
  const provider: vscode.CompletionItemProvider = {
    provideCompletionItems: (document, place) =>
      server.state === 'off' ? itemsAt(document, document.offsetAt(place)) : [],
  };
  return vscode.languages.registerCompletionItemProvider(texts.selector, provider, '`', '~');
}

function itemsAt(document: vscode.TextDocument, offset: number): vscode.CompletionItem[] {
  const source = { name: document.uri.path, text: document.getText() };
  return fenceCompletions(source, offset).map(({ label, detail, text, span }) => {
    const item = new vscode.CompletionItem(label, vscode.CompletionItemKind.Keyword);
    item.detail = detail;
    item.range = new vscode.Range(document.positionAt(span.from), document.positionAt(span.to));
    item.insertText = new vscode.SnippetString(snippetText(text));
    return item;
  });
}
