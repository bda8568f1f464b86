// What build scripts share: parts of the core, bundled in memory, since Node does not read TypeScript; and one way to write JSON.
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

/** JSON as the formatter of this house writes it: a list that fits stands on one line, unless it holds objects. */
export function json(content) {
  return `${written(content, '', 0)}\n`;
}

const lineWidth = 110;

/** `before`: how many characters stand before the value on its line. */
function written(value, indent, before) {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const inner = `${indent}  `;
  if (!Array.isArray(value)) {
    const members = Object.entries(value).map(([key, member]) => {
      const start = `${inner}${JSON.stringify(key)}: `;
      return start + written(member, inner, start.length);
    });
    return `{\n${members.join(',\n')}\n${indent}}`;
  }
  const line = `[${value.map((item) => written(item, '', 0)).join(', ')}]`;
  if (!line.includes('\n') && before + line.length < lineWidth) return line;
  return `[\n${value.map((item) => inner + written(item, inner, inner.length)).join(',\n')}\n${indent}]`;
}
