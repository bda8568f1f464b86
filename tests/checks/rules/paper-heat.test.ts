/** Heat in the paper and at clips. */
import { expect, it } from 'vitest';
import { heatOf, paperHeat } from '../../../shared/checks/rules/paper-heat.ts';
import { resolveSetups } from '../../../shared/setup/resolve.ts';
import { solveSetup } from '../../../shared/setup/solve-setup.ts';
import { usualDepartment } from '../../../shared/sheet/department/department.ts';
import { readSheet } from '../../../shared/sheet/read-sheet.ts';
import { checkRule } from './check-rule.ts';

// 12 V on half a square of 1 kΩ: P = V²/R = 144/500 W = 0.288 W over 200 cm², 1.44 mW/cm² (common practice: warm spots at clips).
const twelveVolts = `
    paper 200 mm × 200 mm, 1 kΩ per square
    supply power-pack 12 V
    bar N 10 mm × 200 mm at (45, 100) mm negative
    bar P 10 mm × 200 mm, 100 mm right of N positive`;

it('is V²/R in all, and E²/R for each area', () => {
  const sheet = readSheet({ name: 'sheet.md', text: `\`\`\`electrodes\n${twelveVolts}\n\`\`\`\n` });
  const [setup] = resolveSetups(sheet.blocks.map(({ block }) => block));
  if (setup === undefined) throw new Error('no setup');
  const { solved } = solveSetup(setup, { gap: 1e-8, traces: false, samples: [] });
  const heat = solved === null ? null : heatOf(setup, solved);
  expect(heat?.whole_mW).toBeCloseTo(288, 3);
  expect(heat?.paper_mW_cm2).toBeCloseTo(1.44, 4);
  // Over the whole paper, of which half lies between the bars.
  expect(heat?.mean_mW_cm2).toBeCloseTo(0.72, 5);
  expect(heat?.clip_mW_cm2).toBe(0);
});

it('is no matter within the limit', () => {
  checkRule(
    paperHeat,
    `
    \`\`\`electrodes${twelveVolts}
    \`\`\`
  `,
  );
});

it('is one where the department allows less', () => {
  const { limits } = usualDepartment;
  const department = {
    ...usualDepartment,
    limits: { ...limits, heat: { ...limits.heat, value: 1, source: 'school rule 7' } },
  };
  checkRule(
    paperHeat,
    `
    \`\`\`electrodes${twelveVolts.replace('12 V', '12 V\n    ^^^^^^^^^^^^^^^^^^^^^^ warning paper-heat turns 290 mW into heat, 0.72 mW/cm² on average and 1.4 mW/cm² where the field is strongest, more than 1 mW/cm² (school rule 7)')}
    \`\`\`
  `,
    { department },
  );
});

// I = 12 V/(500 Ω + 2 × 100 Ω) = 17 mA; I²R = 29 mW in a clip of 100 Ω, on about 1 cm².
it('is greatest at a poor clip', () => {
  checkRule(
    paperHeat,
    `
    \`\`\`electrodes
    paper 200 mm × 200 mm, 1 kΩ per square
    supply power-pack 12 V
    ^^^^^^^^^^^^^^^^^^^^^^ warning paper-heat 29 mW/cm² at a clip, more than 10 mW/cm²
    bar N 10 mm × 200 mm at (45, 100) mm negative
    bar P 10 mm × 200 mm, 100 mm right of N positive
    clip N 100 Ω
    clip P 100 Ω
    \`\`\`
  `,
  );
});

it('is not known without a sheet resistance', () => {
  checkRule(
    paperHeat,
    `
    \`\`\`electrodes
    paper 200 mm × 200 mm
    supply power-pack 60 V
    bar N 10 mm × 200 mm at (45, 100) mm negative
    bar P 10 mm × 200 mm, 100 mm right of N positive
    \`\`\`
  `,
  );
});

it('is less where a limit acts, and none where the supply collapses', () => {
  for (const supply of ['power-pack 60 V, limit 10 mA', 'eht 3 kV']) {
    checkRule(
      paperHeat,
      `
    \`\`\`electrodes
    paper 200 mm × 200 mm, 1 kΩ per square
    supply ${supply}
    bar N 10 mm × 200 mm at (45, 100) mm negative
    bar P 10 mm × 200 mm, 100 mm right of N positive
    \`\`\`
  `,
    );
  }
});
