/** The preview in the editor: its timers, commands and the language server behind it. */
import * as vscode from 'vscode';
import { type editing, messages } from '../../shared/index.ts';
import type { House } from '../house.ts';
import { createPreview, type Preview } from './preview.ts';

/** Begins at once, so that the preview has its plugin before any server runs. */
export function startPreview(house: Pick<House, 'reader' | 'server'>): Preview & vscode.Disposable {
  const { reader, server } = house;
  const preview = createPreview(
    {
      watch: (watch) => void server.notify(messages.watch, watch),
      refresh: () => void vscode.commands.executeCommand('markdown.preview.refresh'),
      later(delay_ms, run) {
        const timer = setTimeout(run, delay_ms);
        return () => clearTimeout(timer);
      },
    },
    reader.now,
  );
  const parts = vscode.Disposable.from(
    server.onNotification<editing.PreviewUpdate>(messages.preview, (update) => preview.take(update)),
    server.onDidChangeState((state) => {
      if (state === 'running') preview.connected();
    }),
    reader.onDidChange((audience) => preview.show(audience)),
    vscode.workspace.onDidCloseTextDocument(({ uri }) => preview.closed(uri.toString())),
  );
  return {
    ...preview,
    dispose() {
      preview.dispose();
      parts.dispose();
    },
  };
}
