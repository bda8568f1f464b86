import fc from 'fast-check';
import MarkdownIt from 'markdown-it';
import { describe, expect, test } from 'vitest';
import { isSheet } from '../../shared/sheet/read-sheet.ts';
import type { Sheet } from '../../shared/sheet/sheet.ts';
import { dedent } from '../check.ts';
import { checkAsItStands, read } from './sheets.ts';

const linesOf = (sheet: Sheet): readonly (readonly string[])[] =>
  sheet.blocks.map(({ block }) => block.excerpt.lines.map((line) => line.text));

function checkPlaces(sheet: Sheet): void {
  for (const { block } of sheet.blocks) {
    for (const { text, at } of [...block.excerpt.lines, block.excerpt.head]) {
      expect(sheet.source.text.slice(at, at + text.length)).toBe(text);
    }
  }
}

describe('blocks are found as Markdown finds them', () => {
  test.each([
    ['plain', '```electrodes bars\npaper\n```', [['paper']]],
    ['tildes', '~~~~ electrodes\na\n~~~\nb\n~~~~\n', [['a', '~~~', 'b']]],
    ['unclosed', 'x\n\n```electrodes\na\n\nb', [['a', '', 'b']]],
    ['in a list', '1. x\n\n   ```electrodes\n   a\n     b\n   ```', [['a', '  b']]],
    ['in a quotation', '> ```electrodes\n> a\n>b\n> ```', [['a', 'b']]],
    ['in a list in a quotation', '> - ```electrodes\n>   a\n>\n>   b\n>   ```', [['a', '', 'b']]],
    ['CRLF', '```electrodes\r\na\r\nb\r\n```\r\n', [['a', 'b']]],
    ['CR', '```electrodes\ra\rb\r```\r', [['a', 'b']]],
    ['a byte order mark', '\ufeff```electrodes\na\n```', [['a']]],
    ['a tab as an item’s space', '-\t```electrodes\n\ta\n\t  b\n\t```', [['a', '  b']]],
    ['a tab cut in two', '- ```electrodes\n\ta\n  ```', [['a']]],
    ['interrupting a paragraph', 'x\n```electrodes\na\n```', [['a']]],
    ['unclosed in its item', '- ```electrodes\n  a\n\nout', [['a', '']]],
    ['two', '```electrodes a\n1\n```\n```electrodes b\n2\n```', [['1'], ['2']]],
    ['commented out', '<!--\n```electrodes\na\n```\n-->', []],
    ['as code', '    ```electrodes\n    a\n', []],
    ['in another fence', '````\n```electrodes\n```\n````', []],
    ['another word', '```electrodes-x\n```', []],
  ])('%s', (_, text, expected) => {
    const sheet = read(text);
    expect(linesOf(sheet)).toEqual(expected);
    checkPlaces(sheet);
    expect(isSheet(sheet)).toBe(expected.length > 0);
  });
});

test('the head is what follows the word; the span runs from fence to fence', () => {
  const sheet = read('> 1. ```electrodes  near like bars  \n>    a\n>    ```\n');
  const excerpt = sheet.blocks[0]?.block.excerpt;
  expect(excerpt?.head.text).toBe('near like bars');
  expect(sheet.source.text.slice(excerpt?.span.from, excerpt?.span.to)).toBe(
    '```electrodes  near like bars  \n>    a\n>    ```',
  );
  checkPlaces(sheet);
});

test('a word that is nearly right is asked about, also where it is the only one', () => {
  checkAsItStands(`
    \`\`\`electrode bars
       ^^^^^^^^^ warning fence-word \`electrodes\`?
       => \`\`\`electrodes bars
    \`\`\`

    > ~~~ Electrodes
          ^^^^^^^^^^ warning fence-word
          => > ~~~ electrodes
    > ~~~

    \`\`\`electronics
    \`\`\`
  `);
});

test('an unclosed block is named', () => {
  checkAsItStands(`
    \`\`\`electrodes
    ^^^ note fence-unclosed no closing
    paper
  `);
});

test('other texts are left alone', () => {
  const text = dedent(`
    ---
    titel: x
    ---
    ::: teachers
    ?{M} <b>bold</b> [2]
    :::
  `);
  const sheet = read(text);
  expect(sheet.findings).toEqual([]);
  expect(sheet.tokens).toEqual([]);
  expect(sheet.passages).toEqual([]);
});

test('a text is a sheet where markdown-it finds a block in it, but for its front matter', () => {
  const plain = new MarkdownIt({ html: true });
  const line = fc.constantFrom(
    ...[
      '---',
      '...',
      '```electrodes',
      '```electrodes `x',
      '~~~ electrodes',
      '```',
      '````',
      '',
      '- a',
      '  b',
      '    c',
    ],
    ...[
      '> d',
      '<!--',
      '-->',
      '<div>',
      '[a]:',
      '[a]: b',
      "'c",
      '| a |',
      '|---|',
      'key: |',
      '  ```electrodes',
      'x\u2028`',
    ],
  );
  let [sheets, others] = [0, 0];
  fc.assert(
    fc.property(fc.boolean(), fc.array(line, { minLength: 1, maxLength: 9 }), (front, lines) => {
      const text = `${front ? '---\n' : ''}${lines.join('\n')}`;
      const body = text.replace(/^---\n(?:[^\n]*\n)*?(?:---|\.\.\.)(?:\n|$)/u, '');
      const found = plain
        .parse(body, {})
        .some(({ type, info }) => type === 'fence' && /^\s*electrodes(?!\S)/u.test(info));
      if (found) sheets++;
      else others++;
      expect(read(text).tokens.length > 0).toBe(found);
    }),
    { numRuns: 1500 },
  );
  expect(Math.min(sheets, others)).toBeGreaterThan(150);
});

/** A block's lines wrapped in quotations and lists, with tabs and spaces as they come. */
const nesting = fc.record({
  wraps: fc.array(fc.constantFrom('>', '> ', '- ', '1. ', '-\t', '>\t', '  '), { maxLength: 4 }),
  lines: fc.array(
    fc
      .array(fc.constantFrom('a', ' ', '\t', '𝔼', '`', '~', ':::', '>', '- ', '#', '\0'), { maxLength: 6 })
      .map((p) => p.join('')),
    { maxLength: 5 },
  ),
  fence: fc.constantFrom('```', '~~~', '`````'),
  closed: fc.boolean(),
  lineEnd: fc.constantFrom('\n', '\r\n', '\r'),
  indents: fc.array(fc.constantFrom('', ' ', '\t', '    '), { minLength: 5, maxLength: 5 }),
});

test('each line is the one that markdown-it sees, at its place in the file', () => {
  const plain = new MarkdownIt({ html: true });
  let seen = 0;
  fc.assert(
    fc.property(nesting, ({ wraps, lines, fence, closed, lineEnd, indents }) => {
      const first = wraps.join('');
      const next = wraps.map((wrap) => (wrap.startsWith('>') ? wrap : wrap.replace(/[^\t]/gu, ' '))).join('');
      const body = lines.map((line, i) => next + (indents[i] ?? '') + line);
      const text = [
        `${first}${fence}electrodes x`,
        ...body,
        ...(closed ? [next + fence] : []),
        '',
        'end',
      ].join(lineEnd);
      const sheet = read(text);
      const fences = plain
        .parse(text, {})
        .filter((t) => t.type === 'fence' && /^\s*electrodes(?!\S)/u.test(t.info));
      expect(sheet.blocks.length).toBe(fences.length);
      checkPlaces(sheet);
      for (const [i, token] of fences.entries()) {
        seen++;
        const shown = token.content.split('\n');
        if (shown.at(-1) === '') shown.pop();
        const texts = linesOf(sheet)[i]?.map((line) => line.replaceAll('\0', '\ufffd')) ?? [];
        expect(texts.length).toBe(shown.length);
        // A tab that is cut in two leaves spaces that are not in the file.
        for (const [k, line] of texts.entries()) {
          const whole = shown[k] ?? '';
          expect(whole.endsWith(line)).toBe(true);
          expect(whole.slice(0, whole.length - line.length)).toMatch(/^ {0,3}$/u);
        }
      }
    }),
    { numRuns: 400 },
  );
  expect(seen).toBeGreaterThan(200);
});
