/** Many ways to state a number: which are held against the solution, and which are no statements about the setup as it stands. */
import { describe, expect, test } from 'vitest';
import { statedNumbers } from '../../../shared/checks/stated/index.ts';
import type { FindingCode } from '../../../shared/findings/catalogue.ts';
import { applied } from '../../check.ts';
import { bars, findingsOf, radial, ring, rings, spike } from './sheets.ts';

type Slip = readonly [text: string, code: FindingCode, mended: string | null];

/** The text stands behind the block. */
function expectSlips(blocks: string, slips: readonly Slip[]): void {
  test.each(slips)('%s', (text, code, mended) => {
    const sheet = `${blocks}\n\n${text}\n`;
    const found = findingsOf(statedNumbers, sheet);
    expect(found.map((one) => one.code)).toEqual([code]);
    expect(found.every(({ fixes }) => fixes.every(({ certain }) => !certain))).toBe(true);
    const [fix] = found[0]?.fixes ?? [];
    expect(fix === undefined ? null : applied(sheet, fix.edits).slice(blocks.length + 2, -1)).toBe(mended);
    // What the fix writes is held to be right.
    if (fix !== undefined) expect(findingsOf(statedNumbers, applied(sheet, fix.edits))).toEqual([]);
  });
}

// 1.5 V, bars 100 mm apart: 15 mV for each mm, 15 V/m (closed form for long bars; here within 1 %).
describe('at probes', () => {
  expectSlips(bars, [
    ['M reads 0.80 V.', 'stated-reading', 'M reads 0.75 V.'],
    ['Probe M reads 0.80 V.', 'stated-reading', 'Probe M reads 0.75 V.'],
    ['*M* reads **0.80 V**.', 'stated-reading', '*M* reads **0.75 V**.'],
    ['M shows 800 mV.', 'stated-reading', 'M shows 750 mV.'],
    ['M should read 0.7 V to 0.73 V.', 'stated-reading', null],
    ['M is at 0.80 V, half of the voltage.', 'stated-reading', 'M is at 0.75 V, half of the voltage.'],
    [
      'M stands at 0.80 V because it lies midway.',
      'stated-reading',
      'M stands at 0.75 V because it lies midway.',
    ],
    ['The reading at M is 0.80 V.', 'stated-reading', 'The reading at M is 0.75 V.'],
    ['The potential at M is about 0.85 V.', 'stated-reading', 'The potential at M is about 0.75 V.'],
    ['The voltmeter at M should read 0.80 V.', 'stated-reading', 'The voltmeter at M should read 0.75 V.'],
    ['At M the reading is 0.80 V.', 'stated-reading', 'At M the reading is 0.75 V.'],
    ['At M you should read 0.80 V.', 'stated-reading', 'At M you should read 0.75 V.'],
    ['At M, *V* = 0.80 V.', 'stated-reading', 'At M, *V* = 0.75 V.'],
    ['- at M: 0.80 V', 'stated-reading', '- at M: 0.75 V'],
    ['- M: 0.80 V', 'stated-reading', '- M: 0.75 V'],
    ['*V*_M = 0.80 V', 'stated-reading', '*V*_M = 0.75 V'],
    ['*V*(M) = 0.80 V', 'stated-reading', '*V*(M) = 0.75 V'],
    ['The meter shows 0.80 V at M.', 'stated-reading', 'The meter shows 0.75 V at M.'],
    ['Expect 0.80 V at M.', 'stated-reading', 'Expect 0.75 V at M.'],
    ['You should find 0.80 V at M.', 'stated-reading', 'You should find 0.75 V at M.'],
    ['M’s reading is 0.80 V.', 'stated-reading', 'M’s reading is 0.75 V.'],
    ['M reads 0.75 V, Q 0.45 V and P 1.5 V.', 'stated-reading', 'M reads 0.75 V, Q 0.30 V and P 1.5 V.'],
    ['M and Q both read 0.75 V.', 'stated-reading', null],
    ['The reading at M is (0.80 ± 0.03) V.', 'stated-reading', 'The reading at M is (0.75 ± 0.03) V.'],
    ['M reads more than 0.80 V.', 'stated-reading', null],
    ['M reads less than 0.70 V.', 'stated-reading', null],
    ['M reads between 0.80 V and 0.90 V.', 'stated-reading', null],
    ['M reads −0.75 V.', 'stated-reading', 'M reads 0.75 V.'],
    ['M reads 0.9 V (on the 2 V range).', 'stated-reading', 'M reads 0.8 V (on the 2 V range).'],
    ['::: answer\n0.80 V at M (1)\n:::', 'stated-reading', '::: answer\n0.75 V at M (1)\n:::'],
    ['> At M the meter reads\n> 0.80 V.', 'stated-reading', '> At M the meter reads\n> 0.75 V.'],
    ['?{drawing bars "M reads 0.80 V"}', 'stated-reading', '?{drawing bars "M reads 0.75 V"}'],
    [
      'At Q, 20 mm from N, the reading is 0.45 V.',
      'stated-reading',
      'At Q, 20 mm from N, the reading is 0.30 V.',
    ],
  ]);
});

describe('at places', () => {
  expectSlips(bars, [
    ['The middle reads 0.80 V.', 'stated-reading', 'The middle reads 0.75 V.'],
    ['In the middle the meter shows 0.80 V.', 'stated-reading', 'In the middle the meter shows 0.75 V.'],
    [
      'Half-way between N and P the potential is 0.80 V.',
      'stated-reading',
      'Half-way between N and P the potential is 0.75 V.',
    ],
    ['Midway between the bars: 0.80 V', 'stated-reading', 'Midway between the bars: 0.75 V'],
    ['The centre of the paper is at 0.80 V.', 'stated-reading', 'The centre of the paper is at 0.75 V.'],
    ['30 mm from N the potential is 0.55 V.', 'stated-reading', '30 mm from N the potential is 0.45 V.'],
    ['The potential 35 mm from N is 0.60 V.', 'stated-reading', 'The potential 35 mm from N is 0.53 V.'],
    ['At 3 cm along A the reading is 0.55 V.', 'stated-reading', 'At 3 cm along A the reading is 0.45 V.'],
    [
      '40 mm from P along row A you read 0.60 V.',
      'stated-reading',
      '40 mm from P along row A you read 0.90 V.',
    ],
    [
      '20 mm from the positive bar the paper is at 0.30 V.',
      'stated-reading',
      '20 mm from the positive bar the paper is at 1.20 V.',
    ],
    ['On A at 70 mm: 0.45 V', 'stated-reading', 'On A at 70 mm: 1.05 V'],
    ['The mid-line reads 0.80 V.', 'stated-reading', 'The mid-line reads 0.75 V.'],
    ['The potential half-way is 0.80 V.', 'stated-reading', 'The potential half-way is 0.75 V.'],
    [
      'The potential at a point 30 mm from N is 0.60 V.',
      'stated-reading',
      'The potential at a point 30 mm from N is 0.45 V.',
    ],
    ['You should read 0.55 V at 30 mm from N.', 'stated-reading', 'You should read 0.45 V at 30 mm from N.'],
  ]);
  expectSlips(radial, [
    ['At *r* = 40 mm the reading is 0.60 V.', 'stated-reading', 'At *r* = 40 mm the reading is 0.50 V.'],
    [
      '30 mm from the centre of D the potential is 0.64 V.',
      'stated-reading',
      '30 mm from the centre of D the potential is 0.71 V.',
    ],
    ['The disc is at 1.2 V.', 'stated-reading', 'The disc is at 1.5 V.'],
  ]);
  // 20 mm from the tip of the spike: 0.75 V (own finite-difference solve, ±0.005 V; base 20 mm, length 80 mm, tip 60 mm from the bar).
  expectSlips(spike, [
    [
      '20 mm from the tip of S the potential is 1.0 V.',
      'stated-reading',
      '20 mm from the tip of S the potential is 0.7 V.',
    ],
    ['The spike is at 1.2 V.', 'stated-reading', 'The spike is at 1.5 V.'],
  ]);
});

describe('on electrodes', () => {
  expectSlips(bars, [
    ['N is at 0 V and P is at 1.6 V.', 'stated-reading', 'N is at 0 V and P is at 1.5 V.'],
    ['N is at 0 V, P at 1.6 V.', 'stated-reading', 'N is at 0 V, P at 1.5 V.'],
    ['The potential of P is 1.2 V.', 'stated-reading', 'The potential of P is 1.5 V.'],
    ['The positive bar is at 1.2 V.', 'stated-reading', 'The positive bar is at 1.5 V.'],
    ['N reads 0.20 V.', 'stated-reading', 'N reads 0.00 V.'],
  ]);
  expectSlips(ring, [
    ['The ring is at 0.60 V.', 'stated-reading', 'The ring is at 0.75 V.'],
    ['R floats at 0.60 V.', 'stated-reading', 'R floats at 0.75 V.'],
    ['Inside the ring the meter reads 0.60 V.', 'stated-reading', 'Inside the ring the meter reads 0.75 V.'],
    ['The potential inside the ring is 0 V.', 'stated-reading', 'The potential inside the ring is 0.75 V.'],
    ['At the centre of R: 0.60 V', 'stated-reading', 'At the centre of R: 0.75 V'],
    ['R is at 0.75 V, and C reads 0.70 V too.', 'stated-reading', 'R is at 0.75 V, and C reads 0.75 V too.'],
  ]);
  expectSlips(rings, [
    ['P is at 1.2 V.', 'stated-reading', 'P is at 1.5 V.'],
    [
      'In the set-up “connected” the reading at C is 0.75 V.',
      'stated-reading',
      'In the set-up “connected” the reading at C is 1.50 V.',
    ],
    ['## Floating\n\nC reads 1.50 V.', 'stated-reading', '## Floating\n\nC reads 0.75 V.'],
  ]);
});

describe('strengths and sums', () => {
  expectSlips(bars, [
    ['The field strength at M is 20 V/m.', 'stated-strength', 'The field strength at M is 15 V/m.'],
    ['At M the field strength is 1.5 V/m.', 'stated-strength', 'At M the field strength is 15 V/m.'],
    [
      'Between the bars the field strength is 12 V/m.',
      'stated-strength',
      'Between the bars the field strength is 15 V/m.',
    ],
    ['The field between N and P is 12 N/C.', 'stated-strength', 'The field between N and P is 15 N/C.'],
    ['In the middle *E* is 10 V/m.', 'stated-strength', 'In the middle *E* is 15 V/m.'],
    ['*E* = 150 V m⁻¹', 'stated-strength', '*E* = 15 V m⁻¹'],
    [
      'The gradient is 0.15 V/cm; so the field strength is 18 V/m.',
      'stated-strength',
      'The gradient is 0.15 V/cm; so the field strength is 15 V/m.',
    ],
    ['*E* = *V*/*d* = 1.5 V / 0.10 m = 1.5 V/m', 'stated-sum', '*E* = *V*/*d* = 1.5 V / 0.10 m = 15.0 V/m'],
    ['Example: 0.20 V ÷ 13.3 mm = 20 V/m.', 'stated-sum', 'Example: 0.20 V ÷ 13.3 mm = 15 V/m.'],
    [
      'Over 20 mm the fall is 15 V/m × 20 mm = 0.40 V.',
      'stated-sum',
      'Over 20 mm the fall is 15 V/m × 20 mm = 0.30 V.',
    ],
    ['Between the bars *E* = 1.5 V/0.08 m = 19 V/m.', 'stated-strength', null],
  ]);
});

// 0.6 squares between these bars: 3.0 kΩ, 0.50 mA (a gap of 100 mm, current spread over 170 mm at most: above 0.59 squares).
describe('currents, resistances, supply', () => {
  expectSlips(bars, [
    ['The current is 0.30 mA.', 'stated-current', 'The current is 0.50 mA.'],
    ['The cell gives a current of 5.7 mA.', 'stated-current', 'The cell gives a current of 0.5 mA.'],
    ['The current through the paper is 5 mA.', 'stated-current', 'The current through the paper is 0.5 mA.'],
    ['A current of 0.30 mA flows.', 'stated-current', 'A current of 0.50 mA flows.'],
    ['The supply delivers about 300 µA.', 'stated-current', 'The supply delivers about 501 µA.'],
    [
      'The resistance between the bars is 5.0 kΩ.',
      'stated-resistance',
      'The resistance between the bars is 3.0 kΩ.',
    ],
    ['The paper between the bars is 5.0 kΩ.', 'stated-resistance', 'The paper between the bars is 3.0 kΩ.'],
    [
      'The resistance between N and P is 300 Ω.',
      'stated-resistance',
      'The resistance between N and P is 2990 Ω.',
    ],
    ['*R* = 5.0 kΩ', 'stated-resistance', '*R* = 3.0 kΩ'],
    ['- one 6 V battery', 'stated-supply', '- one 1.5 V battery'],
    ['- one 9.0 V cell in a holder', 'stated-supply', '- one 1.5 V cell in a holder'],
    ['- two 1.5 V cells', 'stated-supply', '- one 1.5 V cells'],
    ['- 2 × 1.5 V cells in series', 'stated-supply', '- 1 × 1.5 V cells in series'],
    ['The e.m.f. of the cell is 1.2 V.', 'stated-supply', 'The e.m.f. of the cell is 1.5 V.'],
    ['The cell gives 3.0 V.', 'stated-supply', 'The cell gives 1.5 V.'],
    ['The paper has 1 kΩ per square.', 'stated-sheet-resistance', 'The paper has 5 kΩ per square.'],
    ['- paper of 10 kΩ/□', 'stated-sheet-resistance', '- paper of 5 kΩ/□'],
    [
      'Its sheet resistance is about 2 kΩ per square.',
      'stated-sheet-resistance',
      'Its sheet resistance is about 5 kΩ per square.',
    ],
  ]);
});

describe('no finding', () => {
  test.each([
    // Right, in as many digits as are given.
    'M reads 0.75 V. M reads 0.8 V. M reads 750 mV. M reads about 0.73 V. M reads 1 V.',
    'At M the meter shows 0.750 V; Q: 0.30 V; P is at 1.5 V, N at 0 V.',
    'M reads (0.73 ± 0.03) V, between 0.7 V and 0.8 V, more than 0.5 V, at most 0.75 V.',
    'M should read 0.72 V to 0.78 V.',
    '30 mm from N the potential is 0.45 V, and 30 mm from P it is 1.05 V.',
    'The current is 0.50 mA, the resistance between the bars is 3.0 kΩ.',
    'The cell gives less than 1 mA. The current is about 0.5 mA.',
    '*E* = *V*/*d* = 1.5 V / 0.10 m = 15 V/m. *E* = 15 V m⁻¹. The gradient is −15 V/m.',
    '0.20 V / 13.3 mm = 15.0 V/m; 1.5 V ÷ 100 mm = 15 V/m; 15 V/m × 0.02 m = 0.3 V.',
    'Use a 1.5 V cell, or one 1.5 V cell in a holder; paper with 5 kΩ per square.',
    'The cell gives about 500 µA. The paper takes roughly 0.5 mA.',
    // Questions and tasks.
    'Does M read 0.80 V?',
    'Is the reading at M 0.80 V? Explain.',
    'Why is it that M reads 0.80 V, and what follows?',
    'Move the probe until the meter reads 0.80 V. Mark the place.',
    'Look for places that read 0.25 V, 0.50 V and 1.00 V.',
    'Predict: M reads 0.80 V.',
    // Suppositions and other states.
    'If the cell gave 1.6 V, M reads 0.80 V.',
    'Suppose M reads 0.80 V.',
    'With a fresh cell M reads 0.80 V.',
    'With a cell of 1.6 V, M reads 0.80 V.',
    'For the second run M reads 1.5 V.',
    'For a supply of 3 V the reading at M is 1.5 V.',
    'With the leads swapped, Q reads 1.20 V.',
    'Q would read 0.31 V beside longer bars, it might show 0.40 V here.',
    'When the leads are reversed, Q reads 1.20 V.',
    'Swap the leads at the cell. Q reads 1.20 V.',
    'Reverse the supply.\n\nQ reads 1.20 V.',
    'Remove P and put it back 50 mm from N.\n\nQ reads 0.60 V.',
    'Under a loose clip M reads 0.70 V.',
    'Imagine that N is lifted: M reads 0.85 V.',
    'Q reads 0.15 V with the paper folded.',
    // Other people.
    'A pupil writes: M reads 0.80 V.',
    'Some students find that M reads 0.80 V.',
    'Reject: M reads 0.80 V.',
    'Do not accept 0.80 V at M.',
    'A common mistake: M is at 0.80 V.',
    'They say “M reads 0.80 V”.',
    'It is not true that M reads 0.80 V.',
    'M never reads 0.80 V.',
    'Her reading at M is 0.80 V.',
    'Last year M read 0.80 V. The reading at M was 0.80 V.',
    'For example, M reads 0.80 V.',
    'The group’s answer has M at 0.80 V.',
    // Differences, steps, not readings.
    '*V*(M) − *V*(Q) = 0.45 V',
    'Q and M read 0.30 V and 0.75 V. The equipotential through Q is at 0.30 V.',
    'At twice the voltage, *E* = 30 V/m. The field strength of a sphere at M is 3 V/m.',
    'Where M reads 0.70 V, clean the clip. A reading of 0.80 V at M means that the cell is fresh.',
    'A reading at M below 0.70 V shows a bad contact. Should M read 0.80 V, change the cell.',
    'A change of 10 mV is 0.67 mm. E = 0.45 V / 30 mm = 15 mV/mm.',
    'The p.d. between N and M is 0.80 V.',
    'The potential difference from M to Q is 0.80 V.',
    'M reads 0.44 V more than Q. M is 0.44 V above Q.',
    'M reads 0.80 V less than P does.',
    'From N to P the potential rises by 1.2 V.',
    'M is at 0.80 V per division.',
    // Names that are words, and places that are not named.
    'A reading of 0.80 V is too high.',
    'A meter reads 0.80 V. The meter shows 0.80 V.',
    'The line for 0.80 V passes right of the middle.',
    'N, P and M: 0.5 V, 0.6 V and 0.7 V respectively.',
    'Join N to the black lead. Set the meter to 2 V.',
    'The reading at K is 0.80 V. Z reads 0.80 V.',
    '10 mm behind N the paper is at 0.2 V. 30 mm above M the reading is 0.5 V.',
    'Near M the reading is 0.80 V. Behind N the reading is 0.30 V.',
    // Strengths elsewhere.
    'Near the ends of the bars the field strength is 20 V/m. In air sparks need 3 MV/m: E = 3 MV/m.',
    'The mean field strength over the first 5 mm is 16 V/m. The field of the Earth is 100 V/m.',
    'If the plates were 50 mm apart, E = 30 V/m.',
    'A pupil writes 1.5 V / 0.10 m = 1.5 V/m.',
    '(1.0 V − 0.5 V) / 0.02 m = 25 V/m, and 2 × 1.5 V / 0.10 m = 30 V/m.',
    // Other currents, resistances and cells.
    'The meter draws a current of 0.08 µA; its resistance is 10 MΩ.',
    'The fuse limits the current to 2 A. A short circuit current of 5 A flows through the clips.',
    'Each field line stands for a current of 0.05 mA.',
    'The resistance of the clip is 200 Ω. The internal resistance is 0.5 Ω.',
    'The current into the probe is 1 µA.',
    'Never use a 9 V battery. The multimeter needs a 9 V battery. Spare: four 1.5 V cells.',
    'Papers of 1 kΩ per square to 20 kΩ per square are sold. Other papers have 1 kΩ per square.',
    'For a 3 V battery the current doubles. A fresh cell gives 1.60 V to 1.70 V.',
    'Half of a square is 2.5 kΩ; a strip has a resistance of 20 kΩ.',
    'Here is `M reads 0.80 V` as code, and [M reads 0.80 V](page.html) as a link.',
    '<!-- M reads 0.80 V -->',
    '?{M} and !{M.strength}; ?{A at 35 mm}',
    '```\nM reads 0.80 V.\n```',
  ])('%s', (text) => {
    expect(findingsOf(statedNumbers, `${bars}\n\n${text}\n`)).toEqual([]);
  });

  test.each([
    'C reads 0.75 V. C reads 1.50 V. C reads 0.60 V.',
    'With the ring joined to P, C reads 1.50 V.',
    'Join the ring to P with a lead. C reads 1.50 V.',
    'R is at 0.75 V first, and then at 1.50 V.',
    'C now reads 1.50 V. Now join the ring to P: C reads 1.50 V. R to P: 1.50 V at C.',
    'Ring joined to P: C reads 1.50 V. When R is connected to P, C reads 1.50 V.',
    'The current is 0.5 mA in one of them.',
    'The ring is not connected: C reads 0.75 V. The ring is joined to P: C reads 1.50 V.',
  ])('where two setups could be meant: %s', (text) => {
    expect(findingsOf(statedNumbers, `${rings}\n\n${text}\n`)).toEqual([]);
  });

  test.each([
    '40 mm from the disc the potential is 0.60 V.',
    'Round a point charge in space the potential at 40 mm is 0.21 V.',
    'The middle reads 1.20 V.',
    'The field strength is 20 V/m.',
  ])('radially, where it is not said from where: %s', (text) => {
    expect(findingsOf(statedNumbers, `${radial}\n\n${text}\n`)).toEqual([]);
  });

  test('before anything is solved', () => {
    const broken = bars.replace('supply  cell 1.5 V, zinc-carbon', '');
    expect(findingsOf(statedNumbers, `${broken}\n\nM reads 0.80 V.\n`)).toEqual([]);
  });
});
