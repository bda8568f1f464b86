/** What a user can switch while the server runs. */
import type { Connection } from 'vscode-languageserver';
import { optionOf } from './client-features.ts';
import type { House } from './house.ts';
import { refreshHints, refreshLenses } from './refresh.ts';

export interface Switches {
  /** Values behind the lines of a block. */
  readonly hints: boolean;
  /** A line above each block. */
  readonly lenses: boolean;
}

/** Read from `initializationOptions` first, later from `workspace/didChangeConfiguration`. */
export class Settings {
  private now: Switches;

  constructor(options: unknown) {
    this.now = switchesFrom(options, { hints: true, lenses: true });
  }

  get switches(): Switches {
    return this.now;
  }

  /** What has been switched. `sent` is our own section or one that holds it under our name. */
  change(sent: unknown): { readonly hints: boolean; readonly lenses: boolean } {
    const before = this.now;
    this.now = switchesFrom(optionOf(sent, 'papervolt') ?? sent, before);
    return { hints: before.hints !== this.now.hints, lenses: before.lenses !== this.now.lenses };
  }
}

/** Anything but true and false leaves a switch as it is. */
function switchesFrom(sent: unknown, before: Switches): Switches {
  const read = (name: keyof Switches): boolean => {
    const value = optionOf(sent, name);
    return typeof value === 'boolean' ? value : before[name];
  };
  return { hints: read('hints'), lenses: read('lenses') };
}

export function settings(connection: Connection, { settings: kept, client }: House): void {
  connection.onDidChangeConfiguration(({ settings: sent }) => {
    const changed = kept.change(sent);
    if (changed.hints) refreshHints(connection, client);
    if (changed.lenses) refreshLenses(connection, client);
  });
}
