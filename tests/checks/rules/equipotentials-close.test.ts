/** Equipotentials that a meter cannot tell apart. */
import { it } from 'vitest';
import { equipotentialsClose } from '../../../shared/checks/rules/equipotentials-close.ts';
import { checkRule } from './check-rule.ts';

it('speaks of steps below the resolution', () => {
  checkRule(
    equipotentialsClose,
    `
    \`\`\`electrodes
    paper 200 mm × 100 mm, 5 kΩ per square
    supply cell 1.5 V
    bar N 10 mm × 100 mm at (45, 50) mm negative
    bar P 10 mm × 100 mm, 100 mm right of N positive
    meter 10 MΩ, resolution 0.1 V
    equipotentials 0.05 V to 0.5 V every 0.05 V
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ warning equipotentials-close 0.05 V apart, and the meter shows steps of 0.1 V
    \`\`\`
  `,
  );
});

it('looks at each step of a list', () => {
  checkRule(
    equipotentialsClose,
    `
    \`\`\`electrodes
    paper 200 mm × 100 mm, 5 kΩ per square
    supply cell 1.5 V
    bar N 10 mm × 100 mm at (45, 50) mm negative
    bar P 10 mm × 100 mm, 100 mm right of N positive
    meter 10 MΩ, resolution 0.01 V
    equipotentials 0.5 V, 0.505 V, 1 V
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ warning equipotentials-close 0.005 V apart
    \`\`\`
  `,
  );
});

it('lets steps of the resolution pass', () => {
  checkRule(
    equipotentialsClose,
    `
    \`\`\`electrodes
    paper 200 mm × 100 mm, 5 kΩ per square
    supply cell 1.5 V
    bar N 10 mm × 100 mm at (45, 50) mm negative
    bar P 10 mm × 100 mm, 100 mm right of N positive
    meter 10 MΩ, resolution 0.1 V
    equipotentials 0.1 V to 1.4 V every 0.1 V
    \`\`\`
  `,
  );
});

it('says nothing where the block gives no resolution or no equipotentials', () => {
  checkRule(
    equipotentialsClose,
    `
    \`\`\`electrodes
    paper 200 mm × 100 mm, 5 kΩ per square
    supply cell 1.5 V
    bar N 10 mm × 100 mm at (45, 50) mm negative
    bar P 10 mm × 100 mm, 100 mm right of N positive
    meter 10 MΩ
    equipotentials 0.1 V to 0.101 V every 0.001 V
    \`\`\`

    \`\`\`electrodes coarse
    paper 200 mm × 100 mm, 5 kΩ per square
    supply cell 1.5 V
    bar N 10 mm × 100 mm at (45, 50) mm negative
    bar P 10 mm × 100 mm, 100 mm right of N positive
    meter 10 MΩ, resolution 1 V
    \`\`\`
  `,
  );
});

it('says once what a second setup inherits', () => {
  checkRule(
    equipotentialsClose,
    `
    \`\`\`electrodes one
    paper 200 mm × 100 mm, 5 kΩ per square
    supply cell 1.5 V
    bar N 10 mm × 100 mm at (45, 50) mm negative
    bar P 10 mm × 100 mm, 100 mm right of N positive
    meter 10 MΩ, resolution 0.1 V
    equipotentials 0.5 V, 0.55 V
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^ warning equipotentials-close
    \`\`\`

    \`\`\`electrodes two like one
    \`\`\`
  `,
  );
});
