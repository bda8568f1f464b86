/** What the rules find in sheet, setups and solutions together, with an example of each. */
import type { checkCodes } from '../check-codes.ts';
import { type Explanation, lines } from './explanation.ts';

/** A block of its own, with a sentence about it. */
const setup = (name: string, paper: string, electrodes: readonly string[], sentence: string): string =>
  lines(
    `\`\`\`electrodes ${name}`,
    `paper ${paper}, 5 kΩ per square`,
    'supply cell 1.5 V, zinc-carbon',
    ...electrodes,
    '```',
    '',
    sentence,
  );

const radial = (sentence: string): string =>
  setup(
    'radial',
    '190 mm × 190 mm',
    [
      'disc D diameter 20 mm at centre positive',
      'ring R inside diameter 150 mm, wall 5 mm at centre negative',
    ],
    sentence,
  );

/** Bars of 40 mm, and P so far to the right. */
const short = (sentence: string, gap = '100 mm'): string =>
  setup(
    'short',
    '240 mm × 160 mm',
    ['bar N 10 mm × 40 mm at (65, 80) mm negative', `bar P 10 mm × 40 mm, ${gap} right of N positive`],
    sentence,
  );

const plotted = (paper: string): string =>
  setup(
    'large',
    paper,
    ['bar N 10 mm × 120 mm at (65, 80) mm negative', 'bar P 10 mm × 120 mm, 100 mm right of N positive'],
    '?{plot large}',
  );

export const checkExplanations: Readonly<Record<keyof typeof checkCodes, Explanation>> = {
  'supply-limit': {
    why: 'A supply at its limit lowers its voltage: the bars no longer stand at what the sheet says, and every reading is too small by the same factor.',
    from: 'block',
    wrong: 'supply power-pack 6 V, limit 1 mA',
    right: 'supply power-pack 6 V, limit 5 mA',
    allow: 'pupils are to find out that the supply gives way',
  },
  'meter-range': {
    why: 'Beyond its range a meter shows no number, and a pupil who has not learnt to change the range takes it for broken.',
    from: 'block',
    wrong: lines('meter 10 MΩ, resolution 1 mV, range 0.2 V', 'probe M at (110, 80) mm'),
    right: lines('meter 10 MΩ, resolution 1 mV, range 2 V', 'probe M at (110, 80) mm'),
    allow: 'pupils are to learn to change the range',
  },
  'equipotential-missed': {
    why: 'Clips and the cell take their share, so that the metal itself does not reach the full voltage. Pupils would look for the line and not find it.',
    from: 'block',
    wrong: lines('clip P 500 Ω', 'equipotentials 0.5 V, 1.45 V'),
    right: lines('clip P 500 Ω', 'equipotentials 0.5 V, 1.0 V'),
    allow: 'pupils are to find out what a bad clip does',
  },
  'equipotentials-close': {
    why: 'The meter shows the same number on both lines, so pupils plot a broad band and not two lines.',
    from: 'block',
    wrong: lines('meter 10 MΩ, resolution 0.05 V', 'equipotentials 0.70 V, 0.72 V, 0.74 V'),
    right: lines('meter 10 MΩ, resolution 0.05 V', 'equipotentials 0.6 V, 0.7 V, 0.8 V'),
    allow: 'pupils are to see where the meter gives up',
  },
  'probe-on-metal': {
    why: 'Metal is at one potential all over, so nothing is measured there but the lead. If the paper beside it was meant, the place is wrong.',
    from: 'block',
    wrong: 'probe K at (60, 80) mm',
    right: 'probe K at (80, 80) mm',
    allow: 'pupils check the bar itself first',
  },
  'probe-screened': {
    why: 'Inside closed metal the reading is the same everywhere. That is worth finding out, and worth a word in the sheet; without one the probe stands there by chance.',
    from: 'block',
    wrong: lines('ring R diameter 50 mm, wall 4 mm at (110, 80) mm floating', 'probe C at centre of R'),
    right: lines('ring R diameter 50 mm, wall 4 mm at (110, 80) mm floating', 'probe C at (75, 80) mm'),
    allow: 'pupils are to find that nothing changes in there',
  },
  'no-current': {
    why: 'The cut parts the paper from side to side, so each half sits at the potential of its bar. There is nothing to map.',
    from: 'block',
    wrong: 'slit from (110, 0) mm to (110, 160) mm',
    right: 'slit from (110, 20) mm to (110, 140) mm',
    allow: 'pupils are to find out why nothing flows',
  },
  'cell-drain': {
    why: 'The voltage of a cell sags while it is drained, and readings from the end of the lesson no longer fit those from its beginning. Often a prefix of the sheet resistance is missing.',
    from: 'block',
    wrong: 'paper 240 mm × 160 mm, 5 Ω per square',
    right: 'paper 240 mm × 160 mm, 5 kΩ per square',
    allow: 'fresh cells are issued for every lesson',
  },
  'paper-heat': {
    why: 'Warm paper changes its resistance, and its coating comes off in the end. Paper of some kilohms never warms; often a prefix is missing.',
    from: 'block',
    wrong: lines('paper 240 mm × 160 mm, 5 Ω per square', 'supply power-pack 6 V, limit 5 A'),
    right: lines('paper 240 mm × 160 mm, 5 kΩ per square', 'supply power-pack 6 V, limit 5 A'),
    allow: 'the lesson measures this warmth',
  },
  'meter-loading': {
    why: 'The meter draws current through the paper under its tip, and shows too little. Pupils with another meter find other values on the same paper.',
    from: 'block',
    wrong: lines('meter 100 kΩ, resolution 0.01 V, probe tip 1 mm', 'probe M at (110, 80) mm'),
    right: lines('meter 10 MΩ, resolution 0.01 V, probe tip 1 mm', 'probe M at (110, 80) mm'),
    allow: 'pupils compare two meters',
  },
  'edge-near': {
    why: 'No current leaves the paper, so close to its edge the lines turn and meet it at a right angle. A field without edges is another one there.',
    from: 'sheet',
    wrong: short('Ignore the edges of the paper.', '155 mm'),
    right: short('Ignore the edges of the paper.'),
    allow: 'the next question asks what the edge does',
  },
  'field-not-uniform': {
    why: 'Bars that are not much longer than their gap let the field bulge at their ends. Pupils who work with one value of E then find others, and trust their bench less.',
    from: 'sheet',
    wrong: short('The field between the bars is uniform.'),
    right: short('The field between the bars is nearly uniform in the middle.'),
    allow: 'the next question asks where this fails',
  },
  'radial-law': {
    why: 'The paper is a slice through a long cable, not through space round a point: V goes as ln r there, and E as 1/r. The mistake stands in printed manuals too.',
    from: 'sheet',
    wrong: radial('The potential round the disc varies as 1/r.'),
    right: radial('The potential round the disc varies as ln r.'),
    allow: 'pupils are to test this claim',
  },
  'paper-tiled': {
    why: 'A plotting sheet at full size then comes out of the printer in several pages that somebody has to join edge to edge.',
    from: 'sheet',
    wrong: plotted('400 mm × 300 mm'),
    right: plotted('240 mm × 160 mm'),
    allow: 'the office prints on A3',
  },
  'bounds-wide': {
    why: 'Fewer digits of the readings are proven, and no more are printed than that. A very narrow gap or very many electrodes cost most of the work.',
    from: 'block',
    wrong: null,
    right: null,
    allow: 'two digits are enough here',
  },
};
