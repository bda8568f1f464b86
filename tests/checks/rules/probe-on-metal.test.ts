/** Probes on metal. */
import { it } from 'vitest';
import { probeOnMetal } from '../../../shared/checks/rules/probe-on-metal.ts';
import { checkRule } from './check-rule.ts';

it('notes what the metal reads', () => {
  checkRule(
    probeOnMetal,
    `
    \`\`\`electrodes
    paper 200 mm × 100 mm, 5 kΩ per square
    supply cell 1.5 V
    bar N 10 mm × 100 mm at (45, 50) mm negative
    bar P 10 mm × 100 mm, 100 mm right of N positive
    probe K at (150, 20) mm
          ^ note probe-on-metal K stands on the metal of P: it reads 1.500 V anywhere there, and the field strength is 0 V/m
    \`\`\`
  `,
  );
});

it('counts the edge as metal, and the hollow of a ring as paper', () => {
  checkRule(
    probeOnMetal,
    `
    \`\`\`electrodes
    paper 200 mm × 100 mm, 5 kΩ per square
    supply cell 1.5 V
    bar N 10 mm × 100 mm at (45, 50) mm negative
    bar P 10 mm × 100 mm, 100 mm right of N positive
    ring R diameter 40 mm, wall 5 mm at centre floating
    probe C at centre of R
    probe E at (50, 50) mm
          ^ note probe-on-metal metal of N
    \`\`\`
  `,
  );
});

it('says nothing of probes on paper', () => {
  checkRule(
    probeOnMetal,
    `
    \`\`\`electrodes
    paper 200 mm × 100 mm, 5 kΩ per square
    supply cell 1.5 V
    bar N 10 mm × 100 mm at (45, 50) mm negative
    bar P 10 mm × 100 mm, 100 mm right of N positive
    probe M at (100, 50) mm
    \`\`\`
  `,
  );
});
