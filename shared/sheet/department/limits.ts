/** Limits that the checks hold sheets against, in one table: what is usual, and on whose word. A department may set its own. */

export interface UsualLimit {
  /** What is limited, as a sentence. */
  readonly meaning: string;
  readonly value: number;
  readonly unit: LimitUnit;
  /** Published source, or "common practice, no source". */
  readonly source: string;
  /** Beyond which no department's word goes, with its reason. */
  readonly most?: { readonly value: number; readonly why: string };
}

export type LimitUnit = 'V' | 'mA' | 'mW/cm²' | 'mA h' | 'mJ' | 'µC';

/** Units in which a limit may be written, with what one of each is in the unit of the table. */
export const limitUnits: Readonly<Record<LimitUnit, Readonly<Record<string, number>>>> = {
  V: { V: 1, mV: 1e-3, kV: 1e3 },
  mA: { mA: 1, µA: 1e-3, A: 1e3 },
  'mW/cm²': { 'mW/cm²': 1, 'W/m²': 0.1 },
  'mA h': { 'mA h': 1, 'A h': 1e3 },
  mJ: { mJ: 1, J: 1e3 },
  µC: { µC: 1, nC: 1e-3 },
};

/** Of each the larger value is the looser one. */
export const usualLimits = {
  'touch-dc': {
    meaning: 'Direct voltage on bare electrodes that pupils can touch, dry.',
    value: 40,
    unit: 'V',
    source:
      'common practice of schools; IEC 60364-4-41 has 60 V, for sources separated from the mains (clause from memory)',
    most: { value: 120, why: 'IEC 61140: nothing beyond it is extra-low voltage' },
  },
  'touch-ac': {
    meaning: 'Alternating voltage, r.m.s., on bare electrodes that pupils can touch, dry.',
    value: 25,
    unit: 'V',
    source: 'IEC 60364-4-41, for sources separated from the mains',
    most: { value: 50, why: 'IEC 61140: nothing beyond it is extra-low voltage' },
  },
  'liquid-dc': {
    meaning: 'Direct voltage on bare electrodes near a liquid.',
    value: 12,
    unit: 'V',
    source: 'common practice of schools; IEC 60364-4-41 has 30 V (clause 414, from memory)',
    most: { value: 60, why: 'IEC 60364-4-41: more is not for hands in a dry room either' },
  },
  'liquid-ac': {
    meaning: 'Alternating voltage, r.m.s., on bare electrodes near a liquid.',
    value: 12,
    unit: 'V',
    source: 'IEC 60364-4-41 (clause 414, from memory)',
    most: { value: 25, why: 'IEC 60364-4-41: more is not for hands in a dry room either' },
  },
  'practical-voltage': {
    meaning: 'Voltage above which a sheet says why this practical, which needs 1.5 V to 6 V, has more.',
    value: 12,
    unit: 'V',
    source: 'common practice, no source',
  },
  'limited-current': {
    meaning: 'Current up to which a source counts as limited, if its own construction limits it.',
    value: 5,
    unit: 'mA',
    source: 'guidance for school supplies; the touch current of IEC 61010-1 is 2 mA d.c. (from memory)',
    most: { value: 5, why: 'a source that gives more is not a limited one' },
  },
  'paper-current': {
    meaning: 'Current through the paper above which clips grow warm and something in the block is doubtful.',
    value: 50,
    unit: 'mA',
    source: 'common practice, no source',
  },
  heat: {
    meaning: 'Heat made in the paper, where it is greatest.',
    value: 10,
    unit: 'mW/cm²',
    source: 'common practice, no source; still air carries off about 1 mW/cm² for each kelvin',
  },
  'cell-drain': {
    meaning: 'Charge that a lesson takes from a cell.',
    value: 20,
    unit: 'mA h',
    source: 'common practice, no source; a twentieth of what a small zinc–carbon R6 cell gives',
  },
  'stored-energy': {
    meaning: 'Energy that a high-voltage demonstration stores.',
    value: 350,
    unit: 'mJ',
    source:
      'published limit for appliances above 15 kV (from memory); the stricter of energy and charge governs',
  },
  'stored-charge': {
    meaning: 'Charge that a high-voltage demonstration stores.',
    value: 45,
    unit: 'µC',
    source:
      'IEC 61010-1, third edition, up to 15 kV (from memory); the stricter of energy and charge governs',
  },
} as const satisfies Readonly<Record<string, UsualLimit>>;

export type LimitName = keyof typeof usualLimits;

/** In the order of the table. */
export const limitNames = Object.keys(usualLimits) as readonly LimitName[];
