/** What the status item says of the findings. */
import { expect, test } from 'vitest';
import { countsText } from '../../client/status-text.ts';

const texts = {
  t: (message: string, ...values: readonly (string | number)[]) =>
    message.replace(/\{(\d)\}/g, (_, i: string) => String(values[Number(i)])),
};

test.each([
  [{ errors: 0, warnings: 0, notes: 0 }, 'no findings'],
  [{ errors: 1, warnings: 0, notes: 0 }, '1 error'],
  [{ errors: 2, warnings: 1, notes: 0 }, '2 errors, 1 warning'],
  [{ errors: 0, warnings: 3, notes: 1 }, '3 warnings, 1 note'],
  [{ errors: 0, warnings: 0, notes: 2 }, '2 notes'],
])('%j', (counts, text) => {
  expect(countsText(counts, texts)).toBe(text);
});
