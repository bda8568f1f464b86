/** Readings that the meter lowers by more than it can show. */
import { it } from 'vitest';
import { meterLoading } from '../../../shared/checks/rules/meter-loading.ts';
import { checkRule } from './check-rule.ts';

// Fine tip, middle of the sheet: the source is about 0.9 of the sheet resistance, so that 20 kΩ/100 kΩ lowers a reading by about 16 %
// (own finite-difference solve).
it('speaks of the worst reading, and by how much', () => {
  checkRule(
    meterLoading,
    `
    \`\`\`electrodes
    paper 290 mm × 200 mm, 20 kΩ per square
    supply cell 1.5 V
    meter 100 kΩ, resolution 0.01 V, probe tip 0.4 mm
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ warning meter-loading The meter itself lowers what it reads: at Q it shows
    bar N 10 mm × 160 mm at (90, 100) mm negative
    bar P 10 mm × 160 mm, 100 mm right of N positive
    row A from N to P every 50 mm
    probe M at A 50 mm
    probe Q at A 70 mm
    \`\`\`
  `,
  );
});

it('counts what a row reads, in steps of the resolution', () => {
  checkRule(
    meterLoading,
    `
    \`\`\`electrodes
    paper 290 mm × 200 mm, 20 kΩ per square
    supply cell 1.5 V
    meter 1 MΩ, resolution 1 mV, probe tip 0.4 mm
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ warning meter-loading times its resolution
    bar N 10 mm × 160 mm at (90, 100) mm negative
    bar P 10 mm × 160 mm, 100 mm right of N positive
    row A from N to P every 50 mm
    \`\`\`
  `,
  );
});

// 10 MΩ on 5 kΩ: 0.05 %, less than 1 mV in 1.5 V.
it('says nothing of usual meters, of coarse ones, and where no resolution is given', () => {
  const sheet = (paper: string, meter: string, name: string): string => `
    \`\`\`electrodes ${name}
    paper 290 mm × 200 mm, ${paper} per square
    supply cell 1.5 V
    meter ${meter}
    bar N 10 mm × 160 mm at (90, 100) mm negative
    bar P 10 mm × 160 mm, 100 mm right of N positive
    probe M at (145, 100) mm
    \`\`\`
  `;
  checkRule(meterLoading, sheet('5 kΩ', '10 MΩ, resolution 1 mV', 'usual'));
  checkRule(meterLoading, sheet('5 kΩ', '1 MΩ, resolution 0.01 V', 'coarse'));
  checkRule(meterLoading, sheet('20 kΩ', '100 kΩ', 'untold'));
});
