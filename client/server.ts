/**
 * The language server seen from the extension: started where somebody needs it, started anew on request. Handlers are kept here, so that
 * they outlive a restart.
 */
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';

export type ServerState = 'off' | 'starting' | 'running' | 'stopped';

/** The client of a server, with its states in our words. */
export interface RunningClient {
  readonly client: BaseLanguageClient;
  onDidChangeState(listen: (state: ServerState) => void): vscode.Disposable;
}

type Handler =
  | { readonly kind: 'notification'; readonly method: string; readonly handle: (params: unknown) => void }
  | {
      readonly kind: 'request';
      readonly method: string;
      readonly handle: (params: unknown, token: vscode.CancellationToken) => unknown;
    };

/** One client, from the wish for it until it is stopped. */
interface Run {
  /** Null while it is made. */
  client: BaseLanguageClient | null;
  /** Resolves when its server runs; rejects where that does not start. */
  readonly running: Promise<BaseLanguageClient>;
}

export class Server implements vscode.Disposable {
  private readonly make: () => Promise<RunningClient>;
  private readonly log: vscode.LogOutputChannel;
  private readonly handlers = new Set<Handler>();
  private readonly changed = new vscode.EventEmitter<ServerState>();
  private run: Run | null = null;
  private current: ServerState = 'off';
  readonly onDidChangeState = this.changed.event;

  constructor(make: () => Promise<RunningClient>, log: vscode.LogOutputChannel) {
    this.make = make;
    this.log = log;
  }

  get state(): ServerState {
    return this.current;
  }

  /** Starts the server unless it runs or starts already. */
  start(): Promise<BaseLanguageClient> {
    const client = this.run?.client ?? null;
    // It may have ended at its start, and been started anew since.
    if (client !== null && this.current === 'running') return Promise.resolve(client);
    this.run ??= this.begun();
    return this.run.running;
  }

  async restart(): Promise<void> {
    await this.stop();
    await this.start();
  }

  async stop(): Promise<void> {
    const { run } = this;
    this.run = null;
    if (run === null) return;
    this.enter('off');
    try {
      // What is only starting cannot be stopped.
      await run.running.catch(() => undefined);
      await run.client?.dispose();
    } catch (error) {
      this.log.warn(`The language server did not end by itself: ${String(error)}`);
    }
  }

  /** Asks the server, which is started where it does not run. Rejects where it cannot answer. */
  async request<R>(method: string, params: unknown, token?: vscode.CancellationToken): Promise<R> {
    const client = await this.start();
    return token === undefined
      ? client.sendRequest<R>(method, params)
      : client.sendRequest<R>(method, params, token);
  }

  /** Tells the server something, if it runs; a server that starts later is told by those who wait for `running`. Never rejects. */
  async notify(method: string, params: unknown): Promise<void> {
    if (this.current !== 'running') return;
    try {
      await this.run?.client?.sendNotification(method, params);
    } catch (error) {
      this.log.warn(`The language server was not told ${method}: ${String(error)}`);
    }
  }

  onNotification<P>(method: string, handle: (params: P) => void): vscode.Disposable {
    return this.keep({ kind: 'notification', method, handle: (params) => handle(params as P) });
  }

  onRequest<P>(
    method: string,
    handle: (params: P, token: vscode.CancellationToken) => unknown,
  ): vscode.Disposable {
    return this.keep({ kind: 'request', method, handle: (params, token) => handle(params as P, token) });
  }

  dispose(): void {
    void this.stop();
    this.changed.dispose();
  }

  private begun(): Run {
    const began = Date.now();
    this.enter('starting');
    const start = async (): Promise<BaseLanguageClient> => {
      try {
        const { client, onDidChangeState } = await this.make();
        run.client = client;
        for (const handler of this.handlers) attach(client, handler);
        onDidChangeState((state) => {
          if (run === this.run) this.enter(state);
        });
        await client.start();
        this.log.info(`The language server runs, after ${Date.now() - began} ms.`);
        return client;
      } catch (error) {
        if (run === this.run) this.enter('stopped');
        throw error;
      }
    };
    const run: Run = { client: null, running: Promise.resolve().then(start) };
    return run;
  }

  private enter(state: ServerState): void {
    if (state === this.current) return;
    this.current = state;
    this.changed.fire(state);
  }

  private keep(handler: Handler): vscode.Disposable {
    this.handlers.add(handler);
    const client = this.run?.client ?? null;
    const attached = client === null ? null : attach(client, handler);
    return new vscode.Disposable(() => {
      this.handlers.delete(handler);
      attached?.dispose();
    });
  }
}

function attach(client: BaseLanguageClient, handler: Handler): vscode.Disposable {
  return handler.kind === 'notification'
    ? client.onNotification(handler.method, handler.handle)
    : client.onRequest(handler.method, handler.handle);
}
