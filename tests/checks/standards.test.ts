/** What a sheet is examined against: severities of the department hold for all findings, those about allowances too, but for a stop. */
import { describe, expect, it } from 'vitest';
import { draftSheet, examineSheet } from '../../shared/checks/examine.ts';
import { withSeverities } from '../../shared/checks/severities.ts';
import { finding } from '../../shared/findings/finding.ts';
import { safetyCodes } from '../../shared/findings/safety-codes.ts';
import { usualDepartment } from '../../shared/sheet/department/department.ts';
import { readDepartment } from '../../shared/sheet/department/read-department.ts';
import { check } from '../check.ts';

const rough = { gap: 0.1, traces: false };
const departmentOf = (text: string) => readDepartment({ name: 'department.yaml', text }).department;

/** Notes on safety, which these short texts leave out, are another test's affair. */
const checkSheet = (marked: string, department = usualDepartment): void =>
  check(marked, (text) =>
    examineSheet({ name: 'sheet.md', text }, { ...rough, department }).findings.filter(
      ({ code }) => !Object.hasOwn(safetyCodes, code),
    ),
  );

describe('severities', () => {
  const department = departmentOf('severities: { unit-space: error, unit-plural: note, allow-unused: note }');

  it('are the department’s, for its findings alone', () => {
    checkSheet(
      `
        It is 5V, 5 mms and 5 mins.
              ^^ error unit-space
                    ^^^ note unit-plural
                              ^^^^ warning unit-abbreviation

        \`\`\`electrodes
        paper   240 mm × 160 mm, 2 kΩ per square
        supply  power-pack 1.5 V
        bar     A  10 mm × 160 mm at (25, 80) mm                positive
        bar     B  10 mm × 160 mm at (215, 80) mm               negative
        \`\`\`
      `,
      department,
    );
  });

  it('do not keep a finding from being allowed', () => {
    checkSheet(
      `
        <!-- papervolt: allow unit-space because it is quoted -->
        It is 5V.

        <!-- papervolt: allow unit-space because it is quoted -->
        ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ note allow-unused
        It is 5 V.

        \`\`\`electrodes
        paper   240 mm × 160 mm, 2 kΩ per square
        supply  power-pack 1.5 V
        bar     A  10 mm × 160 mm at (25, 80) mm                positive
        bar     B  10 mm × 160 mm at (215, 80) mm               negative
        \`\`\`
      `,
      department,
    );
  });

  it('leave a stop as it is', () => {
    const parts = { span: { from: 0, to: 1 }, message: 'Not like this.' };
    const found = [finding('unit-space', { ...parts, severity: 'stop' }), finding('unit-space', parts)];
    expect(withSeverities(found, department).map(({ severity }) => severity)).toEqual(['stop', 'error']);
  });
});

it('nothing is decided where nobody says: no file, no day', () => {
  expect(draftSheet({ name: 'sheet.md', text: '' }).standards).toEqual({
    department: usualDepartment,
    today: null,
  });
});

it('department and day go with the draft to where it is concluded', () => {
  const department = departmentOf('style: { language: en-US }');
  const examined = examineSheet(
    { name: 'sheet.md', text: '```electrodes\n```\n' },
    { ...rough, department, today: '2026-03-12' },
  );
  expect(examined).toMatchObject({ department, today: '2026-03-12' });
  expect(examined.sheet.front.language).toBe('en-US');
});
