/** Plays an editor to a real server process, and looks into the memory of that process. */
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import {
  createProtocolConnection,
  type ProtocolConnection,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver-protocol/node';
import { TextDocument } from 'vscode-languageserver-textdocument';

const program = fileURLToPath(new URL('language-server.mjs', import.meta.url));

/** What an editor with all the usual abilities says of itself. */
const capabilities = {
  textDocument: {
    diagnostic: {},
    completion: { completionItem: { snippetSupport: true } },
    codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: [] } } },
    inlayHint: {},
    semanticTokens: { requests: { full: true }, tokenTypes: [], tokenModifiers: [], formats: [] },
  },
};

/**
 * Run in the server and in each of its threads before anything else: on a word over the process channel all of them collect garbage
 * and tell the bytes of their heaps.
 */
const memoryHook = `
import { BroadcastChannel, isMainThread } from 'node:worker_threads';
const heap = () => (gc(), process.memoryUsage().heapUsed);
const channel = new BroadcastChannel('heaps');
channel.unref();
if (isMainThread) {
  channel.onmessage = ({ data }) => data !== 'ask' && process.send({ thread: data });
  process.on('message', () => {
    channel.postMessage('ask');
    process.send({ main: heap() });
  });
  process.channel.unref();
} else channel.onmessage = ({ data }) => data === 'ask' && channel.postMessage(heap());
`;

export interface Memory {
  /** Of the main thread after a collection, bytes. */
  readonly heap: number;
  /** Of the solving thread after a collection, bytes; 0 where none runs. */
  readonly solver: number;
  /** Of the whole process, bytes; null where the system does not tell. */
  readonly resident: number | null;
}

export class ServerProcess {
  private readonly child: ChildProcess;
  readonly connection: ProtocolConnection;

  private constructor(child: ChildProcess, connection: ProtocolConnection) {
    this.child = child;
    this.connection = connection;
  }

  /** Resolves when the server has answered `initialize`. */
  static async start(): Promise<ServerProcess> {
    const hook = `data:text/javascript,${encodeURIComponent(memoryHook)}`;
    const child = spawn(process.execPath, ['--expose-gc', '--import', hook, program, '--stdio'], {
      stdio: ['pipe', 'pipe', 'inherit', 'ipc'],
    });
    if (child.stdout === null || child.stdin === null) throw new Error('the server has no standard input');
    const connection = createProtocolConnection(
      new StreamMessageReader(child.stdout),
      new StreamMessageWriter(child.stdin),
    );
    connection.onRequest('workspace/configuration', ({ items }: { items: unknown[] }) =>
      items.map(() => null),
    );
    connection.onRequest('client/registerCapability', () => null);
    connection.onRequest('workspace/diagnostic/refresh', () => null);
    connection.onRequest('workspace/inlayHint/refresh', () => null);
    connection.onRequest('workspace/codeLens/refresh', () => null);
    connection.listen();
    const initializationOptions = { drawings: true, formatting: false, hints: true, lenses: true };
    await connection.sendRequest('initialize', {
      processId: process.pid,
      rootUri: null,
      capabilities,
      initializationOptions,
    });
    await connection.sendNotification('initialized', {});
    return new ServerProcess(child, connection);
  }

  open(text: string, name: string): OpenText {
    const document = TextDocument.create(`file:///bench/${name}`, 'markdown', 1, text);
    void this.connection.sendNotification('textDocument/didOpen', {
      textDocument: { uri: document.uri, languageId: 'markdown', version: 1, text },
    });
    return new OpenText(this.connection, document);
  }

  /** When all threads have collected their garbage. To be asked while no task runs. */
  async memory(): Promise<Memory> {
    const parts: { readonly main?: number; readonly thread?: number }[] = [];
    const whole = new Promise<void>((done) => {
      const late = setTimeout(done, 2000);
      this.child.on('message', (part: (typeof parts)[number]) => {
        parts.push(part);
        if (!parts.some(({ main }) => main !== undefined)) return;
        if (!parts.some(({ thread }) => thread !== undefined)) return;
        clearTimeout(late);
        done();
      });
    });
    this.child.send('memory');
    await whole;
    this.child.removeAllListeners('message');
    const sum = (part: 'main' | 'thread'): number => parts.reduce((all, each) => all + (each[part] ?? 0), 0);
    return { heap: sum('main'), solver: sum('thread'), resident: residentBytes(this.child.pid) };
  }

  async stop(): Promise<void> {
    const gone = once(this.child, 'exit');
    await this.connection.sendRequest('shutdown');
    await this.connection.sendNotification('exit');
    await gone;
    this.connection.dispose();
  }
}

function residentBytes(pid: number | undefined): number | null {
  try {
    const [, kilobytes] = /^VmRSS:\s+(\d+) kB/m.exec(readFileSync(`/proc/${pid}/status`, 'utf8')) ?? [];
    return kilobytes === undefined ? null : Number(kilobytes) * 1024;
  } catch {
    return null;
  }
}

/** The protocol's error for a request that a newer text has overtaken; it is asked again. */
const overtaken = [-32801, -32802];

export class OpenText {
  private document: TextDocument;
  private readonly connection: ProtocolConnection;

  constructor(connection: ProtocolConnection, document: TextDocument) {
    this.connection = connection;
    this.document = document;
  }

  get length(): number {
    return this.document.getText().length;
  }

  /** Writes `text` over what stands from `from` to `to`. */
  edit(from: number, to: number, text: string): void {
    const { document } = this;
    const range = { start: document.positionAt(from), end: document.positionAt(to) };
    const contentChanges = [{ range, text }];
    this.document = TextDocument.update(document, contentChanges, document.version + 1);
    void this.connection.sendNotification('textDocument/didChange', {
      textDocument: { uri: document.uri, version: this.document.version },
      contentChanges,
    });
  }

  async ask<R>(method: string, params: object = {}): Promise<R> {
    for (;;) {
      try {
        const textDocument = { uri: this.document.uri };
        return await this.connection.sendRequest(method, { textDocument, ...params });
      } catch (error) {
        if (!overtaken.includes(errorCode(error))) throw error;
      }
    }
  }

  findings(): Promise<{ readonly items: readonly unknown[] }> {
    return this.ask('textDocument/diagnostic');
  }

  /** Of the block that holds the offset. */
  drawing(offset: number): Promise<{ readonly svg: string } | null> {
    return this.ask('papervolt/drawing', { position: this.document.positionAt(offset) });
  }

  close(): void {
    const { uri } = this.document;
    void this.connection.sendNotification('textDocument/didClose', { textDocument: { uri } });
  }
}

function errorCode(error: unknown): number {
  const code: unknown = typeof error === 'object' && error !== null ? Reflect.get(error, 'code') : null;
  return typeof code === 'number' ? code : 0;
}
