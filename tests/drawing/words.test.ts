/** Titles and descriptions: for pupils from the set-up alone, for teachers from the solution as well. */
import { expect, test } from 'vitest';
import { outlineScene } from '../../shared/drawing/outline-scene.ts';
import { solvedScene } from '../../shared/drawing/solved-scene.ts';
import { decimalsOf, millimetres, volts } from '../../shared/drawing/values.ts';
import { type SetupName, setupCalled } from './setups.ts';
import { betweenBars } from './traces.ts';

/** Written with plain spaces. */
const plain = (text: string): string => text.replaceAll('\u00a0', ' ');
const described = (name: SetupName): string =>
  plain(outlineScene(setupCalled(name), { parts: ['electrodes', 'probes'], audience: 'pupils' }).description);

test('two bars', () => {
  expect(described('bars')).toBe(
    'Two bars, 10 mm by 120 mm, 100 mm apart, on paper 240 mm by 160 mm; N to negative, P to positive. ' +
      'Place of a reading M at (95, 95) mm. Row A: 11 readings from (65, 80) mm to (165, 80) mm.',
  );
});

test('a ring between bars, joined and not connected', () => {
  expect(described('ring')).toContain(
    'Two bars (10 mm by 120 mm) and a ring (diameter 50 mm, wall 4 mm), on paper 240 mm by 160 mm; ' +
      'N to negative, P to positive, R not connected.',
  );
  expect(described('joined')).toContain('P to positive, R joined to P.');
});

test('holes, slits, grain and held metal', () => {
  const text = described('busy');
  expect(text).toContain('on paper 280 mm by 180 mm with a grain');
  expect(text).toContain('K held at 2.5 V');
  expect(text).toContain('One hole is cut out of the paper. One slit is cut in the paper.');
});

test('teachers are told what the drawn parts show, and no more', () => {
  const setup = setupCalled('bars');
  const said = (parts: readonly ('equipotentials' | 'field-lines' | 'values' | 'probes')[]): string =>
    plain(solvedScene(setup, betweenBars(setup), { parts, audience: 'teachers' }).description);
  expect(said(['equipotentials'])).toContain(
    'Equipotentials at 0.25 V, 0.50 V, 0.75 V, 1.00 V and 1.25 V. They are about 17 mm apart everywhere.',
  );
  expect(said(['equipotentials'])).not.toMatch(/field line|Readings/);
  expect(said(['field-lines'])).toContain('11 field lines from high to low potential, each for 50 µA.');
  expect(said(['field-lines'])).not.toContain('Equipotentials');
  expect(said(['values', 'probes'])).toContain('Readings: M 0.45 V.');
});

test('values carry units and even decimals', () => {
  expect(decimalsOf([0.2, 0.25, 1])).toBe(2);
  expect(decimalsOf([0.1 + 0.2, 1.4])).toBe(1);
  expect(volts(1, 2)).toBe('1.00\u00a0V');
  expect(volts(-0.5)).toBe('\u22120.5\u00a0V');
  expect(millimetres(99.99999999)).toBe('100\u00a0mm');
});
