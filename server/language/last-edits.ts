/** Where each text was last edited: the block there is solved before the others. */
import { TextDocument, type Range as TextRange } from 'vscode-languageserver-textdocument';

export class LastEdits {
  private readonly starts = new Map<string, TextRange['start']>();

  /** How open texts are made and changed. */
  readonly documents = {
    create: TextDocument.create,
    update: (
      document: TextDocument,
      changes: Parameters<typeof TextDocument.update>[1],
      version: number,
    ): TextDocument => {
      const last = changes.at(-1);
      if (last !== undefined && 'range' in last) this.starts.set(document.uri, last.range.start);
      return TextDocument.update(document, changes, version);
    },
  };

  offset(document: TextDocument): number {
    const start = this.starts.get(document.uri);
    return start === undefined ? 0 : document.offsetAt(start);
  }

  forget(uri: string): void {
    this.starts.delete(uri);
  }
}
