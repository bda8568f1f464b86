/** Fields that the text calls uniform. */
import { expect, test } from 'vitest';
import { fieldNotUniform } from '../../../shared/checks/rules/field-not-uniform.ts';
import { findingsOf } from '../stated/sheets.ts';
import { checkRule } from './check-rule.ts';

const bars = (length: number): string => `\`\`\`electrodes
paper 290 mm × 200 mm
supply cell 1.5 V
bar N 10 mm × ${length} mm at (90, 100) mm negative
bar P 10 mm × ${length} mm, 100 mm right of N positive
row A from N to P every 10 mm
\`\`\``;

// Bars 60 mm long, 100 mm apart: 13.9 V/m in the middle, 16.4 V/m close to a bar (own finite-difference solve, ±2 %).
test('says where, and by how much', () => {
  checkRule(
    fieldNotUniform,
    `${bars(60)}\n
Along A the field is uniform.
            ^^^^^^^^^^^^^^^^ warning field-not-uniform Along A the field strength varies by 14 %, from 13.9 V/m to 16.0 V/m.
Between the bars there is a uniform field.
                            ^^^^^^^^^^^^^ warning field-not-uniform On the line from N to P the field strength varies by 16 %, from 13.9 V/m to 16.3 V/m.
`,
  );
});

const claims = [
  'The field between the bars is uniform.',
  'The field strength is the same everywhere between N and P.',
  'Between the plates the field is therefore uniform.',
  'The electric field along row A is constant.',
  'E is constant along A.',
  'There is a uniform electric field between them.',
];

test.each(claims)('is held against the solution: %s', (text) => {
  expect(findingsOf(fieldNotUniform, `${bars(60)}\n\n${text}\n`).map(({ code }) => code)).toEqual([
    'field-not-uniform',
  ]);
  expect(findingsOf(fieldNotUniform, `${bars(180)}\n\n${text}\n`)).toEqual([]);
});

test.each([
  'The field is uniform.',
  'Is the field between the bars uniform?',
  'Between the bars the field is not uniform.',
  'Between the bars the field is nearly uniform.',
  'In the middle between the bars the field is uniform.',
  'If the bars were longer, the field between them would be uniform.',
  'A pupil says: “The field between the bars is uniform.”',
  'The paper between the bars is uniform. The sheet resistance is the same everywhere.',
  'In a uniform field equal steps of potential lie at equal distances.',
  'Far from the ends of the bars the field is uniform.',
  '# Uniform fields',
  'Between the plates of an ideal capacitor there is a uniform field.',
])('says nothing of: %s', (text) => {
  expect(findingsOf(fieldNotUniform, `${bars(60)}\n\n${text}\n`)).toEqual([]);
});
