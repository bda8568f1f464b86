// Bundles the programs of `dist/`, each one file that needs no node_modules at run time.
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const root = dirname(dirname(fileURLToPath(import.meta.url)));

// Bundled CommonJS packages expect `require` and `__filename`, which an ES module has to make first.
const commonJsBanner = [
  "import { createRequire as makeRequire } from 'node:module';",
  "import { fileURLToPath as pathOfUrl } from 'node:url';",
  'const require = makeRequire(import.meta.url);',
  'const __filename = pathOfUrl(import.meta.url);',
].join('\n');

const common = {
  absWorkingDir: root,
  outdir: join(root, 'dist'),
  bundle: true,
  legalComments: 'linked',
  // An error in a minified program is reported with its line.
  lineLimit: 240,
  logLevel: 'warning',
};

const nodeModule = {
  ...common,
  outExtension: { '.js': '.mjs' },
  platform: 'node',
  format: 'esm',
  banner: { js: commonJsBanner },
};

/** The oldest editor that the manifest names has Node 20.9, and a browser engine like Chrome 122. */
const editorNode = 'node20.9';
const editorBrowser = 'chrome122';

/** One file for Node and for browsers: what asks for Node is wrapped, and runs nowhere else. */
const anywhere = {
  ...common,
  platform: 'node',
  format: 'cjs',
  conditions: ['browser'],
  target: [editorNode, editorBrowser],
  external: ['vscode'],
  // The form of this package for browsers is the smaller one and runs in Node as well.
  alias: { yaml: join(root, 'node_modules/yaml/browser/index.js') },
  banner: {
    js: "const programUrl = typeof __filename === 'string' ? require('node:url').pathToFileURL(__filename).href : '';",
  },
  define: { 'import.meta.url': 'programUrl' },
  minify: true,
};

const bundles = [
  {
    ...nodeModule,
    entryPoints: {
      papervolt: 'server/command-line/main.ts',
      start: 'server/command-line/start.ts',
      bench: 'server/bench/main.ts',
    },
    target: 'node20.20',
  },
  {
    ...nodeModule,
    entryPoints: { 'language-server': 'server/language/main.ts' },
    target: editorNode,
    minify: true,
  },
  {
    ...anywhere,
    entryPoints: { extension: 'client/main.ts', 'language-server': 'server/language/anywhere.ts' },
  },
  {
    ...common,
    entryPoints: { panel: 'client/panel/page/main.ts' },
    platform: 'browser',
    format: 'iife',
    target: editorBrowser,
    minify: true,
  },
];

for (const bundle of bundles) await build(bundle);
