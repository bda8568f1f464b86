/** Sheets with setups that are solved once, and the findings of one rule about a text that stands before or after their blocks. */
import { type Rule, usualStandards } from '../../../shared/checks/rule.ts';
import type { Finding } from '../../../shared/findings/finding.ts';
import type { SolvedSetup } from '../../../shared/setup/readings.ts';
import { resolveSetups } from '../../../shared/setup/resolve.ts';
import type { Setup } from '../../../shared/setup/setup.ts';
import { solveSetup } from '../../../shared/setup/solve-setup.ts';
import { readSheet } from '../../../shared/sheet/read-sheet.ts';

/** 1.5 V on bars 100 mm apart, M in the middle (0.75 V), Q at 20 mm (0.31 V), ring and other metal left to the setups that have them. */
export const bars = `\`\`\`electrodes bars
paper   260 mm × 170 mm, 5 kΩ per square
supply  cell 1.5 V, zinc-carbon
meter   10 MΩ, resolution 0.01 V, probe tip 1 mm
bar     N  10 mm × 140 mm at (75, 85) mm                negative
bar     P  10 mm × 140 mm, 100 mm right of N            positive
row     A  from N to P every 10 mm
probe   M  at A 50 mm
probe   Q  at A 20 mm
\`\`\``;

/** A floating ring midway, joined to P in the second. Inside: 0.75 V, then 1.5 V. */
export const rings = `\`\`\`electrodes floating
paper   240 mm × 160 mm, 5 kΩ per square
supply  cell 1.5 V
meter   10 MΩ, resolution 0.01 V
bar     N  10 mm × 120 mm at (60, 80) mm                negative
bar     P  10 mm × 120 mm, 100 mm right of N            positive
ring    R  diameter 50 mm, wall 5 mm, midway between N and P  floating
probe   C  at centre of R
probe   K  at (80, 80) mm
\`\`\`

\`\`\`electrodes connected like floating
change  R  joined to P
\`\`\``;

/** The floating ring alone. */
export const ring = rings.slice(0, rings.indexOf('\n\n'));

/** Radii from 15 mm to 60 mm: V = 1.5 V ln(80 mm / r)/ln 8, so 0.50 V at 40 mm. */
export const radial = `\`\`\`electrodes radial
paper   190 mm × 190 mm, 1 kΩ per square
supply  cell 1.5 V
meter   10 MΩ, resolution 0.01 V, probe tip 0.5 mm
disc    D  diameter 20 mm at centre                     positive
ring    R  inside diameter 160 mm, wall 5 mm at centre  negative
row     E  from centre of D right at 15 mm, 20 mm, 30 mm, 40 mm, 60 mm
probe   H  at E 40 mm
\`\`\``;

/** Tip 60 mm from the bar. */
export const spike = `\`\`\`electrodes spike
paper   290 mm × 200 mm, 5 kΩ per square
supply  cell 1.5 V
meter   10 MΩ, resolution 0.01 V, probe tip 0.5 mm
bar     N  10 mm × 160 mm at (80, 100) mm  negative
spike   S  base 20 mm, length 80 mm, tip at (145, 100) mm pointing left  positive
row     A  from S to N at 5 mm, 10 mm, 15 mm, 20 mm, 30 mm, 40 mm, 50 mm
\`\`\``;

const solved = new Map<string, SolvedSetup | null>();

function solutionOf(setup: Setup): SolvedSetup | null {
  const key = JSON.stringify(setup, (name, value: unknown) =>
    name === 'span' || name === 'findings' ? undefined : value,
  );
  const known = solved.get(key);
  if (known !== undefined) return known;
  const { solved: found } = solveSetup(setup, { gap: 1e-6, traces: true, samples: [] });
  solved.set(key, found);
  return found;
}

/** Of one rule over a sheet. */
export function findingsOf(
  rule: Rule,
  text: string,
  standards: Partial<typeof usualStandards> = {},
): readonly Finding[] {
  const sheet = readSheet({ name: 'sheet.md', text });
  const setups = resolveSetups(sheet.blocks.map(({ block }) => block));
  const solutions = new Map(
    setups.flatMap((setup) => {
      const found = solutionOf(setup);
      return found === null ? [] : [[setup.block, found] as const];
    }),
  );
  return rule({ sheet, setups, solutions, ...usualStandards, ...standards });
}
