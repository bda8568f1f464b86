/** The sheet in front: what commands, menus and the status item are about. */
import * as vscode from 'vscode';
import { contextIds } from './ids.ts';
import type { SheetTexts } from './sheet-texts.ts';

export class SheetInFront implements vscode.Disposable {
  private readonly texts: SheetTexts;
  /** The one that was active last. Where it is not visible any more it still knows its text and its selection. */
  private last: vscode.TextEditor | null = null;
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
        if (document === this.last?.document) look();
      }),
    );
    look();
  }

  /** Where no text is in front, but a preview, the drawing panel or the walkthrough: the one before. Null: there is none. */
  get editor(): vscode.TextEditor | null {
    const editor = this.visible() ?? this.last;
    return editor !== null && !editor.document.isClosed && this.texts.has(editor.document) ? editor : null;
  }

  dispose(): void {
    this.listening.dispose();
  }

  private visible(): vscode.TextEditor | undefined {
    const { last } = this;
    return active() ?? vscode.window.visibleTextEditors.find(({ document }) => document === last?.document);
  }

  private look(): void {
    this.last = active() ?? this.last;
    const isThere = this.visible() !== undefined && this.editor !== null;
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
