// Loads parts of the core into a build script: bundled in memory, since Node does not read TypeScript.
import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

export const root = dirname(dirname(fileURLToPath(import.meta.url)));

/** The module that `contents` describes; its paths count from the project's folder. */
export async function load(contents) {
  const { outputFiles } = await build({
    stdin: { contents, resolveDir: root },
    bundle: true,
    format: 'esm',
    write: false,
  });
  return import(`data:text/javascript;base64,${Buffer.from(outputFiles[0].contents).toString('base64')}`);
}
