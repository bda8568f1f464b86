import { describe, expect, test } from 'vitest';
import type { Sheet } from '../../shared/sheet/sheet.ts';
import { checkReading, cut, read, typesOf, withBlock } from './sheets.ts';

const passagesOf = (sheet: Sheet): readonly string[] =>
  sheet.passages.map(({ kind, readers }) => `${kind}: ${readers.join(' ')}`);

test('readers of passages, and of passages in passages', () => {
  const sheet = read(
    withBlock(`
      ::: teachers
      ::: pupils
      nobody
      :::
      :::
      ::::: safety
      ::: students
      x
      :::
      :::::
      ::: support
      :::
      ::: hint
      :::
      ::: answer
      :::
    `),
  );
  expect(sheet.findings).toEqual([]);
  expect(passagesOf(sheet)).toEqual([
    'teachers: teachers',
    'pupils: ',
    'safety: pupils teachers technicians',
    'pupils: pupils',
    'support: pupils teachers',
    'hint: pupils teachers',
    'answer: teachers',
  ]);
});

test('room for answers', () => {
  const sheet = read(withBlock('::: answer\n:::\n::: answer 4 lines\n:::\n::: answer box 6 cm\n:::'));
  expect(sheet.passages.map(({ space }) => space)).toEqual([
    { kind: 'lines', count: 2 },
    { kind: 'lines', count: 4 },
    { kind: 'box', height_mm: 60 },
  ]);
});

test('a passage stands among blocks of its list item', () => {
  const sheet = read(withBlock('1. Ask [1]\n   ::: answer\n   say (1)\n   :::\n2. Ask'));
  expect(sheet.findings).toEqual([]);
  expect(typesOf(sheet.tokens)).toContain(
    'list_item_open paragraph_open [text total] paragraph_close passage_open paragraph_open [text point] paragraph_close passage_close list_item_close',
  );
  expect(cut(sheet, sheet.passages[0]?.span ?? { from: 0, to: 0 })).toBe('::: answer\n   say (1)\n   :::');
});

test('a block in a passage has its readers, an insert likewise', () => {
  const sheet = read('::: technicians\n```electrodes\n```\n?{M}\n:::\n');
  expect(sheet.blocks[0]?.readers).toEqual(['technicians']);
  expect(sheet.inserts[0]?.readers).toEqual(['technicians']);
});

describe('they fail closed', () => {
  test('a misspelt word', () => {
    checkReading(`
      ::: techers
          ^^^^^^^ error passage-kind pupils do not get this passage. \`teachers\`?
          => ::: teachers
      secret
      :::
      ::: Answer
          ^^^^^^ error passage-kind
          => ::: answer
      :::
      ::: {.note}
          ^^^^^^^ error passage-kind
      :::
    `);
    const sheet = read(withBlock('::: techers\nsecret ?{M}\n:::\nopen ?{M}'));
    expect(passagesOf(sheet)).toEqual(['broken: teachers']);
    expect(sheet.inserts.map(({ readers }) => readers.length)).toEqual([1, 3]);
  });

  test('more words than belong there', () => {
    checkReading(`
      ::: pupils not
                 ^^^ error passage-form
                 => ::: pupils
      :::
      ::: answer 4
                 ^ error passage-form \`answer 4 lines\`
                 => ::: answer 4 lines
                 => ::: answer box 4 mm
      :::
    `);
  });

  test('closed outside its list item', () => {
    checkReading(`
      1. Ask

         ::: answer
         ^^^^^^^^^^ error passage-unclosed not closed inside its list item
         secret
      :::
      ^^^ error passage-stray outside the list item
    `);
    const text = '1. Ask\n\n   ::: answer\n   secret\n:::\n';
    const [unclosed] = read(withBlock(text)).findings;
    const edit = unclosed?.fixes[0]?.edits[0];
    const mended = text.slice(0, edit?.span.from) + edit?.text + text.slice(edit?.span.to);
    expect(mended).toBe('1. Ask\n\n   ::: answer\n   secret\n   :::\n');
    expect(read(withBlock(mended)).findings).toEqual([]);
  });

  test('left open in a quotation, closed by the fix', () => {
    const text = '> - ::: teachers\n>   secret\n\nopen\n';
    const sheet = read(withBlock(text));
    expect(passagesOf(sheet)).toEqual(['broken: teachers']);
    const [finding] = sheet.findings;
    expect(finding?.message).toContain('inside its list item');
    const edit = finding?.fixes[0]?.edits[0];
    const mended = text.slice(0, edit?.span.from) + edit?.text + text.slice(edit?.span.to);
    expect(mended).toBe('> - ::: teachers\n>   secret\n>   :::\n\nopen\n');
    expect(read(withBlock(mended)).findings).toEqual([]);
  });

  test('open to the end of the sheet', () => {
    const sheet = read(withBlock('::: teachers\n\n::: hint\n:::\n\nx'));
    expect(passagesOf(sheet)).toEqual(['broken: teachers', 'hint: teachers']);
    expect(sheet.blocks[0]?.readers).toEqual(['teachers']);
  });

  test('colons where Markdown does not look', () => {
    checkReading(`
      text
           ::: teachers
           ^^^^^^^^^^^^ error passage-hidden hide nothing

      <div>
      ^^^^^ warning html-escaped
      ::: teachers
      ^^^^^^^^^^^^ error passage-hidden
      </div>

          ::: teachers
          ^^^^^^^^^^^^ error passage-hidden

      ~~~
      ::: teachers
      ~~~

      > ~~~
      > ::: teachers
        ^^^^^^^^^^^^ error passage-hidden
    `);
  });

  test('a stray closing', () => {
    checkReading(
      `
      text
      :::
      ^^^ error passage-stray close nothing
      =>
    `.replace('=>', '=> '),
    );
  });
});
