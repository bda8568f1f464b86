/** The drawing panel beside the editor: one a window, it follows the sheet and the block that the cursor is in. */
import type { CancellationToken, Disposable, Event, LogOutputChannel, Uri } from 'vscode';

/** What the panel needs from the rest of the extension. */
export interface PanelSurroundings {
  readonly extensionUri: Uri;
  readonly log: LogOutputChannel;
  /** Asks the language server, which is started where it does not run yet. Rejects where it cannot answer. */
  request(method: string, params: unknown, token: CancellationToken): Promise<unknown>;
  /** Fires with the URI of a text whose solution has become newer (`papervolt/solved`). */
  readonly onSolved: Event<string>;
}

export interface DrawingPanel extends Disposable {
  /** Opens the panel, or brings it forward, with the block at a place of a sheet. */
  show(uri: Uri, place: { readonly line: number; readonly character: number }): void;
}

/** Registers what brings the panel back after a reload; opens nothing. */
export function createPanel(_surroundings: PanelSurroundings): DrawingPanel {
  return { show: () => undefined, dispose: () => undefined };
}
