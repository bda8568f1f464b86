/** Paper that is parted between the terminals. */
import { it } from 'vitest';
import { noCurrent } from '../../../shared/checks/rules/no-current.ts';
import { checkRule } from './check-rule.ts';

it('names the cut', () => {
  checkRule(
    noCurrent,
    `
    \`\`\`electrodes
    paper 200 mm × 100 mm, 5 kΩ per square
    supply cell 1.5 V
    bar N 10 mm × 100 mm at (45, 50) mm negative
    bar P 10 mm × 100 mm, 100 mm right of N positive
    slit from (100, 0) mm to (100, 100) mm
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ warning no-current the paper does not join P and N
    \`\`\`
  `,
  );
});

it('also without a sheet resistance', () => {
  checkRule(
    noCurrent,
    `
    \`\`\`electrodes
    paper 200 mm × 100 mm
    supply cell 1.5 V
    bar N 10 mm × 100 mm at (45, 50) mm negative
    bar P 10 mm × 100 mm, 100 mm right of N positive
    hole 10 mm × 100 mm at (100, 50) mm
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ warning no-current
    \`\`\`
  `,
  );
});

it('says nothing where a bridge is left', () => {
  checkRule(
    noCurrent,
    `
    \`\`\`electrodes
    paper 200 mm × 100 mm, 5 kΩ per square
    supply cell 1.5 V
    bar N 10 mm × 100 mm at (45, 50) mm negative
    bar P 10 mm × 100 mm, 100 mm right of N positive
    slit from (100, 0) mm to (100, 90) mm
    \`\`\`
  `,
  );
});

it('says nothing where metal bridges the cut', () => {
  checkRule(
    noCurrent,
    `
    \`\`\`electrodes
    paper 200 mm × 100 mm, 5 kΩ per square
    supply cell 1.5 V
    bar N 10 mm × 100 mm at (45, 50) mm negative
    bar P 10 mm × 100 mm, 100 mm right of N positive
    slit from (100, 0) mm to (100, 100) mm
    bar B 20 mm × 10 mm at (100, 50) mm floating
    \`\`\`
  `,
  );
});
