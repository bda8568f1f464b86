/** Which texts are our concern: Markdown that has something like a block, in a file or in a text that is not saved yet. */
import * as vscode from 'vscode';
import { mayBeSheet } from '../shared/index.ts';

export class SheetTexts {
  /** What version control shows of the past, and other such views, are left alone. */
  private readonly schemes: ReadonlySet<string>;

  constructor() {
    const folders = vscode.workspace.workspaceFolders ?? [];
    this.schemes = new Set(['file', 'untitled', 'vscode-remote', ...folders.map(({ uri }) => uri.scheme)]);
  }

  get selector(): { readonly language: string; readonly scheme: string }[] {
    return [...this.schemes].map((scheme) => ({ language: 'markdown', scheme }));
  }

  has(document: vscode.TextDocument): boolean {
    return (
      document.languageId === 'markdown' &&
      this.schemes.has(document.uri.scheme) &&
      mayBeSheet(document.getText())
    );
  }
}
