/** Full-size prints over several pages. */
import { it } from 'vitest';
import { paperTiled } from '../../../shared/checks/rules/paper-tiled.ts';
import { checkRule } from './check-rule.ts';

it('notes a paper larger than a page takes', () => {
  checkRule(
    paperTiled,
    `
    \`\`\`electrodes
    paper 290 mm × 200 mm
    supply cell 1.5 V
    bar N 10 mm × 100 mm at (45, 50) mm negative
    bar P 10 mm × 100 mm, 100 mm right of N positive
    \`\`\`

    ?{plot}
    ^^^^^^^ note paper-tiled This paper is 290 mm × 200 mm; at full size a page of A4 takes 265 mm × 170 mm
  `,
  );
});

it('knows the page of the front matter, and papers that stand upright', () => {
  checkRule(
    paperTiled,
    `
    ---
    print: Letter
    ---

    \`\`\`electrodes small
    paper 175 mm × 247 mm
    supply cell 1.5 V
    disc N radius 5 mm at (50, 100) mm negative
    disc P radius 5 mm at (120, 100) mm positive
    \`\`\`

    !{placement}

    \`\`\`electrodes large
    paper 250 mm × 170 mm
    supply cell 1.5 V
    bar N 10 mm × 100 mm at (45, 50) mm negative
    bar P 10 mm × 100 mm, 100 mm right of N positive
    \`\`\`

    !{placement large}
    ^^^^^^^^^^^^^^^^^^ note paper-tiled Letter takes 247 mm × 175 mm
  `,
  );
});

it('says nothing of what fits, and of other figures', () => {
  checkRule(
    paperTiled,
    `
    \`\`\`electrodes
    paper 265 mm × 170 mm
    supply cell 1.5 V
    bar N 10 mm × 100 mm at (45, 50) mm negative
    bar P 10 mm × 100 mm, 100 mm right of N positive
    \`\`\`

    ?{plot}
    
    !{placement}

    \`\`\`electrodes large
    paper 290 mm × 200 mm
    supply cell 1.5 V
    bar N 10 mm × 100 mm at (45, 50) mm negative
    bar P 10 mm × 100 mm, 100 mm right of N positive
    \`\`\`

    !{circuit large}
  `,
  );
});
