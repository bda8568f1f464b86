/** A workbench on Node as a process of its own, with folders of its own: started, told new settings, stopped. */
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { codeServer } from './places.ts';
import { quietSettings } from './settings.ts';

export interface WorkbenchOptions {
  /** What is tested: a folder with package.json, which is linked, or a .vsix, which is installed; null for none. */
  readonly extension: string | null;
  /** By name; they make up the workspace. */
  readonly files: Readonly<Record<string, string>>;
  readonly settings?: Readonly<Record<string, unknown>>;
}

export class CodeServer {
  readonly url: string;
  /** The folder of the workspace. */
  readonly work: string;
  private readonly child: ChildProcess;
  private readonly root: string;

  private constructor(child: ChildProcess, root: string, url: string) {
    this.child = child;
    this.root = root;
    this.url = url;
    this.work = join(root, 'work');
  }

  static async start({ extension, files, settings = {} }: WorkbenchOptions): Promise<CodeServer> {
    const root = mkdtempSync(join(tmpdir(), 'papervolt-workbench-'));
    for (const folder of ['user/User', 'extensions', 'work', 'home'])
      mkdirSync(join(root, folder), { recursive: true });
    writeSettings(root, settings);
    for (const [name, text] of Object.entries(files)) writeFileSync(join(root, 'work', name), text);
    if (extension?.endsWith('.vsix')) await installed(root, extension);
    // A linked folder is found as long as no list of extensions has been written.
    else if (extension !== null)
      symlinkSync(extension, join(root, 'extensions', 'papervolt.papervolt-0.0.0'));
    const child = spawnServer(root, [
      ...['--auth', 'none', '--bind-addr', '127.0.0.1:0', '--ignore-last-opened', '--disable-telemetry'],
      ...['--disable-update-check', '--disable-workspace-trust', '--disable-getting-started-override'],
      '--disable-proxy',
    ]);
    return new CodeServer(child, root, await listening(child));
  }

  uriOf(path: string): string {
    return `vscode-remote://${new URL(this.url).host}${path}`;
  }

  /** As the file stands on the disk. */
  read(name: string): string {
    return readFileSync(join(this.work, name), 'utf8');
  }

  /** Of the files of the workspace. */
  names(): readonly string[] {
    return readdirSync(this.work);
  }

  /** Ids of the processes below the server whose command holds the words. */
  processes(words: string): number[] {
    return processesOfGroup(this.child.pid ?? 0, words);
  }

  async stop(): Promise<void> {
    const gone = this.child.exitCode === null ? once(this.child, 'exit') : null;
    this.signal('SIGTERM');
    const late = setTimeout(() => this.signal('SIGKILL'), 5000);
    await gone;
    clearTimeout(late);
    this.signal('SIGKILL');
    rmSync(this.root, { recursive: true, force: true, maxRetries: 20, retryDelay: 100 });
  }

  /** To the whole group: the host of the extensions is a child of a child. */
  private signal(name: NodeJS.Signals): void {
    try {
      process.kill(-(this.child.pid ?? 0), name);
    } catch (error) {
      if (!(error instanceof Error && 'code' in error && error.code === 'ESRCH')) throw error;
    }
  }
}

function writeSettings(root: string, settings: Readonly<Record<string, unknown>>): void {
  const text = JSON.stringify({ ...quietSettings, ...settings });
  writeFileSync(join(root, 'user', 'User', 'settings.json'), text);
}

function spawnServer(root: string, args: readonly string[]): ChildProcess {
  const program = join(codeServer, 'out', 'node', 'entry.js');
  const folders = ['--user-data-dir', join(root, 'user'), '--extensions-dir', join(root, 'extensions')];
  const env = {
    PATH: process.env.PATH,
    HOME: join(root, 'home'),
    LANG: 'C.UTF-8',
    EXTENSIONS_GALLERY: '{}',
  };
  return spawn(process.execPath, [program, '--config', join(root, 'config.yaml'), ...folders, ...args], {
    env,
    stdio: ['ignore', 'pipe', 'pipe'],
    detached: true,
  });
}

async function installed(root: string, vsix: string): Promise<void> {
  const child = spawnServer(root, ['--install-extension', vsix]);
  const said = saidBy(child);
  const [status] = (await once(child, 'exit')) as [number | null];
  if (status !== 0) throw new Error(`${vsix} was not installed:\n${said()}`);
}

function saidBy(child: ChildProcess): () => string {
  let said = '';
  for (const stream of [child.stdout, child.stderr])
    stream?.on('data', (part: Buffer) => {
      said += part.toString();
    });
  return () => said;
}

/** The address, when the server says that it listens. */
function listening(child: ChildProcess): Promise<string> {
  const said = saidBy(child);
  return new Promise((done, fail) => {
    const look = (): void => {
      const [, url] = /HTTP server listening on (http:\S+?)\/?\s/.exec(said()) ?? [];
      if (url !== undefined) done(url);
    };
    child.stdout?.on('data', look);
    child.stderr?.on('data', look);
    child.once('exit', (status) => fail(new Error(`the workbench ended with ${status}:\n${said()}`)));
  });
}

/** From the system's table of processes: of one group, by what they were started with. */
function processesOfGroup(group: number, words: string): number[] {
  const ids = readdirSync('/proc').filter((name) => /^\d+$/.test(name));
  return ids
    .filter((id) => groupOf(id) === group && textOf(`/proc/${id}/cmdline`).includes(words))
    .map(Number);
}

/** `id (name) state parent group …`; names may hold brackets. */
function groupOf(id: string): number {
  const behindName = textOf(`/proc/${id}/stat`).replace(/^.*\) /s, '');
  return Number(behindName.split(' ')[2]);
}

/** Empty for a process that has ended meanwhile. */
function textOf(file: string): string {
  try {
    return readFileSync(file, 'utf8');
  } catch {
    return '';
  }
}
