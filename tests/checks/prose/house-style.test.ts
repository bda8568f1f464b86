/** Matters of house style: what the rules say when the department has said, and that both ways stand when it has not. */
import { describe, expect, it } from 'vitest';
import { checkProse, findingsOf } from './prose.ts';

describe('where the department has not said', () => {
  it.each([
    '6 V d.c. and 6 V DC from a d.c. supply or a DC supply',
    '1500 V and 1 500 V',
    '15 V/m and then 15 N/C',
    '10 %',
    'a gray disc, a grey one, in the center and in the centre',
    '| x / mm | V / V |\n| --- | --- |\n| 10 | 0.15 |',
  ])('%j is left alone', (text) => {
    expect(findingsOf(text)).toEqual([]);
  });
});

describe('headings', () => {
  it('solidus', () => {
    checkProse(
      `
        | x (mm) | V (V) | E (V/m) |
           ^^^^^ warning heading-brackets The house style of headings is x / mm.
           => | x / mm | V / V | E / (V/m) |
        | --- | --- | --- |
        | 10 | 0.15 | 15.0 |
      `,
      { headings: 'solidus' },
    );
    expect(
      findingsOf('---\nlanguage: en-US\n---\n\n| x (mm) |\n| --- |\n| 1 |', { headings: 'solidus' }),
    ).toHaveLength(1);
  });

  it('brackets', () => {
    checkProse(
      `
        | x / mm | V / V | E / V/m | *E* / (V/m) |
           ^^^^^ warning heading-solidus The house style of headings is x (mm).
           => | x (mm) | V (V) | E (V/m) | *E* (V/m) |
        | --- | --- | --- | --- |
        | 10 | 0.15 | 15.0 | 15.0 |

        | x (mm) | Voltage in V |
                   ^^^^^^^^^^^^ warning heading-words The house style of headings is potential V (V).
                   => | x (mm) | potential V (V) |
        | --- | --- |
        | 10 | 0.15 |
      `,
      { headings: 'brackets' },
    );
  });
});

describe('per cent', () => {
  it('spaced', () => {
    checkProse(
      `
        Between 5% and 10%, not 5 %.
                ^^ warning percent-space The house style has a space before the per cent sign: 5 %.
                => Between 5 % and 10 %, not 5 %.
      `,
      { percent: 'spaced' },
    );
  });

  it('joined', () => {
    checkProse(
      `
        Between 5 % and 10 %, not 5%.
                ^^^ warning percent-space The house style has no space before the per cent sign: 5%.
                => Between 5% and 10%, not 5%.
      `,
      { percent: 'joined' },
    );
  });
});

describe('direct current', () => {
  it('with stops', () => {
    checkProse(
      `
        A DC supply gives 6 V DC.
          ^^ warning direct-current The house style is d.c.
          => A d.c. supply gives 6 V d.c.

        The line from A to C is AC, and DC is as long.

        It is 6 VDC here.
                ^^^ note direct-current
                => It is 6 V d.c. here.
      `,
      { 'direct-current': 'd.c.' },
    );
  });

  it('with capitals', () => {
    checkProse(
      `
        A d.c. supply gives 6 V d.c. Never use a.c.
          ^^^^ warning direct-current The house style is DC
          => A DC supply gives 6 V DC. Never use AC.

        It is 6 VDC here.
                ^^^ note direct-current
                => It is 6 V DC here.
      `,
      { 'direct-current': 'DC' },
    );
  });
});

describe('four digits', () => {
  it('together', () => {
    checkProse(
      `
        It is 1 500 V, 1500 V or 12 500 V, in 2026.
              ^^^^^ warning digit-groups The house style of four digits is 1500 V.
              => It is 1500 V, 1500 V or 12 500 V, in 2026.
      `,
      { 'four-digits': 'together' },
    );
  });

  it('in groups', () => {
    checkProse(
      `
        It is 1500 V, 1 500 V or 150 V, in 2026; 1,500 V.
              ^^^^ warning digit-groups The house style of four digits is 1 500 V.
              => It is 1 500 V, 1 500 V or 150 V, in 2026; 1,500 V.
                                                 ^^^^^ warning thousands-comma 1 500 V.
      `,
      { 'four-digits': 'grouped' },
    );
  });
});

describe('field strength', () => {
  it('N/C', () => {
    checkProse(
      `
        The field strength is 15 V/m there.
                              ^^^^^^ warning strength-style The house style for a field strength is N/C: 15 N/C.
                              => The field strength is 15 N/C there.

        Or 1.5 kV m⁻¹.
           ^^^^^^^^^^ warning strength-style
           => Or 1.5 kN C⁻¹.

        Since 1 V/m = 1 N/C, either will do. It is 15 volts per metre.

        *E* = 20 V
              ^^^^ error strength-unit
              => *E* = 20 N/C
      `,
      { strength: 'N/C' },
    );
  });

  it('V/m', () => {
    checkProse(
      `
        The field strength is 15 N C⁻¹ there.
                              ^^^^^^^^ warning strength-style
                              => The field strength is 15 V m⁻¹ there.
      `,
      { strength: 'V/m' },
    );
  });
});

describe('language', () => {
  it('of the department, for sheets that do not say', () => {
    checkProse(
      `
        A gray disc in the center. The meter reads 10 centimeters; Center Street.
          ^^^^ note spelling The language of this sheet is British English: grey.
          => A grey disc in the centre. The meter reads 10 centimetres; Center Street.
      `,
      { language: 'en-GB' },
    );
  });

  it('of the sheet before that of the department', () => {
    checkProse(
      `
        ---
        language: en-US
        ---

        A metre rule, labelled twice, and a gray disc.
          ^^^^^ note spelling The language of this sheet is American English: meter.
          => A meter rule, labeled twice, and a gray disc.
      `,
      { language: 'en-GB' },
    );
  });
});

it('what one department finds in order another does not', () => {
  expect(findingsOf('about 10%', { percent: 'joined' })).toEqual([]);
  expect(findingsOf('about 10%', { percent: 'spaced' })).toHaveLength(1);
  expect(findingsOf('about 10%', { percent: 'joined' })).toEqual([]);
});
