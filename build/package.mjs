// Packs the extension into dist/papervolt.vsix, offline: lays out what belongs in it in .cache/vsix and has that folder packed.
// With --list the files are laid out and their names printed, and nothing is packed.
import { spawnSync } from 'node:child_process';
import {
  cpSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const stage = join(root, '.cache/vsix');
const out = join(root, 'dist/papervolt.vsix');

/** Bytes. */
const largest = 1_000_000;

const programs = ['extension.js', 'language-server.js', 'panel.js'];

const {
  scripts,
  dependencies,
  devDependencies,
  bin,
  files,
  private: _,
  ...manifest
} = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));

rmSync(stage, { recursive: true, force: true });
mkdirSync(stage, { recursive: true });
// All that lies here is packed.
writeFileSync(join(stage, '.vscodeignore'), '');
writeFileSync(join(stage, 'package.json'), `${JSON.stringify(manifest, null, 2)}\n`);
for (const program of programs) copy(`dist/${program}`, [`dist/${program}`, `dist/${program}.LEGAL.txt`]);
for (const file of ['package.nls.json', 'LICENSE', 'CHANGELOG.md', 'THIRD-PARTY.md']) copy(file);
// The picture there is one of the project's own page.
for (const page of readdirSync(join(root, 'docs'))) if (!page.endsWith('.svg')) copy(`docs/${page}`);
for (const folder of ['client/media', 'syntaxes']) copy(folder);
for (const path of pathsIn(manifest.contributes)) copy(path);
// The extension's own page; the one of the project is about the command line too, and shows a picture.
cpSync(join(root, 'client/README.md'), join(stage, 'README.md'));

if (process.argv.includes('--list')) for (const file of staged()) console.log(file);
else pack();

function pack() {
  const vsce = join(root, 'node_modules/@vscode/vsce/vsce');
  // Links in the page lead into the extension's folder: there is no site to lead to.
  const flags = ['--no-dependencies', '--no-rewrite-relative-links', '--allow-missing-repository'];
  const { status } = spawnSync(process.execPath, [vsce, 'package', ...flags, '--out', out], {
    cwd: stage,
    stdio: ['ignore', 'inherit', 'inherit'],
  });
  if (status !== 0) process.exit(status ?? 1);
  const { size } = statSync(out);
  console.log(`dist/papervolt.vsix: ${size} bytes, ${largest} allowed.`);
  if (size > largest) process.exit(1);
}

/** A file or folder; of several names, those that exist, the first must. */
function copy(path, paths = [path]) {
  if (!existsSync(join(root, path)))
    throw new Error(`${path} is to be packed and is not there: npm run build`);
  for (const each of paths)
    if (existsSync(join(root, each))) cpSync(join(root, each), join(stage, each), { recursive: true });
}

/** Files that the manifest names, wherever it does. */
function pathsIn(value) {
  if (typeof value === 'string')
    return /^\.\/|\.(md|svg|png|json)$/.test(value) ? [value.replace(/^\.\//, '')] : [];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(pathsIn) : [];
}

function staged() {
  return readdirSync(stage, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath ?? entry.path, entry.name).slice(stage.length + 1))
    .sort();
}
