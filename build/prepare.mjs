// Makes a fresh clone ready, and does nothing on the next run: `npm ci` when the lock file changed, a build when a source changed.
// Uses nothing but Node, since it runs before anything is installed.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const leastNode = [20, 20];
const sourceFolders = ['shared', 'server', 'client', 'syntaxes', 'build'];
const sourceFiles = ['package.json', 'package-lock.json', 'tsconfig.base.json'];

checkNode();
once('node_modules/.papervolt-installed', hashOf(['package-lock.json']), install);
once('dist/.papervolt-built', hashOf([...sourceFiles, ...sourceFolders.flatMap(filesBelow)]), build);

function checkNode() {
  const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
  if (major > leastNode[0] || (major === leastNode[0] && minor >= leastNode[1])) return;
  fail(`Papervolt needs Node ${leastNode.join('.')} or newer; this is Node ${process.versions.node}.`);
}

/** Runs `work` unless the stamp file already holds the hash of what the work depends on. */
function once(stamp, hash, work) {
  const path = join(root, stamp);
  if (existsSync(path) && readFileSync(path, 'utf8') === hash) return;
  work();
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, hash);
}

function install() {
  console.error('Papervolt: installing the packages of package-lock.json …');
  const npm = process.env.npm_execpath;
  const flags = ['ci', '--include=dev', '--ignore-scripts', '--no-audit', '--no-fund', '--loglevel=error'];
  const done = npm
    ? run(process.execPath, [npm, ...flags])
    : run(process.platform === 'win32' ? 'npm.cmd' : 'npm', flags);
  if (!done)
    fail(
      'The packages could not be installed (see above). Check the connection to the npm registry and try again.',
    );
}

function build() {
  console.error('Papervolt: building …');
  if (!run(process.execPath, [join(root, 'build', 'bundle.mjs')])) fail('The build failed (see above).');
}

/** Standard output of a command belongs to its results, so what these print goes to standard error. */
function run(command, args) {
  const shell = process.platform === 'win32' && command.endsWith('.cmd');
  return spawnSync(command, args, { cwd: root, stdio: ['ignore', 2, 2], shell }).status === 0;
}

function hashOf(files) {
  const hash = createHash('sha256');
  for (const file of [...files].sort()) {
    hash.update(`${file}\0`);
    hash.update(existsSync(join(root, file)) ? readFileSync(join(root, file)) : 'absent');
  }
  return hash.digest('hex');
}

function filesBelow(folder) {
  const path = join(root, folder);
  if (!existsSync(path)) return [];
  return readdirSync(path, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath ?? entry.path, entry.name).slice(root.length + 1));
}

function fail(message) {
  console.error(message);
  process.exit(2);
}
