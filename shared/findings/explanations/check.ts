/** What the rules find in sheet, setups and solutions together, with an example of each. */
import type { checkCodes } from '../check-codes.ts';
import { type Explanation, lines } from './explanation.ts';

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
  'bounds-wide': {
    why: 'Fewer digits of the readings are proven, and no more are printed than that. A very narrow gap or very many electrodes cost most of the work.',
    from: 'block',
    wrong: null,
    right: null,
    allow: 'two digits are enough here',
  },
};
