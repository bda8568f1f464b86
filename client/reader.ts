/** Whose sheet is shown: pupils', teachers' or technicians'. The setting says it first; a switch holds for the window. */
import * as vscode from 'vscode';
import type { Audience } from '../shared/index.ts';
import type { CurrentSettings } from './settings.ts';

export class Reader implements vscode.Disposable {
  private audience: Audience;
  private readonly changed = new vscode.EventEmitter<Audience>();
  private readonly watcher: vscode.Disposable;
  readonly onDidChange = this.changed.event;

  constructor(settings: CurrentSettings) {
    this.audience = settings.now.reader;
    this.watcher = settings.onDidChange(({ before, now }) => {
      if (before.reader !== now.reader) this.set(now.reader);
    });
  }

  get now(): Audience {
    return this.audience;
  }

  set(audience: Audience): void {
    if (audience === this.audience) return;
    this.audience = audience;
    this.changed.fire(audience);
  }

  dispose(): void {
    this.watcher.dispose();
    this.changed.dispose();
  }
}
