/** Our blocks in all Markdown files of the workspace. Nothing is read before somebody asks. */
import {
  type Connection,
  DidChangeWatchedFilesNotification,
  type SymbolInformation,
} from 'vscode-languageserver';
import { editing, type LineIndex, lineIndex, readSheet } from '../../shared/index.ts';
import { symbolKinds } from './convert.ts';
import type { House } from './house.ts';
import { rangeOf } from './places.ts';

export function workspaceSymbols(connection: Connection, house: House): void {
  const files = new FileSymbols(connection, house);
  connection.onWorkspaceSymbol(({ query }) => files.found(query));
  connection.onDidChangeWatchedFiles(({ changes }) => {
    for (const { uri } of changes) files.changed(uri);
  });
}

/** The most that are told at once: whoever asks goes on typing. */
const mostTold = 500;

class FileSymbols {
  private readonly connection: Connection;
  private readonly house: House;
  /** What the files had when they were last read; kept only while the editor tells of changes. */
  private readonly known = new Map<string, readonly SymbolInformation[]>();
  private uris: Promise<readonly string[]> | null = null;
  private watching = false;

  constructor(connection: Connection, house: House) {
    this.connection = connection;
    this.house = house;
  }

  changed(uri: string): void {
    this.known.delete(uri);
    this.uris = null;
  }

  async found(query: string): Promise<SymbolInformation[]> {
    this.watch();
    if (!this.watching) this.forget();
    this.uris ??= this.house.files.list();
    const open = this.house.documents.all().map(({ uri }) => uri);
    const closed = (await this.uris).filter((uri) => !open.includes(uri));
    const listed = new Set(closed);
    for (const uri of this.known.keys()) if (!listed.has(uri)) this.known.delete(uri);
    const symbols = open.flatMap((uri) => this.inOpen(uri));
    for (const uri of closed) symbols.push(...(await this.inFile(uri)));
    return symbols.filter(({ name }) => isLike(name, query)).slice(0, mostTold);
  }

  /** Asks once to be told of changed files, where the editor can. */
  private watch(): void {
    if (this.watching || !this.house.client.watchesFiles) return;
    this.watching = true;
    const watchers = [{ globPattern: '**/*.{md,markdown}' }];
    void this.connection.client.register(DidChangeWatchedFilesNotification.type, { watchers });
  }

  private forget(): void {
    this.known.clear();
    this.uris = null;
  }

  private inOpen(uri: string): readonly SymbolInformation[] {
    const sheet = this.house.read(uri);
    return sheet === null ? [] : listed(uri, sheet.lines, editing.symbolsOf(sheet.draft.sheet));
  }

  private async inFile(uri: string): Promise<readonly SymbolInformation[]> {
    const known = this.known.get(uri);
    if (known !== undefined) return known;
    const text = await this.house.files.read(uri);
    const found = text?.includes('electrodes') === true ? symbolsOfText(uri, text) : [];
    this.known.set(uri, found);
    return found;
  }
}

function symbolsOfText(uri: string, text: string): readonly SymbolInformation[] {
  return listed(uri, lineIndex(text), editing.symbolsOf(readSheet({ name: uri, text })));
}

/** Setups and, in them, electrodes, probes and rows. */
function listed(
  uri: string,
  lines: LineIndex,
  symbols: readonly editing.SheetSymbol[],
  containerName?: string,
): readonly SymbolInformation[] {
  return symbols.flatMap(({ name, kind, nameSpan, children }) => [
    {
      name,
      kind: symbolKinds[kind],
      location: { uri, range: rangeOf(lines, nameSpan) },
      ...(containerName === undefined ? {} : { containerName }),
    },
    ...listed(uri, lines, children, name),
  ]);
}

/** The letters of the query stand in the name in their order, as editors match. */
function isLike(name: string, query: string): boolean {
  let at = 0;
  const lower = name.toLowerCase();
  return [...query.toLowerCase()].every((letter) => {
    at = lower.indexOf(letter, at) + 1;
    return at > 0;
  });
}
