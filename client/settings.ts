/** The settings, read once at the rim into one record, and again where they change. */
import * as vscode from 'vscode';
import { type Audience, audiences } from '../shared/index.ts';
import { settingIds } from './ids.ts';

export interface Settings {
  readonly hints: boolean;
  readonly lenses: boolean;
  /** Whose sheet the preview shows first. */
  readonly reader: Audience;
  readonly formatDocuments: boolean;
  readonly thumbnails: boolean;
}

export function readSettings(): Settings {
  const settings = vscode.workspace.getConfiguration();
  return {
    hints: settings.get<boolean>(settingIds.hints, true),
    lenses: settings.get<boolean>(settingIds.lenses, true),
    reader: audiences.find((reader) => reader === settings.get(settingIds.reader)) ?? 'teachers',
    formatDocuments: settings.get<boolean>(settingIds.formatDocuments, false),
    thumbnails: settings.get<boolean>(settingIds.thumbnails, false),
  };
}

/** What is set now, and who wants to know when that changes. */
export class CurrentSettings implements vscode.Disposable {
  private settings = readSettings();
  private readonly changed = new vscode.EventEmitter<{ readonly before: Settings; readonly now: Settings }>();
  private readonly watcher = vscode.workspace.onDidChangeConfiguration((event) => {
    if (!event.affectsConfiguration('papervolt')) return;
    const before = this.settings;
    this.settings = readSettings();
    this.changed.fire({ before, now: this.settings });
  });
  readonly onDidChange = this.changed.event;

  get now(): Settings {
    return this.settings;
  }

  dispose(): void {
    this.watcher.dispose();
    this.changed.dispose();
  }
}
