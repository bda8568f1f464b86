/** Starting points for a new sheet: small and whole, to be filled in and changed. */
import { sheetText } from './sheet-text.ts';

export interface NewSheet {
  /** A word for programs. */
  readonly id: string;
  readonly label: string;
  readonly detail: string;
  readonly text: string;
}

const bars: NewSheet = {
  id: 'bars',
  label: 'Two straight bars',
  detail: 'A uniform field: readings along a line, gradient, strength',
  text: sheetText({
    title: 'The field between two straight bars',
    aim: 'To find lines of equal potential between two straight electrodes, and the strength of the field.',
    electrodes: 'two straight copper electrodes, with clips',
    block: `\`\`\`electrodes bars
paper   260 mm × 170 mm, 5 kΩ per square
supply  cell 1.5 V, internal 0.5 Ω, zinc-carbon
meter   10 MΩ, resolution 0.01 V, range 2 V, probe tip 1 mm

bar     N  10 mm × 140 mm at (75, 85) mm                negative
bar     P  10 mm × 140 mm, 100 mm right of N            positive

row     A  from N to P every 10 mm
probe   M  at A 50 mm
equipotentials 0.25 V to 1.25 V every 0.25 V
draw    electrodes, probes, dimensions
\`\`\``,
    predict: {
      ask: 'What will the voltmeter show half-way between N and P? Give a reason. [2]',
      answer: ['!{M}; accept half of the voltage as measured. (1)', 'By symmetry. (1)'],
    },
    row: 'A',
    questions: [
      {
        ask: 'Draw a graph of *V* against the distance. Its gradient between the bars is ?{gradient A}. [2]',
        answer: ['A large triangle, unit V/m. (1)', '!{gradient A} (1)'],
      },
      {
        ask: 'How strong is the field at M, and which way does it point? [2]',
        answer: ['!{M.strength}, the gradient. (1)', 'From P to N, from high to low potential. (1)'],
      },
    ],
    setup: 'bars',
  }),
};

const disc: NewSheet = {
  id: 'disc-in-ring',
  label: 'A disc in a ring',
  detail: 'A radial field: the potential against ln r is a straight line',
  text: sheetText({
    title: 'How the potential falls round a disc',
    aim: 'To test how the potential falls with the distance from a disc in the middle of a ring.',
    electrodes: 'one disc and one ring of copper, with clips',
    block: `\`\`\`electrodes radial
paper   190 mm × 190 mm, 5 kΩ per square
supply  cell 1.5 V, internal 0.5 Ω, zinc-carbon
meter   10 MΩ, resolution 0.01 V, range 2 V, probe tip 1 mm

disc    D  diameter 20 mm at centre                     positive
ring    R  inside diameter 160 mm, wall 5 mm at centre  negative

row     E  from centre of D right at 15 mm, 20 mm, 30 mm, 40 mm, 50 mm, 60 mm, 70 mm
probe   H  at E 40 mm
equipotentials 0.25 V to 1.25 V every 0.25 V
draw    electrodes, probes, dimensions
\`\`\``,
    predict: {
      ask: 'Is half of the voltage reached half-way between disc and ring, nearer to the disc, or nearer to the ring? [1]',
      answer: ['Nearer to the disc, where the field is strongest. (1)'],
    },
    row: 'E: r, V, ln r',
    questions: [
      { ask: 'At *r* = 40 mm the reading is ?{H}. [1]', answer: ['!{H}; accept !{range H}. (1)'] },
      {
        ask: 'Plot *V* against *r*, then against ln *r*. Which is straight? [1]',
        answer: ['*V* against ln *r*. (1)'],
      },
    ],
    setup: 'radial',
  }),
};

const hollow: NewSheet = {
  id: 'hollow-ring',
  label: 'A hollow ring between bars',
  detail: 'No field inside a conductor: one reading everywhere in the ring',
  text: sheetText({
    title: 'Inside a hollow conductor',
    aim: 'To find the potential inside a hollow metal ring that lies in a field and is not connected.',
    electrodes: 'two straight electrodes and one closed ring of copper, with clips',
    block: `\`\`\`electrodes floating
paper   240 mm × 160 mm, 5 kΩ per square
supply  cell 1.5 V, internal 0.5 Ω, zinc-carbon
meter   10 MΩ, resolution 0.01 V, range 2 V, probe tip 1 mm

bar     N  10 mm × 120 mm at (60, 80) mm                negative
bar     P  10 mm × 120 mm, 100 mm right of N            positive
ring    R  diameter 50 mm, wall 5 mm, midway between N and P  floating

row     A  from N to P every 25 mm
probe   C  at centre of R
probe   D  at (115, 90) mm
equipotentials 0.2 V to 1.4 V every 0.2 V
draw    electrodes, probes
\`\`\``,
    predict: {
      ask: 'What do you expect to read in the middle of the ring? Give a reason. [2]',
      answer: ['!{C} (1)', 'The ring lies midway, so by symmetry it takes half of the voltage. (1)'],
    },
    row: 'A',
    questions: [
      {
        ask: 'The readings at C and D are ?{C} and ?{D}. What do they tell you of the field inside? [2]',
        answer: ['Both !{C}, the two alike. (1)', 'No difference of potential, so no field. (1)'],
      },
    ],
    setup: 'floating',
  }),
};

const spikes: NewSheet = {
  id: 'spikes',
  label: 'A spike facing a bar',
  detail: 'Crowded lines at a tip: strengths over a stated distance',
  text: sheetText({
    title: 'The field at a tip',
    aim: 'To compare the strength of the field at a tip with that at a straight edge.',
    electrodes: 'one bar and one spike of copper, with clips',
    block: `\`\`\`electrodes spike
paper   230 mm × 170 mm, 5 kΩ per square
supply  cell 1.5 V, internal 0.5 Ω, zinc-carbon
meter   10 MΩ, resolution 0.01 V, range 2 V, probe tip 1 mm

bar     N  10 mm × 130 mm at (50, 85) mm                negative
spike   T  base 20 mm, length 80 mm, tip at (115, 85) mm pointing left  positive

row     A  from T to N at 5 mm, 10 mm, 20 mm, 30 mm, 40 mm, 50 mm, 55 mm
equipotentials 0.25 V to 1.25 V every 0.25 V
draw    electrodes, probes, dimensions
\`\`\``,
    predict: {
      ask: 'Where will the lines of equal potential lie closest? [1]',
      answer: ['At the tip. (1)'],
    },
    row: 'A',
    questions: [
      {
        ask: 'Mean strength over the first 5 mm from the tip: ?{mean strength A from 0 mm to 5 mm}. [2]',
        answer: [
          'Difference of potential divided by distance. (1)',
          '!{mean strength A from 0 mm to 5 mm}; accept within a fifth, as 1 mm in 5 mm is uncertain. (1)',
        ],
      },
    ],
    setup: 'spike',
    point: 'The spike pierces skin even when its tip is rounded: carry it flat, by the clip end, point away.',
  }),
};

const blank: NewSheet = {
  id: 'blank',
  label: 'A block alone',
  detail: 'Two round electrodes and notes on safety, nothing else',
  text: `# Two small discs

::: safety
- Do not let the two clips touch. Join the cell last and take it off first; if a lead feels warm, disconnect the cell.
- Wash your hands afterwards.
:::

\`\`\`electrodes pair
paper   240 mm × 160 mm, 5 kΩ per square
supply  cell 1.5 V, internal 0.5 Ω, zinc-carbon

disc    N  diameter 10 mm at (70, 80) mm                negative
disc    P  diameter 10 mm, 100 mm right of N            positive

probe   M  at (120, 80) mm
equipotentials 0.25 V to 1.25 V every 0.25 V
\`\`\`

Midway between the discs the voltmeter shows ?{M}.
`,
};

export const newSheets: readonly NewSheet[] = [bars, disc, hollow, spikes, blank];
