/** Charge that a lesson takes from a cell. Bars across paper 100 mm wide, 100 mm apart: one square. */
import { it } from 'vitest';
import { cellDrain } from '../../../shared/checks/rules/cell-drain.ts';
import { checkRule } from './check-rule.ts';

it('uses the limit, and the usual hour', () => {
  checkRule(
    cellDrain,
    `
    \`\`\`electrodes
    paper 200 mm × 100 mm, 50 Ω per square
    supply cell 1.5 V
    ^^^^^^^^^^^^^^^^^ warning cell-drain In 60 min this takes 30 mA h from the cell, more than 20 mA h
    bar N 10 mm × 100 mm at (45, 50) mm negative
    bar P 10 mm × 100 mm, 100 mm right of N positive
    \`\`\`
  `,
  );
});

it('uses the minutes of the front matter', () => {
  checkRule(
    cellDrain,
    `
    ---
    minutes: 30
    ---

    \`\`\`electrodes
    paper 200 mm × 100 mm, 50 Ω per square
    supply cell 1.5 V
    bar N 10 mm × 100 mm at (45, 50) mm negative
    bar P 10 mm × 100 mm, 100 mm right of N positive
    \`\`\`

    \`\`\`electrodes low
    paper 200 mm × 100 mm, 20 Ω per square
    supply cell 1.5 V
    ^^^^^^^^^^^^^^^^^ warning cell-drain In 30 min this takes 37 mA h
    bar N 10 mm × 100 mm at (45, 50) mm negative
    bar P 10 mm × 100 mm, 100 mm right of N positive
    \`\`\`
  `,
  );
});

it('knows sizes of cells', () => {
  checkRule(
    cellDrain,
    `
    \`\`\`electrodes
    paper 200 mm × 100 mm, 80 Ω per square
    supply cell 1.5 V, zinc-carbon, size AAA
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ warning cell-drain In 60 min this takes 19 mA h from the cell, more than 15 mA h (a twentieth of what an AAA cell of this kind gives, from memory)
    bar N 10 mm × 100 mm at (45, 50) mm negative
    bar P 10 mm × 100 mm, 100 mm right of N positive
    \`\`\`

    \`\`\`electrodes large
    paper 200 mm × 100 mm, 20 Ω per square
    supply 2 cells 1.5 V, alkaline, size R20
    bar N 10 mm × 100 mm at (45, 50) mm negative
    bar P 10 mm × 100 mm, 100 mm right of N positive
    \`\`\`
  `,
  );
});

it('says nothing of other supplies, of usual paper, and without a sheet resistance', () => {
  checkRule(
    cellDrain,
    `
    \`\`\`electrodes
    paper 200 mm × 100 mm, 50 Ω per square
    supply power-pack 3 V
    bar N 10 mm × 100 mm at (45, 50) mm negative
    bar P 10 mm × 100 mm, 100 mm right of N positive
    \`\`\`

    \`\`\`electrodes usual
    paper 200 mm × 100 mm, 5 kΩ per square
    supply cell 1.5 V
    bar N 10 mm × 100 mm at (45, 50) mm negative
    bar P 10 mm × 100 mm, 100 mm right of N positive
    \`\`\`

    \`\`\`electrodes unknown
    paper 200 mm × 100 mm
    supply cell 1.5 V
    bar N 10 mm × 100 mm at (45, 50) mm negative
    bar P 10 mm × 100 mm, 100 mm right of N positive
    \`\`\`
  `,
  );
});
