// Draws the picture of the README, docs/hollow-ring.svg: the solved setup `floating` of samples/hollow-ring.md, as teachers get it.
import { readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const root = dirname(dirname(fileURLToPath(import.meta.url)));
// Bundled CommonJS packages ask for Node's own modules through `require`, which an ES module has to make first.
const requireBanner =
  "import { createRequire as makeRequire } from 'node:module'; const require = makeRequire(import.meta.url);";

const { readSheet, resolveSetups, solveSetup, solvedScene, renderSvg } = await bundled({
  'sheet/read-sheet.ts': 'readSheet',
  'setup/resolve.ts': 'resolveSetups',
  'setup/solve-setup.ts': 'solveSetup',
  'drawing/solved-scene.ts': 'solvedScene',
  'drawing/svg.ts': 'renderSvg',
});

const text = readFileSync(join(root, 'samples/hollow-ring.md'), 'utf8');
const { blocks } = readSheet({ name: 'hollow-ring.md', text });
const [setup] = resolveSetups(blocks.map(({ block }) => block));
const { solved } = solveSetup(setup, { gap: 1e-8, traces: true, samples: [] });
const parts = ['electrodes', 'probes', 'equipotentials', 'field-lines', 'values'];
const scene = solvedScene(setup, solved, { parts, audience: 'teachers', scale: 0.8 });
// The page around the picture may be dark; the paper is not.
const svg = renderSvg(scene, { id: 'hollow-ring' }).replace('<svg ', '<svg style="background:#fff" ');
writeFileSync(join(root, 'docs/hollow-ring.svg'), svg);

/** Functions of the core by file, bundled, since Node does not read TypeScript. */
async function bundled(wanted) {
  const contents = Object.entries(wanted)
    .map(([file, name]) => `export { ${name} } from './shared/${file}';`)
    .join('\n');
  const outfile = join(root, '.cache/readme-picture.mjs');
  const banner = { js: requireBanner };
  await build({
    stdin: { contents, resolveDir: root },
    bundle: true,
    format: 'esm',
    platform: 'node',
    banner,
    outfile,
  });
  return import(pathToFileURL(outfile).href);
}
