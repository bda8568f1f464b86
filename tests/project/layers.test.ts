/** The layers of the core hold: what each room imports is read from its files, and the number of files read is asserted. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const root = resolve(dirname(fileURLToPath(import.meta.url)), '../..');

/** A room may import itself, these rooms, and (field, sheet and setup alone) the named packages. */
const allowed: Readonly<Record<string, readonly string[]>> = {
  text: [],
  field: ['delaunator', '@kninnug/constrainautor', 'robust-predicates'],
  quantity: ['text'],
  findings: ['text'],
  block: ['text', 'quantity', 'findings'],
  setup: ['text', 'quantity', 'findings', 'block', 'field'],
  drawing: ['text', 'quantity', 'findings', 'block', 'field', 'setup'],
  sheet: ['text', 'quantity', 'findings', 'block', 'field', 'setup', 'drawing', 'markdown-it', 'yaml'],
  checks: ['text', 'quantity', 'findings', 'block', 'field', 'setup', 'drawing', 'sheet'],
  editing: ['text', 'quantity', 'findings', 'block', 'field', 'setup', 'drawing', 'sheet', 'checks'],
};

function filesBelow(folder: string): string[] {
  if (!existsSync(join(root, folder))) return [];
  return readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith('.ts') && !entry.name.endsWith('.d.ts'))
    .map((entry) => join(entry.parentPath, entry.name));
}

function importsOf(file: string): string[] {
  const text = readFileSync(file, 'utf8');
  const pattern =
    /(?:^|\n)\s*(?:import|export)\s(?:[^'";]*?\sfrom\s)?['"]([^'"]+)['"]|import\(\s*['"]([^'"]+)['"]\s*\)/g;
  return [...text.matchAll(pattern)].map((match) => match[1] ?? match[2] ?? '');
}

/** `shared/block/parser.ts` importing `../text/span.ts` → `text`; a package keeps its name. */
function targetOf(file: string, specifier: string): string {
  if (!specifier.startsWith('.')) return specifier;
  return relative(root, resolve(dirname(file), specifier))
    .split(sep)
    .join('/');
}

/** The page of the panel runs in a web page: there is no editor in it. `markdown-it` is named for its types. */
function packagesOfClient(path: string): readonly string[] {
  if (path.startsWith('client/panel/page/')) return [];
  const common = ['vscode', 'vscode-languageclient', 'markdown-it'];
  if (path === 'client/server-process.ts') return [...common, 'vscode-languageclient/node'];
  return path === 'client/server-worker.ts' ? [...common, 'vscode-languageclient/browser'] : common;
}

describe('layers', () => {
  const rooms = Object.keys(allowed);
  const core = filesBelow('shared');

  it('reads every file of the core', () => {
    expect(core.length).toBeGreaterThan(150);
    expect(filesBelow('server').length).toBeGreaterThan(5);
    expect(filesBelow('client').length).toBeGreaterThan(30);
    const withImports = core.filter((file) => importsOf(file).length > 0);
    expect(withImports.length).toBeGreaterThan(core.length / 2);
  });

  it.each(rooms)('shared/%s imports only what lies below it', (room) => {
    const wrong: string[] = [];
    for (const file of core) {
      const path = relative(root, file).split(sep).join('/');
      if (!path.startsWith(`shared/${room}/`)) continue;
      for (const specifier of importsOf(file)) {
        const target = targetOf(file, specifier);
        const name = target.startsWith('shared/') ? (target.split('/')[1] ?? '') : target;
        if (name !== room && !(allowed[room] ?? []).includes(name)) wrong.push(`${path} imports ${target}`);
      }
    }
    expect(wrong).toEqual([]);
  });

  it('every file of the core lies in a room or is the door', () => {
    const strays = core
      .map((file) => relative(root, file).split(sep).join('/'))
      .filter((path) => !rooms.some((room) => path.startsWith(`shared/${room}/`)));
    expect(strays).toEqual(['shared/index.ts']);
  });

  it('server and client enter the core by its door alone', () => {
    const wrong: string[] = [];
    for (const file of [...filesBelow('server'), ...filesBelow('client')]) {
      const path = relative(root, file).split(sep).join('/');
      for (const specifier of importsOf(file)) {
        const target = targetOf(file, specifier);
        if (target.startsWith('shared/') && target !== 'shared/index.ts')
          wrong.push(`${path} imports ${target}`);
      }
    }
    expect(wrong).toEqual([]);
  });

  it('the client sees the door, the editor, and the language client where a server is started; nothing of the server', () => {
    const files = filesBelow('client');
    const wrong: string[] = [];
    for (const file of files) {
      const path = relative(root, file).split(sep).join('/');
      for (const specifier of importsOf(file)) {
        const target = targetOf(file, specifier);
        const isOurs = target === 'shared/index.ts' || target.startsWith('client/');
        if (!isOurs && !packagesOfClient(path).includes(target)) wrong.push(`${path} imports ${target}`);
      }
    }
    expect(files.length).toBeGreaterThan(30);
    expect(wrong).toEqual([]);
  });

  it('the language client is loaded by those files alone that are themselves loaded when a server starts', () => {
    const eager = filesBelow('client')
      .map((file) => relative(root, file).split(sep).join('/'))
      .filter((path) =>
        /^import (?!type)[^;]*'vscode-languageclient/m.test(readFileSync(join(root, path), 'utf8')),
      );
    expect(eager.sort()).toEqual([
      'client/language-client.ts',
      'client/server-process.ts',
      'client/server-worker.ts',
    ]);
    const entry = importsOf(join(root, 'client/main.ts'));
    expect(readFileSync(join(root, 'client/main.ts'), 'utf8')).not.toMatch(/^import .*'\.\/server-/m);
    expect(entry).toContain('./server-process.ts');
  });

  it('has no import cycles', () => {
    const graph = new Map(
      core.map((file) => [
        file,
        importsOf(file)
          .filter((s) => s.startsWith('.'))
          .map((s) => resolve(dirname(file), s)),
      ]),
    );
    const done = new Set<string>();
    const cycles: string[] = [];
    const visit = (file: string, path: readonly string[]): void => {
      if (path.includes(file))
        cycles.push([...path.slice(path.indexOf(file)), file].map((f) => relative(root, f)).join(' → '));
      if (path.includes(file) || done.has(file)) return;
      for (const next of graph.get(file) ?? []) visit(next, [...path, file]);
      done.add(file);
    };
    for (const file of core) visit(file, []);
    expect(cycles).toEqual([]);
  });
});
