import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { shifted } from '../../shared/quantity/decimal.ts';
import type { Dimension } from '../../shared/quantity/quantity.ts';
import { parseQuantity, readQuantity } from '../../shared/quantity/read.ts';
import { likelyUnits, unitAt, unitOf } from '../../shared/quantity/units.ts';

/** The value in the working unit, or the reason of the refusal and what is offered instead. */
function read(text: string, dimension: Dimension): unknown {
  const reading = parseQuantity(text, dimension);
  if (reading.kind === 'read') return reading.quantity.value;
  if (reading.kind === 'none') return 'none';
  return [reading.refusal.reason, ...reading.refusal.rewritings.map((rewriting) => rewriting.shown)];
}

describe('quantities as they are written', () => {
  test.each<[string, Dimension, number]>([
    ['57 mm', 'length', 57],
    ['57mm', 'length', 57],
    ['5.7 cm', 'length', 57],
    ['0.057 m', 'length', 57],
    ['100 µm', 'length', 0.1],
    ['100 μm', 'length', 0.1],
    ['100 um', 'length', 0.1],
    ['3 metres', 'length', 3000],
    ['−1.5 V', 'potential', -1.5],
    ['-1.5V', 'potential', -1.5],
    ['750 mV', 'potential', 0.75],
    ['3 kV', 'potential', 3000],
    ['1.5 volts', 'potential', 1.5],
    ['5 kΩ', 'resistance', 5000],
    ['5 kohm', 'resistance', 5000],
    ['5 k\u2126', 'resistance', 5000],
    ['5 kilohms', 'resistance', 5000],
    ['10 Mohm', 'resistance', 1e7],
    ['10 megohms', 'resistance', 1e7],
    ['0.2 ohm', 'resistance', 0.2],
    ['585 uA', 'current', 0.000585],
    ['3 milliamps', 'current', 0.003],
    ['50 Ω cm²', 'contact', 5000],
    ['50 ohm cm^2', 'contact', 5000],
    ['0.5 Ω·m²', 'contact', 500000],
    ['30°', 'angle', 30],
    ['30 deg', 'angle', 30],
    ['−30 degrees', 'angle', -30],
    ['15 V/m', 'strength', 15],
    ['0.15 V/cm', 'strength', 15],
    ['15 N/C', 'strength', 15],
    ['15 V m⁻¹', 'strength', 15],
    ['15 V m^-1', 'strength', 15],
    ['2 kV/m', 'strength', 2000],
    ['45 min', 'time', 45],
    ['1.5 h', 'time', 90],
    ['.5 mm', 'length', 0.5],
  ])('%s', (text, dimension, value) => {
    expect(read(text, dimension)).toBe(value);
  });
});

describe('refusals with what is likely', () => {
  test.each<[string, Dimension, readonly string[]]>([
    ['1,5 V', 'potential', ['comma', '1.5 V']],
    ['1,500 V', 'potential', ['comma', '1.500 V', '1500 V']],
    ['5 KΩ', 'resistance', ['case', '5 kΩ']],
    ['10 mv', 'potential', ['case', '10 mV']],
    ['10 MM', 'length', ['case', '10 mm', '10 Mm']],
    ['10 mms', 'length', ['case', '10 mm']],
    ['3 ma', 'current', ['case', '3 mA']],
    ['10 in', 'length', ['inches', '254 mm']],
    ['0.1"', 'length', ['inches', '2.54 mm']],
    ['1 inch', 'length', ['inches', '25.4 mm']],
    ['10', 'length', ['missing', '10 mm', '10 cm', '10 m']],
    ['-5', 'potential', ['missing', '-5 V', '-5 mV', '-5 kV']],
    ['30', 'angle', ['missing', '30°']],
    ['4 V', 'length', ['dimension', '4 mm', '4 cm', '4 m']],
    ['4furlongs', 'length', ['unknown', '4 mm', '4 cm', '4 m']],
    ['4 mm wide', 'length', ['unknown']],
  ])('%s as a %s', (text, dimension, refused) => {
    expect(read(text, dimension)).toEqual(refused);
  });
  test('the rewriting reads as what it shows', () => {
    for (const text of ['1,5 V', '5 KV', '10 mv', '10', '10 A', '10volt_s']) {
      const reading = parseQuantity(text, 'potential');
      if (reading.kind !== 'refused') throw new Error(`${text} was read`);
      for (const { span, text: written, shown } of reading.refusal.rewritings) {
        const mended = text.slice(0, span.from) + written + text.slice(span.to);
        expect(read(mended, 'potential'), mended).toBe(read(shown, 'potential'));
        expect(typeof read(mended, 'potential')).toBe('number');
      }
    }
  });
  test('a word is no number', () => {
    expect(read('mm', 'length')).toBe('none');
    expect(read('', 'length')).toBe('none');
  });
});

describe('units', () => {
  test.each(['mM', 'KV', 'Km', 'v', 'ω', 'kk', 'cV', 'mmm', 'constructor', '__proto__'])(
    '%s is none',
    (spelling) => {
      expect(unitOf(spelling)).toBeNull();
    },
  );
  test('m and M are different prefixes', () => {
    expect(unitOf('mΩ')?.exponent).toBe(-3);
    expect(unitOf('MΩ')?.exponent).toBe(6);
  });
  test('a unit may run into "by"', () => {
    expect(unitAt('10mmx120mm', 2)).toMatchObject({ unit: { symbol: 'mm' }, to: 4 });
    expect(unitAt('10mmxyz', 2)).toBeNull();
  });
  test('units in other capitals, the usual first', () => {
    expect(likelyUnits('MM', null).map((unit) => unit.symbol)).toEqual(['mm', 'Mm']);
    expect(likelyUnits('MM', 'potential')).toEqual([]);
  });
});

test('scaling is that of the decimals as written, for every prefix', () => {
  const prefixes = { mm: 0, cm: 1, m: 3, km: 6, µm: -3 };
  const decimals = fc.tuple(
    fc.nat(99999),
    fc.integer({ min: 0, max: 9999 }),
    fc.constantFrom(...Object.keys(prefixes)),
  );
  fc.assert(
    fc.property(decimals, ([whole, fraction, unit]) => {
      const digits = `${whole}.${String(fraction).padStart(4, '0')}`;
      const exponent = unit in prefixes ? prefixes[unit as keyof typeof prefixes] : 0;
      // The digits with the point moved by hand, read by the language's own reader.
      expect(read(`${digits} ${unit}`, 'length')).toBe(Number(movePoint(digits, exponent)));
    }),
  );
});

test('moving the point of a double is exact', () => {
  expect(shifted(0.000585, 3)).toBe(0.585);
  expect(shifted(57, -3)).toBe(0.057);
  const parts = fc.tuple(fc.integer({ min: -1e12, max: 1e12 }), fc.integer({ min: -20, max: 20 }));
  fc.assert(
    fc.property(parts, fc.integer({ min: -9, max: 9 }), ([digits, exponent], places) => {
      const value = Number(`${digits}e${exponent}`);
      expect(shifted(value, places)).toBe(Number(`${digits}e${exponent + places}`));
    }),
  );
});

test('any text is read without a throw, and spans lie in it', () => {
  const soup = fc.array(
    fc.constantFrom('1', '0.5', ' ', ',', 'mm', 'V', '−', '/', 'm', 'Ω', 'cm²', '"', 'in', 'x', '𝔸', '\t'),
  );
  fc.assert(
    fc.property(
      fc.oneof(
        fc.string({ unit: 'binary' }),
        soup.map((parts) => parts.join('')),
      ),
      (text) => {
        const reading = readQuantity(text, 0, 'length');
        if (reading.kind === 'none') return;
        expect(reading.span.from).toBeGreaterThanOrEqual(0);
        expect(reading.span.to).toBeLessThanOrEqual(text.length);
        expect(reading.span.from).toBeLessThan(reading.span.to);
      },
    ),
  );
});

function movePoint(digits: string, places: number): string {
  const [whole = '', fraction = ''] = digits.split('.');
  const padded = `${'0'.repeat(10)}${whole}${fraction}${'0'.repeat(10)}`;
  const point = 10 + whole.length + places;
  return `${padded.slice(0, point)}.${padded.slice(point)}`;
}
