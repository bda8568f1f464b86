/** A click on the paper adds a probe with the next free letter. */
import { expect, it, test } from 'vitest';
import { twoSetups } from '../cursor.ts';
import { blockOf, probeAdded } from './moved.ts';

const bar = 'bar N 10 mm × 120 mm at (60, 80) mm negative';

test('behind the last probe, in its columns', () => {
  expect(probeAdded(twoSetups, [140.2, 94.9])).toBe('probe   J  at (140, 95) mm');
  expect(probeAdded(twoSetups, [140, 95], 1)).toBe('probe   J  at (140, 95) mm');
  expect(probeAdded(blockOf(bar), [140, 95])).toBe('probe A at (140, 95) mm');
  expect(probeAdded(blockOf(`\t${bar.replace(/N /u, 'N\t')}`), [140, 95])).toBe('\tprobe A\tat (140, 95) mm');
});

test('letters that are taken, and such as mislead, are passed over', () => {
  expect(
    probeAdded(blockOf(bar, 'probe H at (100, 80) mm', 'row J from N to (200, 80) mm in 3 steps'), [9, 9]),
  ).toBe('probe K at (9, 9) mm');
  expect(probeAdded(blockOf(bar, 'probe M at (100, 80) mm'), [9, 9])).toBe('probe Q at (9, 9) mm');
  const inLike = `${blockOf(bar)}\n\`\`\`electrodes two like setup\nprobe A at (9, 9) mm\n\`\`\`\n`;
  expect(probeAdded(inLike, [20, 9])).toBe('probe B at (20, 9) mm');
});

it('keeps the prefix of a quotation and the line ends', () => {
  const quoted = blockOf(bar).replace(/^/gmu, '> ').replace(/\n/gu, '\r\n');
  expect(probeAdded(quoted, [140, 95])).toBe('> probe A at (140, 95) mm\r');
});

it('refuses places without paper', () => {
  expect(probeAdded(blockOf(bar), [-3, 80])).toBe('A probe would stand beside the paper.');
  expect(probeAdded(blockOf(bar, 'hole disc diameter 20 mm at (120, 80) mm'), [120, 80])).toBe(
    'A probe would stand in a hole.',
  );
  expect(probeAdded('```electrodes\n```\n', [1, 1])).toBe('There is no paper yet to stand a probe on.');
});
