/** Any text is looked at without an error, and what may be mended unasked never stands in each other's way. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { TextEdit } from '../../../shared/findings/finding.ts';
import { applied } from '../../check.ts';
import { leftAlone, pairs } from './pairs.ts';
import { findingsOf } from './prose.ts';

const certainEdits = (text: string): readonly TextEdit[] =>
  findingsOf(text).flatMap(({ fixes: [first] }) => (first?.certain ? first.edits : []));

const signs = [...'0015.,-–±×x*/^ \n\n()[]{}<>|`&;:!?$#_=%°'];
const words = [
  'V',
  'mV',
  'kΩ',
  'mm',
  'Kohm',
  'v',
  'E',
  'per',
  'square',
  'm',
  '⁻¹',
  '10',
  'volts',
  'Amps',
  ' C',
  '> ',
  '- ',
  '**',
];
const scraps = fc
  .array(
    fc.oneof(
      fc.constantFrom(...signs, ...words),
      fc.constantFrom(
        ...pairs.map(([wrong]) => wrong),
        ...leftAlone,
        '| V (V) |\n| --- |\n',
        '\r\n',
        '&amp;',
        '\\',
      ),
      fc.string({ unit: 'grapheme', maxLength: 4 }),
    ),
    { maxLength: 30 },
  )
  .map((parts) => parts.join(''));

test('spans and edits lie in the text, and no two certain edits meet', () => {
  fc.assert(
    fc.property(scraps, (text) => {
      for (const { span, fixes } of findingsOf(text)) {
        expect(span.from).toBeGreaterThanOrEqual(0);
        expect(span.to).toBeGreaterThan(span.from);
        for (const { edits } of fixes) {
          expect(edits.length).toBeGreaterThan(0);
          expect(applied(text, edits)).not.toBe(text);
        }
      }
      const edits = [...certainEdits(text)].sort(
        (a, b) => a.span.from - b.span.from || a.span.to - b.span.to,
      );
      for (const [i, { span }] of edits.entries()) {
        const before = edits[i - 1]?.span;
        if (before === undefined) continue;
        expect(span.from).toBeGreaterThanOrEqual(before.to);
        expect(span.from).toBeGreaterThan(before.from);
      }
    }),
    { numRuns: 400 },
  );
});

test('certain mends of the pairs, all at once, leave none to do', () => {
  const prose = pairs.filter(([wrong]) => !wrong.startsWith('|')).map(([wrong]) => wrong);
  fc.assert(
    fc.property(fc.shuffledSubarray(prose), (parts) => {
      const text = parts.join('; ');
      const mended = applied(text, certainEdits(text));
      expect(certainEdits(mended)).toEqual([]);
    }),
    { numRuns: 100 },
  );
});

test('a long text costs time in proportion: 40,000 values in one paragraph', () => {
  const found = findingsOf('set 5V, '.repeat(40_000));
  expect(found).toHaveLength(40_000);
});

test('what was read before changes nothing', () => {
  fc.assert(
    fc.property(scraps, (text) => {
      const first = findingsOf(text);
      expect(findingsOf(text)).toEqual(first);
    }),
  );
});
