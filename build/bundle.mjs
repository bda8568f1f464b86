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

await build({
  absWorkingDir: root,
  entryPoints: {
    papervolt: 'server/command-line/main.ts',
    start: 'server/command-line/start.ts',
    bench: 'server/bench/main.ts',
    'language-server': 'server/language/main.ts',
  },
  outdir: join(root, 'dist'),
  outExtension: { '.js': '.mjs' },
  bundle: true,
  platform: 'node',
  target: 'node20.20',
  format: 'esm',
  banner: { js: commonJsBanner },
  legalComments: 'linked',
  logLevel: 'warning',
});
