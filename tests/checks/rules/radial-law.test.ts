/** The laws of a point charge, said of a disc in a ring. */
import { expect, test } from 'vitest';
import { radialLaw } from '../../../shared/checks/rules/radial-law.ts';
import { bars, findingsOf, radial } from '../stated/sheets.ts';
import { checkRule } from './check-rule.ts';

// a = 10 mm, b = 80 mm, 1.5 V: 0.75 V at √(ab) = 28.3 mm on paper, 0.39 V between concentric spheres (closed forms).
test('says by how much', () => {
  checkRule(
    radialLaw,
    `${radial}\n
The potential falls as 1/*r*.
    ^^^^^^^^^^^^^^^^^^^^^^^ warning radial-law On paper V goes as ln r. At r = 27.5 mm it is 0.77 V; with 1/r it would be 0.41 V.
The field strength falls as 1/*r*².
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ warning radial-law On paper E goes as 1/r. At r = 27.5 mm it is 2.3 times that at 62.5 mm; with 1/r² it would be 5.2 times.
`,
  );
});

test.each([
  'The potential varies inversely with the distance from the disc.',
  'The voltage is inversely proportional to the radius.',
  'V ∝ 1/r.',
  'So V is proportional to 1/r.',
  'V against 1/r is a straight line.',
  'Plot V against 1/r. The graph is a straight line, as for a point charge.',
  'E ∝ 1/r² here.',
  'The field obeys an inverse-square law, as the field is proportional to 1/r^2.',
])('is a law of space: %s', (text) => {
  expect(findingsOf(radialLaw, `${radial}\n\n${text}\n`).map(({ code }) => code)).toEqual(['radial-law']);
  expect(findingsOf(radialLaw, `${bars}\n\n${text}\n`)).toEqual([]);
});

test.each([
  'The field strength falls as 1/r and V as ln r.',
  'E ∝ 1/r.',
  'The field strength is inversely proportional to the distance.',
  'The potential falls outward, and the strength goes as 1/r.',
  'Round a point charge in space the strength falls as 1/r² and V as 1/r.',
  'V against 1/r is curved. Plot V against 1/r.',
  'Is V against 1/r a straight line?',
  'Plot V against 1/r. Is the graph a straight line? The graph is curved.',
  'V does not go as 1/r.',
  'A pupil writes that the potential falls as 1/r.',
  'The resistance goes as 1/r. The current is inversely proportional to the sheet resistance.',
  'For spheres the potential goes as 1/r.',
])('is right, or says nothing: %s', (text) => {
  expect(findingsOf(radialLaw, `${radial}\n\n${text}\n`)).toEqual([]);
});
