/** What the parts of the extension share. Each part gets it as its argument; nothing is kept in modules. */
import type * as vscode from 'vscode';
import type { Reader } from './reader.ts';
import type { RunningClient, Server } from './server.ts';
import type { CurrentSettings } from './settings.ts';
import type { SheetInFront } from './sheet-in-front.ts';
import type { SheetTexts } from './sheet-texts.ts';

export interface House {
  readonly extensionUri: vscode.Uri;
  readonly log: vscode.LogOutputChannel;
  readonly settings: CurrentSettings;
  readonly reader: Reader;
  readonly front: SheetInFront;
  readonly server: Server;
  readonly texts: SheetTexts;
}

/** A part of the extension: set up once, and taken down with what it returns. */
export type Feature = (house: House) => vscode.Disposable;

/** Makes the language client of a platform; whoever has it made starts it. */
export type ClientMaker = (house: Omit<House, 'server'>) => Promise<RunningClient>;
