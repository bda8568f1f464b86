/** The rules of SI writing beyond the list of pairs: family by family what is found and how it is mended, and what is left alone. */
import { describe, expect, it, test } from 'vitest';
import type { FindingCode } from '../../../shared/findings/catalogue.ts';
import { applied } from '../../check.ts';
import { checkProse, findingsOf } from './prose.ts';

type Slip = readonly [text: string, code: FindingCode, ...mended: string[]];

const slips: Readonly<Record<string, readonly Slip[]>> = {
  spaces: [
    ['at 20° C', 'unit-space', 'at 20 °C'],
    ['**5kΩ** paper', 'unit-space', '**5 kΩ** paper'],
    ['a 5-mm gap', 'unit-hyphen', 'a 5 mm gap'],
    ['5% or 10%', 'percent-space', '5 % or 10 %'],
    // Where markup parts the number from its unit nothing is mended.
    ['*20*kΩ', 'unit-space'],
  ],
  symbols: [
    ['5khz', 'unit-case', '5 kHz'],
    ['3 Kv', 'unit-case', '3 kV'],
    ['25 °c', 'unit-case', '25 °C'],
    ['15 v/m', 'unit-case', '15 V/m'],
    ['2 Kg', 'prefix-case', '2 kg'],
    ['10 Mv', 'unit-case', '10 mV', '10 MV'],
    ['10 MV', 'prefix-unlikely', '10 mV'],
    ['2 k Ω', 'prefix-apart', '2 kΩ'],
    ['a 10k resistor', 'prefix-alone', 'a 10 kΩ resistor'],
    ['5 µmA', 'prefix-double', '5 nA', '5 mA'],
    ['3 uF', 'micro-letter', '3 µF'],
    ['10 kΩs', 'unit-plural', '10 kΩ'],
    ['The paper is 5 k per square.', 'prefix-alone', 'The paper is 5 kΩ per square.'],
    ['The meter has 10 mΩ between its leads.', 'prefix-unlikely', 'The meter has 10 MΩ between its leads.'],
    ['after 5 min. the\nnext', 'unit-stop', 'after 5 min the\nnext'],
  ],
  names: [
    ['5 VOLTS', 'unit-name-case', '5 V', '5 volts'],
    ['3 milliamps', 'unit-abbreviation', '3 mA'],
    ['3 cc', 'unit-abbreviation', '3 cm³'],
    ['20 deg C', 'unit-abbreviation', '20 °C'],
    ['5 milli-amps', 'unit-name-apart', '5 milliamperes'],
    ['in kilo ohms', 'unit-name-apart', 'in kilohms'],
    ['of some milli-amps', 'unit-name-apart', 'of some milliamperes'],
    ['10 microns', 'unit-old-name', '10 µm'],
    ['5 mohm', 'unit-mixed', '5 mΩ', '5 MΩ'],
    ['15 volts per m', 'unit-mixed', '15 V/m'],
    ['150 mV per mm', 'unit-mixed', '150 mV/mm'],
    ['5 square cm', 'unit-mixed', '5 cm²'],
    ['12 VAC', 'direct-current', '12 V a.c.'],
    ['2 Vrms', 'unit-attached', 'V(rms) = 2 V'],
  ],
  compounds: [
    ['15 NC-1', 'unit-product', '15 N C⁻¹'],
    ['15 V m-1.', 'unit-exponent', '15 V m⁻¹.'],
    ['3 mm^2.', 'unit-exponent', '3 mm².'],
    ['9.8 m/s/s', 'unit-quotient', '9.8 m/s²'],
    ['5 kΩ / square', 'square-sign', '5 kΩ per square'],
    ['5 ohms per square centimetre', 'square-size', '5 ohms per square'],
    ['5 kΩ per mm²', 'square-size', '5 kΩ per square'],
  ],
  kinds: [
    ['*E* = 20 mV', 'strength-unit', '*E* = 20 mV/m'],
    ['The field strength is about 15 V here.', 'strength-unit', 'The field strength is about 15 V/m here.'],
    ['The field strength came out as 15 V.', 'strength-unit', 'The field strength came out as 15 V/m.'],
    ['The potential is 0.5 V m⁻¹ there.', 'potential-unit', 'The potential is 0.5 V there.'],
    ['ΔV = 2 V/m', 'potential-unit', 'ΔV = 2 V'],
    [
      'The potential at the mid-line is 0.5 V/m in one.',
      'potential-unit',
      'The potential at the mid-line is 0.5 V in one.',
    ],
  ],
  missing: [
    ['The reading at the middle was 0.75, and', 'no-unit', 'The reading at the middle was 0.75 V, and'],
    ['The voltmeter reads 0.75.', 'no-unit', 'The voltmeter reads 0.75 V.'],
    ['and *V* = 0.5 at M', 'no-unit', 'and *V* = 0.5 V at M'],
    ['The field strength is 15.5.', 'no-unit', 'The field strength is 15.5 V/m.'],
    ['The current was 0.6, then', 'no-unit', 'The current was 0.6 mA, then'],
    ['How many kΩ is that?', 'unit-alone', 'How many kilohms is that?'],
  ],
  digits: [
    ['2,500 V', 'thousands-comma', '2500 V', '2.500 V'],
    ['1,250,000 Ω', 'thousands-comma', '1 250 000 Ω'],
    ['12,5 mm', 'text-comma', '12.5 mm'],
    ['2x10^3 V', 'times-sign', '2 × 10³ V'],
    ['1e-3 A', 'times-sign', '1 × 10⁻³ A'],
    ['15.384615 V/m', 'figures-many', '15.4 V/m'],
  ],
  pairs: [
    ['0–5 V', 'range-dash', '0 V to 5 V'],
    ['0 - 5 V', 'range-dash', '0 V to 5 V'],
    ['0 V-5 V', 'range-dash', '0 V to 5 V'],
    ['100 mV-1 V', 'range-dash', '100 mV to 1 V'],
    ['10 cm x 16 cm', 'sides-unit', '10 cm × 16 cm'],
    ['240 × 160 mm', 'sides-unit', '240 mm × 160 mm'],
    ['5 m 20 cm', 'one-unit', '5.20 m'],
    ['100 +/- 1 mm', 'plus-minus', '(100 ± 1) mm'],
    ['15.25 ± 0.1 V/m', 'uncertainty-digits', '(15.3 ± 0.1) V/m'],
    ['(0.752 ± 0.01) V', 'uncertainty-digits', '(0.75 ± 0.01) V'],
  ],
};

describe.each(Object.entries(slips))('%s', (_, list) => {
  test.each(list)('%j: %s', (text, code, ...mended) => {
    const found = findingsOf(text);
    expect(found.map((one) => one.code)).toEqual([code]);
    expect(found[0]?.fixes.map(({ edits }) => applied(text, edits))).toEqual(mended);
  });
});

describe('what could mean two things is never mended unasked', () => {
  test.each([
    '10 mΩ meter',
    '100 Mm',
    '100 MM',
    '5 Mv',
    '5 MV',
    '5 mohm',
    '10 x 16 cm',
    '0 - 5 V',
    '2,500 V',
    '1,5 V',
    '5 k',
    '150 mmA',
    'E = 15 V',
    '5 kΩ/cm²',
    '0.6 mAs',
  ])('%s', (text) => {
    const fixes = findingsOf(text).flatMap((one) => one.fixes);
    expect(fixes.length).toBeGreaterThan(0);
    expect(fixes.filter(({ certain }) => certain)).toEqual([]);
  });
});

describe('left alone', () => {
  test.each([
    // Numbers in names.
    'Year 12V, question 5A, a 3A fuse, the 1970s, a 12V class, a 10k run, 5 PM, 4 us',
    'sheet RA-P12-04, version 1.2.3, at 10:30 on 2026-09-07, 2 A level pupils, 3 C cells',
    'Figure 5 v x, 2 v. 1, a scale of 1:1, half of 1/2 V',
    // Sentences that go on.
    'At 10 m A pupil stands; 5 mm. The next; at 10 mm. x is far; 3 cm. e.g. here',
    '12 V per cell, 5 kΩ per sq, 15 volts per metre, 10 mm per line, a change of 2 V per step',
    'A clip has 20 mΩ, so the meter sees nothing of it.',
    'Between cloud and ground there are 300 MV before the lightning.',
    // Physics that is right, or somebody else’s.
    'Meera says the field is 1.6 V. Sam thinks that the potential is 15 V/m.',
    'E = 1.5 V / 0.10 m = 15 V/m, and E = 6 V across 2 m; in a field of 15 V/m',
    'Its gradient of potential is 15 V/m; dV/dx = 15 V/m; V = 15 V/m × 0.1 m = 1.5 V',
    'The rate of change of potential is 15 V/m. The electric field of 1.5 V cells.',
    'The cell of e.m.f. E = 1.5 V is new.',
    // Numbers that are no quantities.
    'At M the reading is 0.75 of V₀, a voltage of 1.5 or so, the reading was 3 times that, the potential is 0.0.',
    'Readings in V: the reading was 0.75.',
    '.22 calibre; 1,500 pupils; at 1,2,3 V; 1 500 V; 1e-3; 2 × 3 V; 1.6 × 10⁻¹⁹ C; π is 3.14159',
    // Values that only stand side by side.
    '5-3 V, 1.5 - 0.2 V = 1.3 V, 1.5 V - 0.2 V = 1.3 V, from 2 to 3 V, -5 V, steps 2-3',
    '2 x 1.5 V, 3 x 4 mm leads, 2 × 100 mm rulers, 10 mm × 16 mm',
    '2 min 30 s; 1.5 V 0.6 mA; 10 mm 10 mm',
    '(100 ± 1) mm, 100 mm ± 0.5 mm, 5 V ± 10 %, ±1 mm, accept 0.75 V ± 0.1 V',
    // Units in words.
    '## Five Volts: 5 Volts',
    'Give the answer in mm. 20 degrees Celsius, 5 ohms, 3 amperes, 2 Ω cm², 15 V·m⁻¹',
  ])('%s', (text) => {
    expect(findingsOf(text)).toEqual([]);
  });

  it('an electrode, probe or row whose name is that of a quantity', () => {
    const block = '```electrodes\nprobe E at (1, 1) mm\nprobe V at (2, 2) mm\n```';
    expect(findingsOf(`${block}\n\nE = 15 V, V = 0.75.`)).toEqual([]);
  });

  it('brackets in the headings of an American sheet', () => {
    const table = '| V (V) |\n| --- |\n| |';
    expect(
      findingsOf(`---\nlanguage: en-US\n---\n\n${table}\n\nHow many mm?`).map((one) => one.fixes[0]?.title),
    ).toEqual(['Write millimeters']);
  });
});

describe('tables', () => {
  it('have one form of heading, units in the heading alone, and one number of decimals in a column', () => {
    checkProse(`
      | x (mm) | E (V/m) | Time in min | Group (A) |
         ^^^^^ note heading-brackets
         => | x / mm | E / (V/m) | Time in min | Group (A) |
                           ^^^^^^^^^^^ note heading-words
                           => | x (mm) | E (V/m) | Time / min | Group (A) |
      | --- | --- | --- | --- |
      | 10 | 15.0 | 1 | 3 |
      | 20 | 15.5 V/m | 2 | 4 |
             ^^^^^^^^ warning unit-in-cell
             => | 20 | 15.5 | 2 | 4 |
      | 30 | 16 | 3 | 5.5 |
             ^^ warning column-decimals
             => | 30 | 16.0 | 3 | 5.5 |
    `);
  });

  it('say where a cell has another unit than its column', () => {
    checkProse(`
      | x / mm | V / mV |
      | --- | --- |
      | 0 | 0 |
      | 10 | 0.75 V |
             ^^^^^^ warning unit-in-cell 0.75 V stands in a column whose heading says mV
      | 20 | !{M} |
      | 30 | −0.5 |
    `);
  });
});

describe('places', () => {
  it('are exact behind whatever Markdown takes away', () => {
    checkProse(
      String.raw`
      😀 \* &amp; &#9731; **a** <!-- b --> [c][] ´d´ ?{e} 5V
                                                         ^^ warning unit-space
                                                         => 😀 \* &amp; &#9731; **a** <!-- b --> [c][] ´d´ ?{e} 5 V

      [c]: f

      1. one
         two 5V
             ^^ warning unit-space
             =>    two 5 V
         > three
         >   four **5V** [2]
                    ^^ warning unit-space
                    =>    >   four **5 V** [2]

      | a \| 5V | ´b´ 5V |
             ^^ warning unit-space
             => | a \| 5 V | ´b´ 5V |
                      ^^ warning unit-space
                      => | a \| 5V | ´b´ 5 V |
      | --- | --- |
      | 5V | c |
        ^^ warning unit-space
        => | 5 V | c |
    `.replaceAll('´', '`'),
    );
  });

  it('are not in what is no prose', () => {
    checkProse(
      `
      ---
      title: A 5V sheet
      ---

      ´5V´, ´´a ´ 5V´´, [a 5V cell](https://a.example/5V "5V"), ![5V](5V.png), <b title="5V">, $5V$, <!-- 5V -->
      https://a.example/5V?a=0-5 V, www.a.example/5V, a5V@b.example, ?{5V}, !{blank 5V}

      ´´´text
      5V
      ´´´

          5V
    `.replaceAll('´', '`'),
    );
  });
});
