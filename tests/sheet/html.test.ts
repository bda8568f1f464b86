import { expect, test } from 'vitest';
import { checkReading, read, typesOf } from './sheets.ts';

test('comments leave the stream, other HTML stays as text', () => {
  const sheet = read(
    '<!-- secret -->\n\na <!-- secret --> b <i>c</i>\n\n<div>\nd <!-- secret\nsecret --> e\n</div>\n\n' +
      '```electrodes\n```\n\n<!-- papervolt: new page -->\n<!-- secret',
  );
  const shown = JSON.stringify(
    sheet.tokens.map(({ content, children }) => [content, children?.map((c) => c.content)]),
  );
  expect(shown).not.toContain('secret');
  expect(typesOf(sheet.tokens)).toBe(
    'sheet paragraph_open [text html text html] paragraph_close html html block new_page',
  );
});

test('findings', () => {
  checkReading(`
    a <b>b</b> <br>
      ^^^ warning html-escaped
               ^^^^ warning html-escaped

    a <!-- begun
      ^^^^ error comment-open

    and ended -->

    > <!-- never
      ^^^^ warning comment-unclosed
    > closed
  `);
});
