/** The sheets that are opened in editors. */

/** What a sheet says besides its setups, so that nothing is missed. */
const front = `---
risk-assessment: RA-P12-04
next-review: 2099-09-01
---
`;
const safety = `## Safety

- Join the cell last, keep the clips apart, and take the cell off if anything grows warm.
- Edges of cut copper are sharp: hold the strips by the clip end; count them out and in.
- Keep the point of the probe away from eyes, and the meter lead out of the ampere socket; put the cap on.
- Wash your hands afterwards: graphite and carbon rub off.
`;

const block = `\`\`\`electrodes bars
paper   260 mm × 170 mm, 5 kΩ per square
supply  cell 1.5 V, internal 0.5 Ω, zinc-carbon
meter   10 MΩ, resolution 0.01 V, range 2 V, probe tip 1 mm

bar     N  10 mm × 140 mm at (75, 85) mm      negative
bar     P  10 mm × 140 mm, 100 mm right of N  positive

row     A  from N to P every 10 mm
probe   M  at A 50 mm
equipotentials 0.25 V to 1.25 V every 0.25 V
field-lines 11
draw    electrodes, probes, dimensions
draw    electrodes, probes, dimensions, equipotentials, field-lines, values for teachers
\`\`\``;

/** No findings; for each reader something of its own. */
export const bars = `${front}# Two bars

Lines of equal potential between two straight bars.

${block}

The reading at M is ?{bars.M}, the current is ?{bars.current}.

1. What is the reading half-way? [1]

   ::: answer
   It is !{bars.M}, by symmetry. (1)
   :::

::: teachers
Between the bars the paper is ?{bars.resistance}.
:::

::: technicians
Cut two strips of copper and deburr their edges.
:::

## Another set-up

\`\`\`electrodes wider like bars
without P
bar     P  10 mm × 140 mm, 120 mm right of N  positive
\`\`\`

Now the reading at M is ?{wider.M}.

${safety}`;

/** Slips with known mends, one a line. */
export const slips = `${front}# Slips

\`\`\`electrodes slips
paper   260 mm × 170 mm, 5 kΩ per square
supply  cell 1,5 V, zinc-carbon
bar     N  10 mm × 140 mm at (75, 85) mm      negative
bar     P  10 mm × 140 mm, 100 mm right of N  positive
prob    M  at (125, 85) mm
\`\`\`

The reading is 5V.

${safety}`;

/** Set wildly, with a word in prose that is no probe. */
export const wild = `${front}# Wild

\`\`\`electrodes wild
paper 260 mm × 170 mm, 5 kΩ per square
supply    cell 1.5 V, zinc-carbon
bar   N 10 mm × 140 mm at (75, 85) mm negative
bar   P 10 mm × 140 mm, 100 mm right of N positive
probe M   at (125, 85) mm
\`\`\`

The reading at M is ?{wild.M}.

${safety}`;

/** Markdown without a block of ours. */
export const ordinary = `# Ordinary

No block here, and 5V of prose that is nobody's business.

\`\`\`js
const electrodes = 2;
\`\`\`
`;
