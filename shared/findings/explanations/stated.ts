/** How numbers of the text can contradict the solution, with an example of each. */
import type { StatedCode } from '../stated-codes.ts';
import { type Explanation, lines } from './explanation.ts';

export const statedExplanations: Readonly<Record<StatedCode, Explanation>> = {
  'stated-reading': {
    why: 'Pupils who read something else think that their bench is wrong, and look for a fault that is not there. Either the text or the setup has to change.',
    from: 'sheet',
    wrong: 'Probe M reads 0.80 V.',
    right: 'Probe M reads 0.75 V.',
    allow: 'it was measured last year on paper with a grain',
  },
  'stated-table': {
    why: 'Scripts are marked by this table. A value that no bench gives takes marks from those who measured well.',
    from: 'sheet',
    wrong: lines('Expected readings:', '', '| probe | *V* / V |', '| --- | --- |', '| M | 0.80 |'),
    right: lines('Expected readings:', '', '| probe | *V* / V |', '| --- | --- |', '| M | 0.75 |'),
    allow: null,
  },
  'stated-strength': {
    why: 'Near the ends of bars and at spikes the field is another than the supply divided by the gap. A strength from the formula alone misleads where the formula does not hold.',
    from: 'sheet',
    wrong: 'At M the field strength is 18 V/m.',
    right: 'At M the field strength is 15 V/m.',
    allow: 'it is what the class found, and the text goes on to say why',
  },
  'stated-sum': {
    why: 'Pupils follow a worked example step by step, and cannot tell a slip in it from a step that they have not understood.',
    from: 'sheet',
    wrong: '*E* = 1.5 V / 0.10 m = 25 V/m.',
    right: '*E* = 1.5 V / 0.10 m = 15 V/m.',
    allow: 'pupils are to find the slip',
  },
  'stated-current': {
    why: 'The current tells whether a clip holds and the paper is the one ordered. Compared with a wrong value, a good bench looks faulty, or a faulty one good.',
    from: 'sheet',
    wrong: 'The cell gives a current of 0.80 mA.',
    right: 'The cell gives a current of 0.46 mA.',
    allow: 'it was measured on the paper that is in stock',
  },
  'stated-resistance': {
    why: 'A technician checks the paper against this value before the lesson, and throws away good paper when it is wrong.',
    from: 'sheet',
    wrong: 'The resistance of the paper between the bars is 4.0 kΩ.',
    right: 'The resistance of the paper between the bars is 3.2 kΩ.',
    allow: 'it was measured on the paper that is in stock',
  },
  'stated-supply': {
    why: 'Pupils take what the text says, and all potentials of the sheet were solved with what the block says.',
    from: 'sheet',
    wrong: 'Use a cell of 3.0 V.',
    right: 'Use a cell of 1.5 V.',
    allow: 'the sentence is about another lesson',
  },
  'stated-sheet-resistance': {
    why: 'One of the two papers is not the one on the bench. Potentials stay the same, but currents and what the meter takes do not.',
    from: 'sheet',
    wrong: 'The paper has 2 kΩ per square.',
    right: 'The paper has 5 kΩ per square.',
    allow: 'the old paper is meant, which is used up first',
  },
};
