/** Any text is read; all places lie in it; and a text of two thousand lines is read in an instant. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cut, read, twoBars } from './sheets.ts';

const bits = [
  '```electrodes\n',
  '```\n',
  '~~~electrodes x\n',
  ':::',
  '::: teachers\n',
  '::: answer\n',
  '?{',
  '!{M}',
  '}',
  '?{M, no unit}',
  '?{drawing "a}"}',
  '[2]',
  '(1)\n',
  '[2]: x\n',
  '<!--',
  '-->',
  '<!-- papervolt: allow x because y -->',
  '<b>',
  '---\n',
  'title: x\n',
  '\n',
  '\r\n',
  '\r',
  '\n\n',
  ' ',
  '    ',
  '\t',
  '> ',
  '- ',
  '1. ',
  '# ',
  '| a | b |\n|--|--|\n',
  '|',
  '\\',
  '`',
  '**',
  '![a](',
  ')',
  '𝔼',
  '\0',
  '\ufeff',
  '\u2028',
  '"',
  'M',
  '.',
  ',',
];
const anyText = fc
  .array(fc.oneof(fc.constantFrom(...bits), fc.string()), { maxLength: 40 })
  .map((p) => p.join(''));

test('any text is read, and every place lies in it', () => {
  let inserts = 0;
  fc.assert(
    fc.property(anyText, fc.boolean(), (text, first) => {
      const block = '\n```electrodes\nprobe M at centre\n```\n';
      const sheet = read(first ? `${block}\n${text}` : text + block);
      const length = sheet.source.text.length;
      const spans = [...sheet.findings, ...sheet.passages, ...sheet.inserts, ...sheet.totals].map(
        ({ span }) => span,
      );
      for (const { from, to } of spans) {
        expect(from).toBeGreaterThanOrEqual(0);
        expect(to).toBeGreaterThanOrEqual(from);
        expect(to).toBeLessThanOrEqual(length);
      }
      for (const insert of sheet.inserts) {
        inserts++;
        // Over several lines the file has prefixes that the insert as written has not.
        if (!insert.written.includes('\n')) {
          const written = cut(sheet, insert.span).replaceAll('\0', '\ufffd');
          // In tables a stroke is written with a backslash.
          expect([written, written.replaceAll('\\|', '|')]).toContain(insert.written);
        }
      }
    }),
    { numRuns: 1500 },
  );
  expect(inserts).toBeGreaterThan(200);
});

test('opening and closing tokens of passages pair up', () => {
  fc.assert(
    fc.property(anyText, (text) => {
      let depth = 0;
      const sheet = read(`${text}\n\n${twoBars}`);
      for (const token of sheet.tokens) {
        depth += token.nesting;
        expect(depth).toBeGreaterThanOrEqual(0);
      }
      expect(depth).toBe(0);
    }),
    { numRuns: 300 },
  );
});

test('nesting without end', () => {
  for (const bit of ['> ', '- ', '[', '?{', '::: teachers\n', '*a ', '<b ', '?{drawing "', '(1) ']) {
    expect(read(`${bit.repeat(3000)}\n\n${twoBars}`).source.name).toBe('sheet.md');
  }
});

test('two thousand lines are read in work that grows with their number', () => {
  const page = `
# Part

Between N and P the reading is ?{bars.M}, at A ?{A at 30 mm}. Why? [2]

::: answer
It is half way (1)
of the EMF (1)
:::

| at | V / V |
|----|-------|
| M  | ?{M}  |

1. Do this
2. and that **now** with some more words in the line, as sheets have them
${twoBars}`;
  const time = (text: string): number => {
    const runs = Array.from({ length: 5 }, () => {
      const begin = performance.now();
      read(text);
      return performance.now() - begin;
    });
    return Math.min(...runs);
  };
  const lines = page.split('\n').length;
  const some = time(page.repeat(Math.ceil(500 / lines)));
  const many = time(page.repeat(Math.ceil(4000 / lines)));
  // Eight times the text: linear work gives a ratio of eight, quadratic work one of sixty-four.
  expect(many / some).toBeLessThan(24);
});
