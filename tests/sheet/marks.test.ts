import { expect, test } from 'vitest';
import { checkReading, cut, read, typesOf, withBlock } from './sheets.ts';

test('digits in brackets end a paragraph or item, even where a link has that name', () => {
  const sheet = read(
    withBlock(`
      Why? [2]

      - one [12] <!-- easy -->
      - see [2] there
      - [text][2]
      - \`[3]\`
      - \\[4]

      # No [5]

      [2]: http://example.org
    `),
  );
  expect(sheet.totals.map(({ marks }) => marks)).toEqual([2, 12]);
  expect(sheet.totals.map(({ span }) => cut(sheet, span))).toEqual(['[2]', '[12]']);
  expect(typesOf(sheet.tokens)).toContain('paragraph_open [text total] paragraph_close');
  expect(typesOf(sheet.tokens)).toContain('[text link_open text link_close text]');
});

test('points end source lines of an answer', () => {
  const sheet = read(
    withBlock(`
      Why? (1) [3]

      ::: answer
      It is *so (1)*
      and so (1)
      V(1) is no point
      and [x](1) \`(1)\` (1)
      :::
    `),
  );
  expect(sheet.findings).toEqual([]);
  expect(sheet.totals).toMatchObject([{ marks: 3, points: 3 }]);
  expect(typesOf(sheet.tokens).match(/\bpoint\b/gu)).toHaveLength(3);
});

test('a point inside a line is named, there and nowhere else', () => {
  checkReading(`
    See (1) above. [1]

    > ::: answer
    > The middle (1) is half
                 ^^^ warning mark-inside
    > of it (1)
    > :::
  `);
});

test('marks and points agree where there is an answer', () => {
  checkReading(`
    1. Ask [2]
           ^^^ warning marks-disagree The question has [2], the points in its answer add up to 1.
           => 1. Ask [1]
       ::: answer
       Say (1)
       :::
    2. Ask [2]

       ::: answer
       Say (1)

       more (1)
       :::
    3. Ask [1]

    ::: answer
    Say (1)
    :::

    Ask [1]
        ^^^ note marks-no-points
    ::: answer
    Say
    :::

    Ask [1]

    # Heading

    ::: answer
    Say (1) 
    more (1)
    :::
  `);
});

test('one answer may follow several questions', () => {
  checkReading(`
    1. Ask [2]
    2. Ask [1]

    ::: answer
    1. Say (1)
       more (1)
    2. Say (1)
    :::
  `);
});

test('marks in words are asked about', () => {
  checkReading(`
    Ask [2 marks]
        ^^^^^^^^^ note mark-form
        => Ask [2]
  `);
});

test('a value told in a question with marks', () => {
  checkReading(`
    - The reading is !{M}. [1]
                     ^^^^ note told-in-question prints the value for pupils
                     => - The reading is ?{M}. [1]
    - The reading is !{M}.
    - The reading is ?{M}. [1]
    - Ask [1]
      ::: answer
      !{M} (1)
      :::
  `);
});
