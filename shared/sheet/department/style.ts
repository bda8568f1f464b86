/** House style: matters on which good schools differ, in one table. */

export interface StyleChoice {
  readonly meaning: string;
  /** The word for each way, with an example of it. */
  readonly ways: Readonly<Record<string, string>>;
}

export const styleChoices = {
  headings: {
    meaning: 'The unit in the heading of a column.',
    ways: { solidus: 'x / mm', brackets: 'x (mm)' },
  },
  percent: {
    meaning: 'The space before a per cent sign.',
    ways: { spaced: '10 %', joined: '10%' },
  },
  'direct-current': {
    meaning: 'The letters for direct and alternating current; they stand apart from the unit.',
    ways: { 'd.c.': '6 V d.c., an a.c. supply', DC: '6 V DC, an AC supply' },
  },
  'four-digits': {
    meaning: 'Numbers of four digits; longer ones are in groups of three anyway.',
    ways: { together: '1500 V', grouped: '1 500 V' },
  },
  strength: {
    meaning: 'The unit of a field strength in the text.',
    ways: { 'V/m': '15 V/m', 'N/C': '15 N/C' },
  },
  language: {
    meaning: 'The words of sheets that do not say.',
    ways: { 'en-GB': 'millimetre, centre', 'en-US': 'millimeter, center' },
  },
} as const satisfies Readonly<Record<string, StyleChoice>>;

export type StyleName = keyof typeof styleChoices;

export const styleNames = Object.keys(styleChoices) as readonly StyleName[];

/** Null: the department has not said, and both ways may stand. */
export type HouseStyle = {
  readonly [Name in StyleName]: keyof (typeof styleChoices)[Name]['ways'] | null;
};
