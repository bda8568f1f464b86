/** A fix that adds a line to a block writes it with the quotation and list prefix of its neighbours. */
import { expect, test } from 'vitest';
import { resolveSetups } from '../../shared/setup/resolve.ts';
import { readSheet } from '../../shared/sheet/read-sheet.ts';

const text = `> 1. A list
>
>    \`\`\`electrodes one
>    paper 240 mm × 160 mm, 5 kΩ per square
>    supply cell 1.5 V
>    bar N 10 mm × 120 mm at (60, 80) mm negative
>    bar P 10 mm × 120 mm, 100 mm right of N positive
>    ring R diameter 50 mm, wall 4 mm, midway between N and P floating
>    probe C at centre of R
>    \`\`\`
>
>    \`\`\`electrodes two like one
>    without R
>    \`\`\`
`;

test('without C, added behind without R', () => {
  const { blocks } = readSheet({ name: 'list.md', text });
  const fixes = resolveSetups(blocks.map(({ block }) => block)).flatMap(({ findings }) =>
    findings.flatMap((one) => one.fixes),
  );
  const [edit] = fixes.find(({ title }) => title === 'Add without C')?.edits ?? [];
  if (!edit) throw new Error('no such fix');
  const mended = text.slice(0, edit.span.from) + edit.text + text.slice(edit.span.to);
  expect(mended).toContain('>    without R\n>    without C\n>    ```\n');
  expect(readSheet({ name: 'list.md', text: mended }).blocks[1]?.block.statements).toHaveLength(2);
});

test.each([
  [
    'that begins with a blank one',
    '- ```electrodes\n\n  copper 0.1 mm\n  ```\n',
    '- ```electrodes\n\n  copper 0.1 mm\n  supply cell 1.5 V\n  ```\n',
  ],
  [
    'in a quotation and a list',
    '> - ```electrodes\n>   ```\n',
    '> - ```electrodes\n>   supply cell 1.5 V\n>   ```\n',
  ],
  ['without an end', '1. ```electrodes', '1. ```electrodes\n   supply cell 1.5 V'],
  [
    'with other line ends',
    '> ```electrodes\r\n> ```\r\n',
    '> ```electrodes\r\n> supply cell 1.5 V\r\n> ```\r\n',
  ],
])('a line is added to a block %s', (_, empty, mended) => {
  const [setup] = resolveSetups(readSheet({ name: 'list.md', text: empty }).blocks.map(({ block }) => block));
  const fixes = setup?.findings.flatMap((one) => one.fixes) ?? [];
  const [edit] = fixes.find(({ title }) => title === 'Add supply cell 1.5 V')?.edits ?? [];
  if (!edit) throw new Error('no such fix');
  expect(empty.slice(0, edit.span.from) + edit.text + empty.slice(edit.span.to)).toBe(mended);
});
