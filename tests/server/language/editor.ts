/** Plays an editor: a real server process, spoken to over its standard input and output. */
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { dirname, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import {
  type ClientCapabilities,
  createProtocolConnection,
  type InitializeResult,
  type Position,
  type ProtocolConnection,
  type PublishDiagnosticsParams,
  type Range,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver-protocol/node';
import { TextDocument } from 'vscode-languageserver-textdocument';

export const program = resolve(dirname(fileURLToPath(import.meta.url)), '../../../dist/language-server.mjs');

/** Asks for findings; knows snippets, annotated edits and refreshing. */
export const pulling: ClientCapabilities = {
  textDocument: {
    diagnostic: {},
    completion: { completionItem: { snippetSupport: true } },
    codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: [] } } },
    rename: { prepareSupport: true, honorsChangeAnnotations: true },
    signatureHelp: { signatureInformation: { parameterInformation: { labelOffsetSupport: true } } },
  },
  workspace: {
    workspaceEdit: { documentChanges: true, changeAnnotationSupport: { groupsOnLabel: true } },
    didChangeWatchedFiles: { dynamicRegistration: true },
    inlayHint: { refreshSupport: true },
    codeLens: { refreshSupport: true },
  },
};
/** Knows nothing but the beginnings of the protocol. */
export const plain: ClientCapabilities = {};

/** What a server may ask of an editor. */
const asks = [
  'client/registerCapability',
  'workspace/inlayHint/refresh',
  'workspace/codeLens/refresh',
  'papervolt/listFiles',
  'papervolt/readFile',
];

export class Editor {
  readonly process: ChildProcess;
  readonly connection: ProtocolConnection;
  readonly published: PublishDiagnosticsParams[] = [];
  /** What the server has asked of the editor: methods. */
  readonly asked: string[] = [];
  initialized: InitializeResult | null = null;
  /** Called when findings come. */
  private readonly looking: (() => void)[] = [];

  private constructor(process: ChildProcess, connection: ProtocolConnection) {
    this.process = process;
    this.connection = connection;
  }

  /** `workspace`: the URI of its folder, and the files that it reads for the server where it is asked to. */
  static async start(
    capabilities: ClientCapabilities,
    initializationOptions?: object,
    workspace: { readonly folder?: string; readonly files?: ReadonlyMap<string, string> } = {},
  ): Promise<Editor> {
    const child = spawn(process.execPath, [program, '--stdio'], { stdio: ['pipe', 'pipe', 'inherit'] });
    const connection = createProtocolConnection(
      new StreamMessageReader(child.stdout),
      new StreamMessageWriter(child.stdin),
    );
    const editor = new Editor(child, connection);
    connection.onNotification('textDocument/publishDiagnostics', (params: PublishDiagnosticsParams) => {
      editor.published.push(params);
      for (const look of editor.looking.splice(0)) look();
    });
    for (const method of asks) {
      connection.onRequest(method, (params: unknown): unknown => {
        editor.asked.push(method);
        if (method === 'papervolt/listFiles') return [...(workspace.files?.keys() ?? [])];
        if (method !== 'papervolt/readFile') return null;
        const { uri } = params as { readonly uri: string };
        return workspace.files?.get(uri) ?? null;
      });
    }
    connection.listen();
    editor.initialized = await connection.sendRequest('initialize', {
      processId: process.pid,
      rootUri: workspace.folder ?? null,
      capabilities,
      ...(initializationOptions === undefined ? {} : { initializationOptions }),
    });
    await connection.sendNotification('initialized', {});
    return editor;
  }

  open(text: string, name = 'sheet.md'): OpenText {
    return new OpenText(this, `file:///sheets/${name}`, text);
  }

  /** Findings sent for a version of a text. */
  async findingsFor(uri: string, version: number): Promise<PublishDiagnosticsParams> {
    for (;;) {
      const found = this.published.find((sent) => sent.uri === uri && sent.version === version);
      if (found !== undefined) return found;
      await new Promise<void>((next) => this.looking.push(next));
    }
  }

  /** Takes its leave as the protocol has it; the status of the process. */
  async stop(): Promise<number | null> {
    await this.connection.sendRequest('shutdown');
    const exit = once(this.process, 'exit');
    await this.connection.sendNotification('exit');
    const [status] = (await exit) as [number | null];
    return status;
  }
}

/** A text that is open in the editor, kept as the editor keeps it. */
export class OpenText {
  readonly uri: string;
  document: TextDocument;
  private readonly editor: Editor;

  constructor(editor: Editor, uri: string, text: string) {
    this.editor = editor;
    this.uri = uri;
    this.document = TextDocument.create(uri, 'markdown', 1, text);
    const textDocument = { uri, languageId: 'markdown', version: 1, text };
    void editor.connection.sendNotification('textDocument/didOpen', { textDocument });
  }

  get text(): string {
    return this.document.getText();
  }

  /** The place behind the first `before` in the text, moved on by some characters. */
  at(before: string, more = 0): Position {
    const found = this.text.indexOf(before);
    if (found < 0) throw new Error(`no ${before} in the text`);
    return this.document.positionAt(found + before.length + more);
  }

  range(part: string): Range {
    const found = this.text.indexOf(part);
    return { start: this.document.positionAt(found), end: this.document.positionAt(found + part.length) };
  }

  /** Replaces a range; the server is sent the change alone. */
  edit(range: Range, text: string): void {
    const changes = [{ range, text }];
    const version = this.document.version + 1;
    this.document = TextDocument.update(this.document, changes, version);
    const textDocument = { uri: this.uri, version };
    void this.editor.connection.sendNotification('textDocument/didChange', {
      textDocument,
      contentChanges: changes,
    });
  }

  /** Replaces the first `old` in the text. */
  replace(old: string, text: string): void {
    this.edit(this.range(old), text);
  }

  close(): void {
    void this.editor.connection.sendNotification('textDocument/didClose', {
      textDocument: { uri: this.uri },
    });
  }

  /** A request about this text. */
  ask<R>(method: string, params: object = {}): Promise<R> {
    return this.editor.connection.sendRequest(method, { textDocument: { uri: this.uri }, ...params });
  }
}
