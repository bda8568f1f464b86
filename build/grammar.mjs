// Writes what editors colour by, from the core's tables of words: the grammar of a block, the one that finds blocks, inserts and passages in
// Markdown, and what an editor knows of a block as a language. With --print they go to standard output, as one JSON object of file and text.
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { json, load, root } from './core.mjs';

const { words, lineWords, insertHeads, laterWords, columnWords, helpWords, passageWords } = await load(`
  export { words } from './shared/block/words.ts';
  export { lineWords } from './shared/editing/completion/line-words.ts';
  export { insertHeads } from './shared/sheet/inserts/parse-insert.ts';
  export { columnWords, helpWords, laterWords } from './shared/sheet/inserts/figures.ts';
  export { passageWords } from './shared/sheet/markdown/passage-line.ts';
`);

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

const nameCharacters = '[\\p{L}\\p{M}\\p{Nd}-]';
const name = `\\p{L}${nameCharacters}*`;
const whole = (pattern) => `(?<!${nameCharacters})(?:${pattern})(?!${nameCharacters})`;
/** The beginning of a line, or where the marks of lists and quotations end. */
const lineStart = '(?:^|\\G)';

const files = {
  'syntaxes/electrodes.tmLanguage.json': blockGrammar(),
  'syntaxes/sheet.tmLanguage.json': sheetGrammar(),
  'syntaxes/electrodes.language-configuration.json': languageConfiguration(),
};
const texts = Object.entries(files).map(([file, content]) => [file, json(content)]);
if (process.argv.includes('--print')) process.stdout.write(JSON.stringify(Object.fromEntries(texts)));
else for (const [file, text] of texts) writeFileSync(join(root, file), text);

function blockGrammar() {
  const naming = Object.keys(lineWords).filter((word) => lineWords[word].gives || lineWords[word].names);
  const isNaming = ({ word }) => naming.includes(word);
  return {
    name: 'Papervolt electrodes',
    scopeName: 'source.electrodes',
    patterns: [
      { include: '#remark' },
      { include: '#drawn' },
      ...['statement', 'shape'].map((role) => ({
        // The word behind these is a name, whatever it says.
        match: `${lineStart}\\s*(${alternatives(formsOf(role, isNaming))})\\s+(${name})`,
        captures: { 1: { name: `${scopes[role]}.electrodes` }, 2: { name: 'variable.other.electrodes' } },
      })),
      ...['statement', 'shape'].map((role) => ({
        match: `${lineStart}\\s*(${alternatives(formsOf(role))})(?!${nameCharacters})`,
        captures: { 1: { name: `${scopes[role]}.electrodes` } },
      })),
      { include: '#quantity' },
      { include: '#words' },
      { include: '#name' },
      { include: '#signs' },
    ],
    repository: {
      remark: {
        patterns: [
          {
            match: '(#)\\s*(allow)\\s+([a-z][a-z-]*)(?:\\s+(because)(?!\\S))?.*$',
            name: 'comment.line.number-sign.electrodes',
            captures: {
              1: { name: 'punctuation.definition.comment.electrodes' },
              2: { name: 'keyword.other.electrodes' },
              3: { name: 'support.constant.electrodes' },
              4: { name: 'keyword.other.electrodes' },
            },
          },
          {
            match: '(#).*$',
            name: 'comment.line.number-sign.electrodes',
            captures: { 1: { name: 'punctuation.definition.comment.electrodes' } },
          },
        ],
      },
      // Behind `draw` a word that could begin a line is a part of the drawing.
      drawn: {
        begin: `${lineStart}\\s*(draw)(?!${nameCharacters})`,
        beginCaptures: { 1: { name: 'keyword.control.electrodes' } },
        end: '$',
        patterns: [
          { include: '#remark' },
          { name: `${scopes.part}.electrodes`, match: whole(alternatives(formsOf('part'))) },
          { include: '#words' },
          { include: '#name' },
          { include: '#signs' },
        ],
      },
      quantity: {
        match: `([−-]?(?:\\d+(?:\\.\\d+)?|\\.\\d+))(?:\\s*(${units()})(?![\\p{L}\\d]))?`,
        captures: {
          1: { name: 'constant.numeric.electrodes' },
          2: { name: 'keyword.other.unit.electrodes' },
        },
      },
      // Words of several parts first: else the first part of `probe tip` would be taken alone.
      words: { patterns: [...wordRules((form) => form.includes(' ')), ...wordRules(() => true)] },
      name: { name: 'variable.other.electrodes', match: name },
      signs: {
        patterns: [
          { name: 'keyword.operator.electrodes', match: '[×*]' },
          { name: 'punctuation.separator.electrodes', match: ',' },
          { name: 'punctuation.section.parens.electrodes', match: '[()]' },
        ],
      },
    },
  };
}

function wordRules(fits) {
  return Object.entries(scopes).flatMap(([role, scope]) => {
    const forms = formsOf(role).filter(fits);
    return forms.length === 0 ? [] : [{ name: `${scope}.electrodes`, match: whole(alternatives(forms)) }];
  });
}

/** A number's unit, SI prefix included; a cross between two numbers may follow it at once. */
function units() {
  const ohm = '(?:[Ω\\x{2126}]|[Oo]hms?)';
  const one = `[GMkmµμunp]?(?:V|A|${ohm})|[GMkcmµμunp]?m`;
  return [
    `[GMkmµμunp]?${ohm}[ ·]?[cm]?m(?:²|2|\\^2)`,
    '[GMkmµμunp]?V\\s?/\\s?[cm]?m',
    `(?:${one})(?=[x*]\\s*\\d)`,
    one,
    '[°º]|deg(?:ree)?s?',
    'min(?:ute)?s?',
  ].join('|');
}

function sheetGrammar() {
  return {
    name: 'Papervolt sheet',
    scopeName: 'markdown.electrodes',
    injectionSelector: 'L:text.html.markdown -comment -markup.fenced_code -markup.raw -meta.embedded',
    patterns: [
      { include: '#backtick-block' },
      { include: '#tilde-block' },
      { include: '#passage' },
      { include: '#insert' },
    ],
    repository: {
      'backtick-block': block('`'),
      'tilde-block': block('~'),
      passage: {
        patterns: [
          {
            match: `${lineStart}([ \\t]*)(:{3,})[ \\t]*(?:(${alternatives(passageWords)})(?:[ \\t]+(\\S.*?))?)?[ \\t]*$`,
            captures: {
              2: { name: 'punctuation.definition.passage.electrodes' },
              3: { name: 'keyword.control.passage.electrodes' },
              4: { patterns: [{ include: 'source.electrodes#quantity' }, { include: '#option' }] },
            },
          },
        ],
      },
      insert: {
        begin: '(?<!\\\\)([?!])(\\{)',
        beginCaptures: {
          1: { name: 'keyword.operator.insert.electrodes' },
          2: { name: 'punctuation.section.insert.begin.electrodes' },
        },
        end: '(\\})|$',
        endCaptures: { 1: { name: 'punctuation.section.insert.end.electrodes' } },
        name: 'meta.insert.electrodes',
        patterns: [
          { name: 'string.quoted.double.electrodes', match: '["“][^"”\\n]*["”]' },
          {
            // What an insert begins with, unless it is the name of a setup before its dot.
            match: `(?<=\\{)\\s*(${alternatives([...new Set([...insertHeads, ...laterWords])])})(?![\\p{L}\\p{M}\\p{Nd}.-])`,
            captures: { 1: { name: 'keyword.control.insert.electrodes' } },
          },
          { include: '#option' },
          { include: 'source.electrodes#quantity' },
          {
            match: `(\\.)(${alternatives(['strength', 'current', 'resistance'])})(?!${nameCharacters})`,
            captures: {
              1: { name: 'punctuation.accessor.electrodes' },
              2: { name: 'support.constant.electrodes' },
            },
          },
          { include: 'source.electrodes#name' },
          { name: 'punctuation.separator.electrodes', match: '[,.:]' },
        ],
      },
      option: {
        name: 'keyword.other.electrodes',
        match: whole(
          alternatives(
            longestFirst([
              ...columnWords.filter((word) => word !== 'V' && word !== 'r'),
              ...helpWords,
              ...formsOf('part'),
              ...['no unit', 'as', 'of V0', 'to', 'from', 'at', 'against', 'help', 'hinted', 'sets'],
              ...['half size', 'full size', 'lines', 'line', 'box'],
            ]),
          ),
        ),
      },
    },
  };
}

/** A fence of one mark. It may stand deeper than its list demands by up to three blanks. */
function block(mark) {
  return {
    begin: `${lineStart}[ ]{0,3}(${mark}{3,})[ \\t]*(electrodes)(?:[ \\t]+([^${mark}\\n]*))?$`,
    beginCaptures: {
      1: { name: 'punctuation.definition.markdown' },
      2: { name: 'fenced_code.block.language.markdown' },
      3: {
        name: 'fenced_code.block.language.attributes.markdown',
        patterns: [
          { name: 'keyword.other.electrodes', match: whole('like') },
          { name: 'entity.name.section.electrodes', match: name },
        ],
      },
    },
    end: `${lineStart}[ \\t]*(\\1${mark}*)[ \\t]*$`,
    endCaptures: { 1: { name: 'punctuation.definition.markdown' } },
    name: 'markup.fenced_code.block.markdown',
    contentName: 'meta.embedded.block.electrodes',
    patterns: [{ include: 'source.electrodes' }],
  };
}

function languageConfiguration() {
  return {
    comments: { lineComment: '#' },
    brackets: [['(', ')']],
    autoClosingPairs: [{ open: '(', close: ')', notIn: ['comment'] }],
    surroundingPairs: [['(', ')']],
    // A name with its hyphens, in any alphabet, or a number with its decimals.
    wordPattern: { pattern: `${name}|\\d+(?:\\.\\d+)?`, flags: 'u' },
  };
}

/** Words of a role with their other spellings, longest first, so that `right of` wins over `right`. */
function formsOf(role, fits = () => true) {
  const forms = words
    .filter((entry) => entry.role === role && fits(entry))
    .flatMap(({ word, spellings }) => [word, ...spellings]);
  return longestFirst(forms);
}

function longestFirst(forms) {
  return [...new Set(forms)].sort((a, b) => b.length - a.length || (a < b ? -1 : 1));
}

/** Blanks between the parts of a word may be of any number. */
function alternatives(forms) {
  return forms.map((form) => form.replace(/[.*+?^${}()|[\]\\]/g, '\\$&').replace(/ +/g, '\\s+')).join('|');
}
