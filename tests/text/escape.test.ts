/** The one escape: nothing that comes out can open a tag, close an attribute or break XML. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { escapeText } from '../../shared/text/escape.ts';

test('marks and quotes become entities', () => {
  expect(escapeText(`<a href="x" id='y'>R & D</a>`)).toBe(
    '&lt;a href=&quot;x&quot; id=&#39;y&#39;&gt;R &amp; D&lt;/a&gt;',
  );
});

test('what XML forbids is replaced, what it allows stays', () => {
  expect(escapeText('a\u0000b\u001bc\ud800d\uffffe')).toBe('a\ufffdb\ufffdc\ufffdd\ufffde');
  expect(escapeText('Ω \u2212 µ 𝄞\t\n')).toBe('Ω \u2212 µ 𝄞\t\n');
});

test('any text comes out without marks of its own', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary' }), (text) => {
      const bare = escapeText(text).replace(/&(amp|lt|gt|quot|#39);/g, '');
      expect(bare).not.toMatch(/[<>"'&]|\p{Surrogate}/u);
    }),
  );
});
