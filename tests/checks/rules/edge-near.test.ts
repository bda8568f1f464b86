/** Texts that leave the paper's edge out of account. */
import { expect, test } from 'vitest';
import { edgeNear } from '../../../shared/checks/rules/edge-near.ts';
import { findingsOf } from '../stated/sheets.ts';
import { checkRule } from './check-rule.ts';

const discs = (x: number): string => `\`\`\`electrodes
paper 200 mm × 100 mm
supply cell 1.5 V
disc N radius 5 mm at (${x}, 50) mm negative
disc P radius 5 mm at (140, 50) mm positive
\`\`\``;

test('what is said, and how near it is', () => {
  checkRule(
    edgeNear,
    `${discs(12)}\n
Take the discs as two isolated charges.
                      ^^^^^^^^^^^^^^^^ warning edge-near N lies 7 mm from the edge of the paper. No current leaves the paper there
`,
  );
});

test('metal beyond the edge reaches it', () => {
  const found = findingsOf(edgeNear, `${discs(2)}\n\nThe paper is taken to be infinite.\n`);
  expect(found.map(({ message }) => message.slice(0, 34))).toEqual(['N reaches the edge of the paper. N']);
});

test.each([
  'Assume that the paper is infinite.',
  'Imagine an infinite sheet.',
  'Treat it as an unbounded sheet.',
  'We ignore the edges of the paper.',
  'Neglecting edge effects, the lines are circles.',
  'Edge effects can be neglected here.',
  'They behave as isolated electrodes.',
])('assumes no edge: %s', (text) => {
  expect(findingsOf(edgeNear, `${discs(12)}\n\n${text}\n`).map(({ code }) => code)).toEqual(['edge-near']);
  expect(findingsOf(edgeNear, `${discs(60)}\n\n${text}\n`)).toEqual([]);
});

test.each([
  'The paper is not infinite: its edge counts.',
  'Edge effects cannot be neglected.',
  'Is the paper infinite?',
  'What would change on an infinite sheet?',
  'At a sharp point the field would be infinite.',
  'The paper shows infinitely long conductors seen end-on.',
  'The supply has an isolated output, and an isolating transformer.',
  'Round an isolated point charge in space the potential goes as 1/r.',
  'A pupil writes that the sheet is infinite.',
  'Keep 20 mm from the edge. Ignore dots near the edge of the table.',
  'Do not ignore the edges.',
])('assumes nothing: %s', (text) => {
  expect(findingsOf(edgeNear, `${discs(12)}\n\n${text}\n`)).toEqual([]);
});

test('bars from edge to edge have no ends', () => {
  const bars = `\`\`\`electrodes
paper 200 mm × 100 mm
supply cell 1.5 V
bar N 10 mm × 100 mm at (45, 50) mm negative
bar P 10 mm × 100 mm at (155, 50) mm positive
\`\`\``;
  expect(findingsOf(edgeNear, `${bars}\n\nEdge effects can be neglected.\n`)).toEqual([]);
});
