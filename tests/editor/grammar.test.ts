/** The grammar of sheets inside the editor's own grammar of Markdown: fences in lists and quotations, inserts and passages among text. */
import { join } from 'node:path';
import { expect, test, vi } from 'vitest';
import { runMarkedText } from '../syntaxes/grammars.ts';
import { codeServer, vscodeWeb } from './places.ts';

const editors = {
  'the workbench on Node': join(codeServer, 'lib/vscode/extensions'),
  'the oldest editor': join(vscodeWeb, 'extensions'),
};

test.each(Object.entries(editors))('a sheet with marks, in %s', async (_, extensions) => {
  // Languages of other fences have no grammar here, of which the engine complains each time.
  vi.spyOn(console, 'warn').mockReturnValue(undefined);
  const others = ['markdown-basics/syntaxes/markdown', 'html/syntaxes/html', 'html/syntaxes/html-derivative'];
  const { marks, failures } = await runMarkedText(
    'editor/syntaxes/sheet.md',
    others.map((grammar) => join(extensions, `${grammar}.tmLanguage.json`)),
  );
  expect(failures).toEqual([]);
  expect(marks).toBeGreaterThan(70);
});
