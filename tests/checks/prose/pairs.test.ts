/** Each slip of the list is the one finding of its text, and its first fix writes it right; what is right is left alone. */
import { describe, expect, test } from 'vitest';
import { applied } from '../../check.ts';
import { leftAlone, pairs } from './pairs.ts';
import { findingsOf } from './prose.ts';

const surroundings: readonly (readonly [string, (text: string) => string])[] = [
  ['alone', (text) => text],
  ['in a list', (text) => `1. Look\n\n   - one\n   - ${text.replaceAll('\n', '\n     ')}`],
  ['in a quotation with CRLF', (text) => `> ${text}`.replaceAll('\n', '\r\n> ')],
  ['in a passage', (text) => `::: teachers\n${text}\n:::`],
];
const inText: readonly (readonly [string, (text: string) => string])[] = [
  ['in a heading', (text) => `## ${text}`],
  ['in a cell', (text) => `| what | which |\n| --- | --- |\n| a | ${text} |`],
  ['in a caption', (text) => `?{drawing "${text}"}`],
  ['strong', (text) => `**${text}**`],
  [
    'behind others',
    (text) => `*Look* at \`1.5V\` and [4mm](https://a.example/4mm), 😀 &amp; \\*then*: ${text}`,
  ],
];

describe.each(pairs)('%j', (wrong, right, severity, code) => {
  const isTable = wrong.startsWith('|');
  test.each([...surroundings, ...(isTable ? [] : inText)])('%s', (where, place) => {
    if (where === 'in a heading' && code === 'unit-name-case') return;
    const text = place(wrong);
    const found = findingsOf(text);
    expect(found.map((one) => [one.severity, one.code])).toEqual([[severity, code]]);
    expect(applied(text, found[0]?.fixes[0]?.edits ?? [])).toBe(place(right));
  });
});

describe('left alone', () => {
  test.each(pairs.filter(([, , , code]) => code !== 'figures-many'))('%j, mended: %j', (_, right) => {
    expect(findingsOf(right)).toEqual([]);
  });

  describe.each(leftAlone)('%j', (text) => {
    const isTable = text.startsWith('|');
    test.each([...surroundings, ...(isTable ? [] : inText)])('%s', (_, place) => {
      expect(findingsOf(place(text))).toEqual([]);
    });
  });
});
