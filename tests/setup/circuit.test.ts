/** The circuit around a paper of known conductances, against networks computed by hand from Ohm's and Kirchhoff's laws. */
import { describe, expect, it } from 'vitest';
import { type CircuitState, paperResistance, solveCircuit } from '../../shared/setup/bounds.ts';
import { circuitOf } from '../../shared/setup/circuit.ts';
import type { Setup } from '../../shared/setup/setup.ts';
import { floating, held, negative, paperOf, positive, setupOf } from './hand-made.ts';

const solve = (setup: Setup, upper_S: Float64Array, lower_S: Float64Array | null = null): CircuitState =>
  solveCircuit(circuitOf(setup), { upper_S, lower_S });

const potentials = ({ state }: CircuitState): readonly number[] => [...state.conductor_V];

describe('two electrodes', () => {
  const paper = paperOf(2, [[0, 1, 2500]]);

  it('an ideal cell puts its e.m.f. on the paper', () => {
    const found = solve(
      setupOf(
        [
          { name: 'N', connection: negative },
          { name: 'P', connection: positive },
        ],
        { emf_V: 1.5 },
      ),
      paper,
    );
    expect(potentials(found)).toEqual([0, 1.5]);
    expect(found.supply_A).toBeCloseTo(0.0006, 15);
    expect(found.state.conductor_A[0]).toBeCloseTo(-0.0006, 15);
    expect(found.state.conductor_A[1]).toBeCloseTo(0.0006, 15);
  });

  it('internal resistance and clips stand in series with the paper', () => {
    const leads = [
      { name: 'N', connection: negative, clip_ohm: 100 },
      { name: 'P', connection: positive, clip_ohm: 300 },
    ];
    const found = solve(setupOf(leads, { emf_V: 1.5, internal_ohm: 100 }), paper);
    // 1.5 V over 3000 Ω: 0.5 mA.
    expect(found.supply_A).toBeCloseTo(0.0005, 15);
    expect(potentials(found)[0]).toBeCloseTo(0.05, 12);
    expect(potentials(found)[1]).toBeCloseTo(1.5 - 0.05 - 0.15, 12);
  });

  it('a tiny internal resistance costs no digits', () => {
    const leads = [
      { name: 'N', connection: negative },
      { name: 'P', connection: positive },
    ];
    const found = solve(setupOf(leads, { emf_V: 1.5, internal_ohm: 1e-9 }), paper);
    expect(found.supply_A).toBeCloseTo(0.0006, 14);
  });

  it('a clip of 200 Ω on paper of 5 kΩ per square leaves 1.39 V', () => {
    // Bars 160 mm × 10 mm, 100 mm apart on 290 mm × 200 mm: 0.513 squares; common practice, no source.
    const squares = paperOf(2, [[0, 1, 0.513 * 5000]]);
    const leads = [
      { name: 'N', connection: negative },
      { name: 'P', connection: positive, clip_ohm: 200 },
    ];
    const found = solve(setupOf(leads, { emf_V: 1.5 }), squares);
    expect(potentials(found)[1]).toBeCloseTo(1.39, 2);
  });

  it('a strip in series with the internal resistance of the supply', () => {
    // Full-width bars 180 mm apart on 160 mm: 1.125 squares of 2000 Ω, 2250 Ω; with 180 Ω the current is 1.5 V / 2430 Ω (definition of sheet resistance).
    const strip = paperOf(2, [[0, 1, 2250]]);
    const leads = [
      { name: 'B', connection: negative },
      { name: 'A', connection: positive },
    ];
    const found = solve(setupOf(leads, { emf_V: 1.5, internal_ohm: 180 }), strip);
    expect(found.supply_A).toBeCloseTo(1.5 / 2430, 15);
    expect(potentials(found)[1]).toBeCloseTo((1.5 * 2250) / 2430, 12);
  });
});

describe('floating, joined and held electrodes', () => {
  // N—F 1000 Ω, F—P 2000 Ω, N—P 6000 Ω.
  const paper = paperOf(3, [
    [0, 1, 1000],
    [1, 2, 2000],
    [0, 2, 6000],
  ]);

  it('a floating one takes no current and divides the voltage', () => {
    const leads = [
      { name: 'N', connection: negative },
      { name: 'F', connection: floating },
      { name: 'P', connection: positive },
    ];
    const setup = setupOf(leads, { emf_V: 1.5 });
    const found = solve(setup, paper);
    expect(potentials(found)[1]).toBeCloseTo(0.5, 14);
    expect(found.state.conductor_A[1]).toBeCloseTo(0, 17);
    // 3000 Ω beside 6000 Ω.
    expect(paperResistance(setup, { upper_S: paper, lower_S: null })?.value_ohm).toBeCloseTo(2000, 9);
  });

  it('joined to P it stands at its potential, over a resistive lead a little below', () => {
    const joined = (clip_ohm: number) =>
      setupOf(
        [
          { name: 'N', connection: negative },
          { name: 'F', connection: positive, joinedTo: 'P', clip_ohm },
          { name: 'P', connection: positive },
        ],
        { emf_V: 1.5 },
      );
    expect(potentials(solve(joined(0), paper))[1]).toBe(1.5);
    // Over 2000 Ω the lead doubles the path of 2000 Ω through the paper: 1000 Ω against 1000 Ω to N.
    expect(potentials(solve(joined(2000), paper))[1]).toBeCloseTo(0.75, 14);
    // Clips do not count in the resistance of the paper: 1000 Ω beside 6000 Ω.
    expect(paperResistance(joined(2000), { upper_S: paper, lower_S: null })?.value_ohm).toBeCloseTo(
      6000 / 7,
      9,
    );
  });

  it('two floating ones joined to each other share one potential', () => {
    const leads = [
      { name: 'N', connection: negative },
      { name: 'F', connection: floating },
      { name: 'G', connection: floating, joinedTo: 'F' },
      { name: 'P', connection: positive },
    ];
    const four = paperOf(4, [
      [0, 1, 1000],
      [2, 3, 3000],
      [0, 3, 500],
    ]);
    const found = solve(setupOf(leads, { emf_V: 2 }), four);
    expect(potentials(found)[1]).toBeCloseTo(0.5, 14);
    expect(potentials(found)[2]).toBeCloseTo(0.5, 14);
  });

  it('a held one is an ideal source against the negative terminal, behind its clip', () => {
    const leads = [
      { name: 'N', connection: negative },
      { name: 'H', connection: held(0.9), clip_ohm: 500 },
      { name: 'P', connection: positive },
    ];
    const setup = setupOf(leads, { emf_V: 1.5 });
    const found = solve(setup, paper);
    // At H: (v − 0)/1000 + (v − 1.5)/2000 + (v − 0.9)/500 = 0.
    const v = (1.5 / 2000 + 0.9 / 500) / (1 / 1000 + 1 / 2000 + 1 / 500);
    expect(potentials(found)[1]).toBeCloseTo(v, 14);
    expect(found.supply_A).toBeCloseTo(1.5 / 6000 + (1.5 - v) / 2000, 15);
    expect(paperResistance(setup, { upper_S: paper, lower_S: null })).toBeNull();
  });

  it('what no paper ties down has no potential, and does not disturb the rest', () => {
    const leads = [
      { name: 'N', connection: negative },
      { name: 'F', connection: floating },
      { name: 'P', connection: positive },
    ];
    const found = solve(setupOf(leads, { emf_V: 1.5 }), paperOf(3, [[0, 2, 1000]]));
    expect(found.solved.network.nodeOf.map((n) => found.solved.adrift[n])).toEqual([false, true, false]);
    expect(found.supply_A).toBeCloseTo(0.0015, 15);
  });
});

describe('a bridge', () => {
  // Arms 100, 200 from P and 150, 300 to N with a bridge of 50 Ω between the middles A and B: balanced, as 100 : 150 = 200 : 300.
  const bridge = (last: number): Float64Array =>
    paperOf(4, [
      [3, 1, 100],
      [3, 2, 200],
      [1, 0, 150],
      [2, 0, last],
      [1, 2, 50],
    ]);
  const leads = [
    { name: 'N', connection: negative },
    { name: 'A', connection: floating },
    { name: 'B', connection: floating },
    { name: 'P', connection: positive },
  ];

  it('carries no current over the bridge when balanced', () => {
    const [, a, b] = potentials(solve(setupOf(leads, { emf_V: 5 }), bridge(300)));
    expect(a).toBeCloseTo(3, 13);
    expect(b).toBeCloseTo(3, 13);
  });

  it('follows the two equations of Kirchhoff out of balance', () => {
    const [, a, b] = potentials(solve(setupOf(leads, { emf_V: 5 }), bridge(100)));
    // A: 5/100 = a (1/100 + 1/150 + 1/50) − b/50; B: 5/200 = b (1/200 + 1/100 + 1/50) − a/50. By Cramer's rule:
    const [p, q, c] = [1 / 100 + 1 / 150 + 1 / 50, 1 / 200 + 1 / 100 + 1 / 50, 1 / 50];
    expect(a).toBeCloseTo((0.05 * q + 0.025 * c) / (p * q - c * c), 13);
    expect(b).toBeCloseTo((0.025 * p + 0.05 * c) / (p * q - c * c), 13);
  });
});

describe('laws of the whole', () => {
  const random = (seed: number): (() => number) => {
    let state = seed;
    return () => {
      state = (state * 48271) % 2147483647;
      return state / 2147483647;
    };
  };

  it('superposition: potentials for two sources are the sum of those for each', () => {
    const next = random(7);
    const pairs = [0, 1, 2, 3].flatMap((a) =>
      [0, 1, 2, 3].filter((b) => b > a).map((b) => [a, b, 500 + 3000 * next()] as const),
    );
    const paper = paperOf(4, pairs);
    const at = (emf_V: number, second: number): readonly number[] =>
      potentials(
        solve(
          setupOf(
            [
              { name: 'N', connection: negative, clip_ohm: 40 },
              { name: 'F', connection: floating },
              { name: 'H', connection: held(second), clip_ohm: 70 },
              { name: 'P', connection: positive },
            ],
            { emf_V, internal_ohm: 10 },
          ),
          paper,
        ),
      );
    const both = at(1.5, 0.4);
    const [one, other] = [at(1.5, 0), at(0, 0.4)];
    for (const k of both.keys()) expect(both[k]).toBeCloseTo((one[k] ?? 0) + (other[k] ?? 0), 13);
  });

  it('leads swapped: V becomes the e.m.f. less V, the current stays', () => {
    const paper = paperOf(3, [
      [0, 1, 1000],
      [1, 2, 2000],
      [0, 2, 6000],
    ]);
    const with_ = (first: typeof negative, last: typeof negative): CircuitState =>
      solve(
        setupOf(
          [
            { name: 'N', connection: first },
            { name: 'F', connection: floating },
            { name: 'P', connection: last },
          ],
          { emf_V: 1.5, internal_ohm: 0 },
        ),
        paper,
      );
    const [there, back] = [with_(negative, positive), with_(positive, negative)];
    for (const k of [0, 1, 2]) expect(potentials(back)[k]).toBeCloseTo(1.5 - (potentials(there)[k] ?? 0), 14);
    expect(back.supply_A).toBeCloseTo(there.supply_A ?? Number.NaN, 16);
  });

  it('bounds hold every current that a conductance matrix between the two sides gives', () => {
    const next = random(11);
    const leads = [
      { name: 'N', connection: negative, clip_ohm: 30 },
      { name: 'F', connection: floating },
      { name: 'H', connection: held(0.7) },
      { name: 'P', connection: positive },
      { name: 'Q', connection: positive, clip_ohm: 200 },
    ];
    const setup = setupOf(leads, { emf_V: 1.5, internal_ohm: 25 });
    const numbers = leads.map((_, i) => i);
    for (let trial = 0; trial < 50; trial++) {
      const pairs = numbers.flatMap((a) =>
        numbers.filter((b) => b > a).map((b) => [a, b, 500 + 3000 * next()] as const),
      );
      // Resistors that only fall make the matrix rise: lower ≤ true ≤ upper in energy.
      const lowered = pairs.map(([a, b, ohm]) => [a, b, ohm * (1 - 0.1 * next())] as const);
      const lowest = lowered.map(([a, b, ohm]) => [a, b, ohm * (1 - 0.1 * next())] as const);
      const [lower, exact, upper] = [pairs, lowered, lowest].map((list) => paperOf(5, list));
      if (lower === undefined || exact === undefined || upper === undefined)
        throw new Error('three matrices');
      const found = solve(setup, upper, lower);
      const truth = solve(setup, exact);
      const within = (value: number | null, bounds: readonly [number, number] | null | undefined): void => {
        expect(value).toBeGreaterThanOrEqual(bounds?.[0] ?? Number.NaN);
        expect(value).toBeLessThanOrEqual(bounds?.[1] ?? Number.NaN);
      };
      within(truth.supply_A, found.supplyBounds_A);
      within(found.supply_A, found.supplyBounds_A);
      for (const k of numbers) {
        within(truth.state.conductor_A[k] ?? null, found.conductorBounds_A[k]);
        within(found.state.conductor_A[k] ?? null, found.conductorBounds_A[k]);
      }
    }
  });

  it('bounds of the resistance hold the resistance between, and meet where the sides meet', () => {
    const leads = [
      { name: 'N', connection: negative },
      { name: 'P', connection: positive },
    ];
    const setup = setupOf(leads, { emf_V: 1.5 });
    const found = paperResistance(setup, {
      upper_S: paperOf(2, [[0, 1, 990]]),
      lower_S: paperOf(2, [[0, 1, 1010]]),
    });
    expect(found?.bounds_ohm?.[0]).toBeCloseTo(990, 9);
    expect(found?.bounds_ohm?.[1]).toBeCloseTo(1010, 9);
  });
});
