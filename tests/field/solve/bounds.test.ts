/** Bounds on the resistance against closed forms, at every order, and how fast they close. */
import { describe, expect, test } from 'vitest';
import type { Field } from '../../../shared/field/field.ts';
import { meshDomain } from '../../../shared/field/mesh/mesh-domain.ts';
import type { Domain } from '../../../shared/field/problem.ts';
import { discretise, frameOf } from '../../../shared/field/solve/discretisation.ts';
import { fanStore } from '../../../shared/field/solve/fan.ts';
import { Workspace } from '../../../shared/field/solve/multifrontal.ts';
import { solvePrimal } from '../../../shared/field/solve/primal.ts';
import { solveDomain } from '../../../shared/field/solve/solve-domain.ts';
import { partialContactsSquares } from '../elliptic.ts';
import {
  adjacentHalves,
  cornerL,
  discInRing,
  domainOfLoops,
  eightElectrodes,
  fourArcs,
  fullWidthBars,
  hole,
  partialContacts,
  rectangle,
  ringBetweenBars,
  spikeAndBar,
  thinGap,
  twoBars,
} from '../scenes.ts';

function fieldAt(domain: Domain, order: number): Field {
  const outcome = solveDomain(domain, { gap: 1e-9, maxUnknowns: 100_000, order });
  if (!outcome.ok) throw new Error(outcome.trouble.kind);
  return outcome.field;
}

/** Resistance between two conductors, from the upper and the lower conductance. */
function resistance({ upper_S, lower_S }: Field): { low: number; high: number } {
  return { low: 1 / (upper_S[0] ?? 0), high: 1 / (lower_S[0] ?? 0) };
}

const EXACT: [string, Domain, number, string][] = [
  ['full-width bars', fullWidthBars, 240 / 160, 'R = Rs L/W, definition of resistance per square'],
  ['disc in a ring', discInRing, Math.log(6) / (2 * Math.PI), 'coaxial: R = Rs ln(b/a)/2π, textbook'],
  [
    'L of equal arms',
    cornerL,
    200 / 40 + 200 / 40 + 1 - (2 / Math.PI) * Math.log(2),
    'P. M. Hall, Thin Solid Films 1 (1967/68) 277, from memory; arms of five widths are as good as infinite',
  ],
  [
    'contacts of a third',
    partialContacts(160, 120, 40),
    partialContactsSquares(160, 120, 40),
    'elliptic functions',
  ],
  [
    'short contacts',
    partialContacts(160, 120, 10),
    partialContactsSquares(160, 120, 10),
    'elliptic functions',
  ],
  [
    'outer halves of adjacent edges',
    adjacentHalves,
    Math.SQRT2,
    'module of a quadrilateral; closed form by elliptic functions, from memory',
  ],
  [
    'four equal arcs on the rim of a disc',
    fourArcs,
    1,
    'turned by a quarter the sheet is its own conjugate, so R = Rs (textbook; from memory)',
  ],
];

describe.each(EXACT)('%s', (_name, domain, exact) => {
  test.each([1, 2, 3, 4, 5, 6, 8, 10])('bounds of order %i hold the exact resistance', (order) => {
    const { low, high } = resistance(fieldAt(domain, order));
    expect(low).toBeLessThanOrEqual(exact);
    expect(high).toBeGreaterThanOrEqual(exact);
  });

  test('order 8 gives nine digits', () => {
    const { low, high } = resistance(fieldAt(domain, 8));
    expect(Math.abs((low + high) / 2 / exact - 1)).toBeLessThan(1e-9);
  });
});

/**
 * On smooth solutions the energy's error falls as h^2p (P. G. Ciarlet, The Finite Element Method for Elliptic Problems (1978), from
 * memory); h goes as the root of the number of triangles.
 */
test.each([
  [1, 4, 2],
  [2, 4, 2],
])('order %i: error of the energy falls as h^2p', (order, coarse, fine) => {
  const conductance = (2 * Math.PI) / Math.log(6);
  const measure = (size_mm: number): { error: number; triangles: number } => {
    const mesh = meshDomain(discInRing, { size_mm });
    const frame = frameOf(mesh);
    if (frame === null) throw new Error('no metal');
    const tools = { fans: fanStore(1), workspace: new Workspace() };
    const primal = solvePrimal(discretise(frame, order, [1, 1]), 2, tools);
    return {
      error: (primal?.conductance[0] ?? 0) / conductance - 1,
      triangles: mesh.corners.length / 3,
    };
  };
  const [first, second] = [measure(coarse), measure(fine)];
  const rate = Math.log(first.error / second.error) / Math.log(Math.sqrt(second.triangles / first.triangles));
  expect(rate).toBeGreaterThan(2 * order - 0.3);
  expect(rate).toBeLessThan(2 * order + 0.3);
});

test('full-width bars are exact at every order: nothing but the allowance for rounding is left', () => {
  for (const order of [1, 2, 4, 10]) expect(fieldAt(fullWidthBars, order).gap).toBeLessThan(2.1e-11);
});

/**
 * On one mesh with fans the error falls exponentially with the order (C. Schwab, p- and hp-Finite Element Methods (1998), from
 * memory): the logarithm of the gap is a straight line in p.
 */
describe.each([
  ['two bars', twoBars],
  ['spike and bar', spikeAndBar],
  ['contacts of a third', partialContacts(160, 120, 40)],
  ['ring between bars', ringBetweenBars],
])('gap of %s', (_name, domain) => {
  test('shrinks by about one factor an order', () => {
    const gaps = [2, 3, 4, 5, 6, 7].map((order) => fieldAt(domain, order).gap);
    const steps = gaps.slice(1).map((gap, i) => Math.log10((gaps[i] ?? 0) / gap));
    for (const step of steps) {
      expect(step).toBeGreaterThan(0.9);
      expect(step).toBeLessThan(2.2);
    }
    expect(gaps[2]).toBeLessThan(2e-5);
  });
});

test('eight electrodes, slits and a hole: gap below 3e-6 at order 4, below 2e-8 at order 6', () => {
  expect(fieldAt(eightElectrodes, 4).gap).toBeLessThan(3e-6);
  expect(fieldAt(eightElectrodes, 6).gap).toBeLessThan(2e-8);
});

test('along a gap of 0.05 mm × 120 mm rounding does not turn the bounds round', () => {
  const { upper_S, lower_S, gap } = fieldAt(thinGap, 6);
  expect(gap).toBeLessThan(1e-8);
  expect(lower_S[0]).toBeLessThan(upper_S[0] ?? 0);
  // Parallel faces alone: 120 mm / 0.05 mm = 2400 S; the fringes add the rest.
  expect(lower_S[0]).toBeGreaterThan(2400);
  const coarser = fieldAt(thinGap, 4);
  expect(coarser.upper_S[0]).toBeGreaterThan(upper_S[0] ?? 0);
  expect(coarser.lower_S[0]).toBeLessThan(lower_S[0] ?? 0);
});

test('orders are raised until the gap is reached', () => {
  const reached = [1e-3, 1e-6, 1e-7, 1e-9].map((gap) => {
    const outcome = solveDomain(twoBars, { gap, maxUnknowns: 100_000 });
    if (!outcome.ok) throw new Error(outcome.trouble.kind);
    expect(outcome.field.gap).toBeLessThanOrEqual(gap);
    return outcome.field.order;
  });
  expect(reached).toEqual([4, 4, 5, 6]);
});

test('the work limit stops the search, and the gap reached is told', () => {
  const outcome = solveDomain(twoBars, { gap: 1e-10, maxUnknowns: 5000 });
  expect(outcome).toMatchObject({ ok: true, field: { order: 4 } });
  if (outcome.ok) expect(outcome.field.gap).toBeGreaterThan(1e-10);
  expect(solveDomain(twoBars, { gap: 1e-10, maxUnknowns: 100 })).toMatchObject({
    ok: false,
    trouble: { kind: 'too-large' },
  });
});

test('without the stream function there is no lower bound', () => {
  const outcome = solveDomain(twoBars, { gap: 1e-6, maxUnknowns: 5000, order: 3, dual: false });
  if (!outcome.ok) throw new Error(outcome.trouble.kind);
  expect(outcome.field.gap).toBe(Number.POSITIVE_INFINITY);
  expect(outcome.field.stream(Float64Array.of(0, 1))).toBeNull();
});

test('no paper, no metal, metal that meets metal: told as trouble', () => {
  const settings = { gap: 1e-6, maxUnknowns: 5000 };
  const bare = { ...domainOfLoops([rectangle([0, 0], [100, 100], -1)]), conductors: 1 };
  expect(solveDomain(bare, settings)).toMatchObject({ ok: false, trouble: { kind: 'no-metal' } });
  const touching = domainOfLoops([rectangle([0, 0], [100, 100], [0, 1, -1, -1])]);
  expect(solveDomain(touching, settings)).toMatchObject({
    ok: false,
    trouble: { kind: 'short', a: 0, b: 1, at: { x: 100, y: 0 } },
  });
  const cornerToCorner = domainOfLoops([
    rectangle([0, 0], [240, 160], -1),
    hole(rectangle([60, 20], [120, 80], 0)),
    hole(rectangle([120, 80], [177, 140], 1)),
  ]);
  expect(solveDomain(cornerToCorner, settings)).toMatchObject({
    ok: false,
    trouble: { kind: 'short', at: { x: 120, y: 80 } },
  });
});
