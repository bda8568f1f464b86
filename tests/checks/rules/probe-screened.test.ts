/** Probes inside closed hollow metal. */
import { it } from 'vitest';
import { probeScreened } from '../../../shared/checks/rules/probe-screened.ts';
import { checkRule } from './check-rule.ts';

it('notes that there is no field', () => {
  checkRule(
    probeScreened,
    `
    \`\`\`electrodes
    paper 200 mm × 100 mm, 5 kΩ per square
    supply cell 1.5 V
    bar N 10 mm × 100 mm at (45, 50) mm negative
    bar P 10 mm × 100 mm, 100 mm right of N positive
    ring R diameter 40 mm, wall 5 mm at centre floating
    probe C at (105, 50) mm
          ^ note probe-screened C stands inside R, where there is no field: it reads 0.750 V anywhere there
    \`\`\`
  `,
  );
});

it('says nothing where the sheet means it', () => {
  checkRule(
    probeScreened,
    `
    \`\`\`electrodes
    paper 200 mm × 100 mm, 5 kΩ per square
    supply cell 1.5 V
    bar N 10 mm × 100 mm at (45, 50) mm negative
    bar P 10 mm × 100 mm, 100 mm right of N positive
    ring R diameter 40 mm, wall 5 mm at centre floating
    probe C at (105, 50) mm
    \`\`\`

    What do you read inside the ring?
  `,
  );
});

it('says nothing of an open ring, nor of a ring with something in it', () => {
  checkRule(
    probeScreened,
    `
    \`\`\`electrodes
    paper 200 mm × 100 mm, 5 kΩ per square
    supply cell 1.5 V
    bar N 10 mm × 100 mm at (45, 50) mm negative
    bar P 10 mm × 100 mm, 100 mm right of N positive
    ring R diameter 40 mm, wall 5 mm, opening 10 mm facing right at centre floating
    probe C at (105, 50) mm
    \`\`\`

    \`\`\`electrodes radial
    paper 200 mm × 100 mm
    supply cell 1.5 V
    disc D radius 5 mm at centre positive
    ring R diameter 80 mm, wall 5 mm at centre negative
    probe C at (120, 50) mm
    \`\`\`
  `,
  );
});
