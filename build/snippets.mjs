// Writes the snippets of the extension from the core's table of templates. With --print the text goes to standard output.
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { json, load, root } from './core.mjs';

/** The languages, by where a template can stand. */
const languages = { sheet: 'markdown', block: 'papervolt-electrodes' };

const { snippetText, templates } = await load(
  "export { snippetText } from './shared/editing/completion/completion.ts'; export { templates } from './shared/editing/completion/templates.ts';",
);
const snippets = templates.map(({ title, prefix, where, lines }) => [
  title,
  { scope: languages[where], prefix, body: snippetText(lines.join('\n')).split('\n') },
]);
const text = json(Object.fromEntries(snippets));
if (process.argv.includes('--print')) process.stdout.write(text);
else writeFileSync(join(root, 'syntaxes/papervolt.code-snippets'), text);
