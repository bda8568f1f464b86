/** `Describe drawing`: the drawing in words, in a text that can be read by line and by a screen reader. `Copy drawing as SVG`. */
import * as vscode from 'vscode';
import { drawingInFront } from '../block-drawing.ts';
import type { House } from '../house.ts';

const scheme = 'papervolt-description';

/** Gives descriptions to the editor by their address. */
export class Descriptions implements vscode.TextDocumentContentProvider, vscode.Disposable {
  private readonly texts = new Map<string, string>();
  private readonly changed = new vscode.EventEmitter<vscode.Uri>();
  private readonly registered = vscode.workspace.registerTextDocumentContentProvider(scheme, this);
  private readonly closing = vscode.workspace.onDidCloseTextDocument(({ uri }) => {
    this.texts.delete(uri.toString());
  });
  readonly onDidChange = this.changed.event;

  provideTextDocumentContent(uri: vscode.Uri): string {
    return this.texts.get(uri.toString()) ?? '';
  }

  /** In the column to the right of the sheet. */
  async show(title: string, text: string, sheet: vscode.TextEditor | null): Promise<void> {
    const uri = vscode.Uri.from({ scheme, path: `/${title.replace(/[/\\?#]/gu, ' ')}.md` });
    this.texts.set(uri.toString(), text);
    this.changed.fire(uri);
    const viewColumn = (sheet?.viewColumn ?? vscode.ViewColumn.One) + 1;
    await vscode.window.showTextDocument(uri, { preview: true, viewColumn });
  }

  dispose(): void {
    vscode.Disposable.from(this.changed, this.registered, this.closing).dispose();
  }
}

export async function describeDrawing(house: House, descriptions: Descriptions): Promise<void> {
  const drawing = await drawingInFront(house);
  if (drawing === null) return;
  // One sentence a line; as Markdown, since the editor folds its long lines.
  const text = drawing.description.replace(/(?<=\.) (?=[\p{Lu}\d])/gu, '\n\n');
  await descriptions.show(drawing.title, `# ${drawing.title}\n\n${text}\n`, house.front.editor);
}

export async function copyDrawing(house: House): Promise<void> {
  const drawing = await drawingInFront(house);
  if (drawing === null) return;
  await vscode.env.clipboard.writeText(drawing.svg);
  void vscode.window.setStatusBarMessage(vscode.l10n.t('Copied: {0}', drawing.title), 5000);
}
