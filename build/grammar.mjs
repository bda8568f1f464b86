// Writes syntaxes/electrodes.tmLanguage.json from the table of words. With --print the text goes to standard output.
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { load, root } from './core.mjs';

/** What a word means to a colour theme, by its role in the table. */
const scopes = {
  statement: 'keyword.control',
  shape: 'storage.type',
  terminal: 'constant.language',
  source: 'support.type',
  chemistry: 'support.constant',
  option: 'keyword.other',
  place: 'keyword.operator.word',
  direction: 'support.constant',
  part: 'support.constant',
  audience: 'support.constant',
  format: 'support.constant',
  head: 'keyword.other',
};

const { words } = await load("export { words } from './shared/block/words.ts';");
const text = `${JSON.stringify(grammar(), null, 2)}\n`;
if (process.argv.includes('--print')) process.stdout.write(text);
else writeFileSync(join(root, 'syntaxes/electrodes.tmLanguage.json'), text);

function grammar() {
  const statements = formsOf('statement', 'shape');
  return {
    name: 'Papervolt electrodes',
    scopeName: 'source.papervolt',
    patterns: [
      { name: 'comment.line.number-sign.papervolt', match: '#.*$' },
      {
        // The word behind a shape or a statement is a name, whatever it says.
        match: `^\\s*(${alternatives(statements)})(?![\\p{L}\\d-])(?:\\s+(\\p{L}[\\p{L}\\d-]*))?`,
        captures: {
          1: { name: 'keyword.control.papervolt' },
          2: { patterns: [{ include: '#words' }, { include: '#name' }] },
        },
      },
      { include: '#quantity' },
      { include: '#words' },
      { include: '#name' },
    ],
    repository: {
      quantity: {
        match:
          '([−-]?\\d+(?:\\.\\d+)?)(?:\\s*([kMmµμun]?(?:V|A|Ω|ohms?|m)(?:²)?|[cdk]m|°|deg(?:rees)?)(?![\\p{L}\\d-]))?',
        captures: { 1: { name: 'constant.numeric.papervolt' }, 2: { name: 'keyword.other.unit.papervolt' } },
      },
      words: {
        patterns: Object.entries(scopes).map(([role, scope]) => ({
          name: `${scope}.papervolt`,
          match: `(?<![\\p{L}\\d-])(?:${alternatives(formsOf(role))})(?![\\p{L}\\d-])`,
        })),
      },
      name: { name: 'variable.other.papervolt', match: '\\p{L}[\\p{L}\\d-]*' },
    },
  };
}

/** Words of some roles with their other spellings, longest first, so that `right of` wins over `right`. */
function formsOf(...roles) {
  const forms = words
    .filter(({ role }) => roles.includes(role))
    .flatMap(({ word, spellings }) => [word, ...spellings]);
  return [...new Set(forms)].sort((a, b) => b.length - a.length || (a < b ? -1 : 1));
}

/** Blanks between the parts of a word may be of any number. */
function alternatives(forms) {
  return forms.map((form) => form.replace(/[.*+?^${}()|[\]\\]/g, '\\$&').replace(/ +/g, '\\s+')).join('|');
}
