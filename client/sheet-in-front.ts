/** The sheet in front: what commands, menus and the status item are about. */
import * as vscode from 'vscode';
import { contextIds } from './ids.ts';
import type { SheetTexts } from './sheet-texts.ts';

export class SheetInFront implements vscode.Disposable {
  private readonly texts: SheetTexts;
  /** Address of the text that was active last. */
  private last: string | null = null;
  private told: boolean | null = null;
  private readonly listening: vscode.Disposable;

  constructor(texts: SheetTexts) {
    this.texts = texts;
    const look = (): void => this.look();
    this.listening = vscode.Disposable.from(
      vscode.window.onDidChangeActiveTextEditor(look),
      vscode.window.onDidChangeVisibleTextEditors(look),
      vscode.workspace.onDidOpenTextDocument(look),
      vscode.workspace.onDidChangeTextDocument(({ document }) => {
        if (document.uri.toString() === this.last) look();
      }),
    );
    look();
  }

  /** The editor that shows it; where a preview or the drawing panel is in front, the one beside it. Null: there is none. */
  get editor(): vscode.TextEditor | null {
    const editor = active() ?? this.beside();
    return editor !== undefined && this.texts.has(editor.document) ? editor : null;
  }

  dispose(): void {
    this.listening.dispose();
  }

  private beside(): vscode.TextEditor | undefined {
    return vscode.window.visibleTextEditors.find(({ document }) => document.uri.toString() === this.last);
  }

  private look(): void {
    this.last = active()?.document.uri.toString() ?? this.last;
    const isThere = this.editor !== null;
    if (isThere === this.told) return;
    this.told = isThere;
    void vscode.commands.executeCommand('setContext', contextIds.inSheet, isThere);
  }
}

/** The log and other texts below the editors have no column. */
function active(): vscode.TextEditor | undefined {
  const editor = vscode.window.activeTextEditor;
  return editor?.viewColumn === undefined ? undefined : editor;
}
