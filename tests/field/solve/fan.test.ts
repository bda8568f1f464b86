/** Corner fans: the exponents of the field at corners, and what may not change a fan's matrix. */
import { describe, expect, test } from 'vitest';
import {
  type FanElement,
  fanElement,
  fanShape,
  fanStore,
  LAYER_DEPTH,
} from '../../../shared/field/solve/fan.ts';

function fan(order: number, angle: number, held: { held0: boolean; held1: boolean }, turn = 0): FanElement {
  const chords = Math.ceil(angle / 0.9);
  const rim = Array.from({ length: chords + 1 }, (_, i) => turn + (angle * i) / chords).flatMap((a) => [
    3.7 * Math.cos(a),
    3.7 * Math.sin(a),
  ]);
  const element = fanElement(fanShape(order, rim, held), fanStore(1));
  if (element === null) throw new Error('degenerate fan');
  return element;
}

/** Exponent of the slowest decay that the fan lets through: V ~ r^λ makes a layer's inner rim e^-λτ times its outer one. */
function exponent({ transfer, free }: FanElement, start: (place: number) => number, odd = false): number {
  let values = Float64Array.from({ length: free }, (_, i) => start(i / (free - 1)));
  let factor = 0;
  for (let step = 0; step < 120; step++) {
    let next = values.map((_, i) =>
      values.reduce((sum, value, j) => sum + (transfer[i * free + j] ?? 0) * value, 0),
    );
    // Without a held side the constant, which does not decay at all, would grow out of rounding.
    if (odd) next = next.map((value, i) => (value - (next[free - 1 - i] ?? 0)) / 2);
    const [size, before] = [Math.hypot(...next), Math.hypot(...values)];
    factor = size / before;
    values = next.map((value) => value / size);
  }
  return -Math.log(factor) / LAYER_DEPTH;
}

const HELD = { held0: true, held1: true };
const MIXED = { held0: false, held1: true };
const FREE = { held0: false, held1: false };

// Exponents: J. D. Jackson, Classical Electrodynamics, section 2.11 (from memory): π/ω between two sides alike, π/2ω for a mixed
// corner of opening ω.
describe.each([
  [4, 2e-4],
  [6, 3e-6],
  [10, 1e-9],
])('order %i', (order, tolerance) => {
  test.each([10, 30, 60, 90, 120])('metal wedge of %i°: λ = π/(2π - α)', (degrees) => {
    const angle = 2 * Math.PI - (degrees * Math.PI) / 180;
    const found = exponent(fan(order, angle, HELD), (place) => Math.sin(Math.PI * place));
    expect(Math.abs(found / (Math.PI / angle) - 1)).toBeLessThan(tolerance);
  });

  test.each([180, 270, 360])('metal against paper edge at %i°: λ = π/(2ω)', (degrees) => {
    const angle = (degrees * Math.PI) / 180;
    const found = exponent(fan(order, angle, MIXED), (place) => 1 - place);
    expect(Math.abs(found / (Math.PI / (2 * angle)) - 1)).toBeLessThan(tolerance);
  });

  test.each([270, 360])('paper corner of %i°: λ = π/ω for what is odd about the middle', (degrees) => {
    const angle = (degrees * Math.PI) / 180;
    const found = exponent(fan(order, angle, FREE), (place) => 1 - 2 * place, true);
    expect(Math.abs(found / (Math.PI / angle) - 1)).toBeLessThan(tolerance);
  });
});

test('a turned and rescaled rim gives the same bytes, with its store or without', () => {
  const store = fanStore(1e6);
  const rim = (turn: number, size: number): number[] =>
    [0, 0.8, 1.7, 2.5].flatMap((a) => [size * Math.cos(turn + a), size * Math.sin(turn + a)]);
  const first = fanElement(fanShape(4, rim(0, 1), HELD), store);
  const turned = fanShape(4, rim(1.234, 0.37), HELD);
  expect(fanElement(turned, store)).toBe(first);
  expect(fanElement(turned, fanStore(1))?.stiffness).toEqual(first?.stiffness);
});

test('a constant carries no energy, held or free', () => {
  for (const held of [HELD, MIXED, FREE]) {
    const { stiffness, rimNodes } = fan(4, 4, held);
    for (let i = 0; i < rimNodes; i++) {
      const sum = stiffness
        .slice(i * rimNodes, (i + 1) * rimNodes)
        .reduce((total, value) => total + value, 0);
      expect(Math.abs(sum)).toBeLessThan(1e-12);
    }
  }
});

test('a store forgets its oldest elements beyond its limit', () => {
  const store = fanStore(1);
  const shape = (angle: number) => fanShape(2, [1, 0, Math.cos(angle), Math.sin(angle)], MIXED);
  const first = fanElement(shape(1), store);
  fanElement(shape(1.1), store);
  const again = fanElement(shape(1), store);
  expect(again).not.toBe(first);
  expect(again).toEqual(first);
});
