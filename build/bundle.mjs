// Bundles the programs of `dist/`, each one file that needs no node_modules at run time.
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const root = dirname(dirname(fileURLToPath(import.meta.url)));

// Bundled CommonJS packages ask for Node's own modules through `require`, which an ES module has to make first.
const requireBanner =
  "import { createRequire as makeRequire } from 'node:module'; const require = makeRequire(import.meta.url);";

await build({
  absWorkingDir: root,
  entryPoints: {
    papervolt: 'server/command-line/main.ts',
    start: 'server/command-line/start.ts',
    bench: 'server/bench/main.ts',
  },
  outdir: join(root, 'dist'),
  outExtension: { '.js': '.mjs' },
  bundle: true,
  platform: 'node',
  target: 'node20.9',
  format: 'esm',
  banner: { js: requireBanner },
  legalComments: 'linked',
  logLevel: 'warning',
});
