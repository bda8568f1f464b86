/** Texts to fill in that are longer than a line: the table that completion and the snippets of editors are made from. */

export interface Template {
  /** What is typed to get it: one word. */
  readonly prefix: string;
  readonly title: string;
  /** Where it can stand: in the text of a sheet, or in a block. */
  readonly where: 'sheet' | 'block';
  /** Lines; what stands between « and » is an example, to be filled in. */
  readonly lines: readonly string[];
}

const apparatus = [
  'paper   «240 mm × 160 mm», «5 kΩ» per square',
  'supply  cell «1.5 V»',
  'meter   «10 MΩ», resolution «0.01 V»',
];

const bars = [
  'bar     N  «10 mm × 120 mm» at «(60, 80) mm»                negative',
  'bar     P  «10 mm × 120 mm», «100 mm» right of N            positive',
];

/** What follows the marks of a fence that opens a block. */
export const wholeBlock: readonly string[] = [
  'electrodes «bars»',
  ...apparatus,
  '',
  ...bars,
  '',
  'probe   M  at centre',
];

export const templates: readonly Template[] = [
  {
    prefix: 'electrodes',
    title: 'A block: two bars on conducting paper',
    where: 'sheet',
    lines: [`\`\`\`${wholeBlock[0]}`, ...wholeBlock.slice(1), '```'],
  },
  {
    prefix: 'electrodes-like',
    title: 'A block that varies another one',
    where: 'sheet',
    lines: ['```electrodes «reversed» like «bars»', 'reverse supply', '```'],
  },
  {
    prefix: 'passage',
    title: 'A passage for some readers',
    where: 'sheet',
    lines: ['::: «teachers»', '«For them alone.»', ':::'],
  },
  {
    prefix: 'answer',
    title: 'An answer: teachers read it, pupils get lines to write on',
    where: 'sheet',
    lines: ['::: answer «2» lines', '«The answer.» (1)', ':::'],
  },
  {
    prefix: 'readings-table',
    title: 'A table of readings, for pupils to fill in',
    where: 'sheet',
    lines: ['?{readings «A»: distance, V "«Readings along A»"}'],
  },
  { prefix: 'apparatus', title: 'Paper, supply and meter', where: 'block', lines: apparatus },
  { prefix: 'two-bars', title: 'Two parallel bars', where: 'block', lines: bars },
  {
    prefix: 'disc-in-ring',
    title: 'A disc in the middle of a ring',
    where: 'block',
    lines: [
      'disc    D  diameter «20 mm» at centre                     positive',
      'ring    R  diameter «120 mm», wall «10 mm», at centre       negative',
    ],
  },
  {
    prefix: 'spike-and-bar',
    title: 'A spike that points to a bar',
    where: 'block',
    lines: [
      'bar     N  «10 mm × 120 mm» at «(60, 80) mm»                negative',
      'spike   S  base «20 mm», length «40 mm», tip at «(130, 80) mm» pointing left  positive',
    ],
  },
];
