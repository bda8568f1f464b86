/** What must hold for every sheet: symmetry, reciprocity, scaling, conjugate sheets, same bytes for same input. */
import { describe, expect, test } from 'vitest';
import type { Field } from '../../../shared/field/field.ts';
import { type Domain, INSULATING } from '../../../shared/field/problem.ts';
import { fanStore } from '../../../shared/field/solve/fan.ts';
import { type SolveSettings, solveDomain } from '../../../shared/field/solve/solve-domain.ts';
import {
  disc,
  discInRing,
  domainOfLoops,
  eightElectrodes,
  fullWidthBars,
  hole,
  partialContacts,
  placedAgain,
  rectangle,
  ringBetweenBars,
  spikeAndBar,
  twoBars,
} from '../scenes.ts';

const DEFAULTS = { gap: 1e-9, maxUnknowns: 100_000, order: 4 };

function solved(domain: Domain, settings: Partial<SolveSettings> = {}): Field {
  const outcome = solveDomain(domain, { ...DEFAULTS, ...settings });
  if (!outcome.ok) throw new Error(outcome.trouble.kind);
  return outcome.field;
}

function rows(matrix: Float64Array, n: number): number[][] {
  return Array.from({ length: n }, (_, i) => [...matrix.slice(i * n, (i + 1) * n)]);
}

describe.each([
  ['two bars', twoBars],
  ['ring between bars', ringBetweenBars],
  ['eight electrodes', eightElectrodes],
])('%s', (_name, domain) => {
  const field = solved(domain);
  const n = domain.conductors;

  test.each(['upper_S', 'lower_S'] as const)(
    '%s is symmetric and drives no current at equal potentials',
    (side) => {
      const matrix = field[side];
      const largest = Math.max(...matrix);
      for (let i = 0; i < n; i++) {
        for (let j = 0; j < i; j++) {
          expect(Math.abs((matrix[i * n + j] ?? 0) - (matrix[j * n + i] ?? 0))).toBeLessThan(1e-14 * largest);
        }
        const sum = matrix.slice(i * n, (i + 1) * n).reduce((total, value) => total + value, 0);
        expect(Math.abs(sum)).toBeLessThan(1e-13 * largest);
      }
    },
  );

  test('upper minus lower is nowhere negative: no potentials draw less power than the lower bound says', () => {
    let seed = 7;
    for (let trial = 0; trial < 200; trial++) {
      const v = Array.from({ length: n }, () => {
        seed = (seed * 16807) % 2147483647;
        return seed / 2147483647 - 0.5;
      });
      const power = (matrix: Float64Array): number =>
        matrix.reduce((sum, value, ij) => sum + value * (v[Math.floor(ij / n)] ?? 0) * (v[ij % n] ?? 0), 0);
      expect(power(field.upper_S)).toBeGreaterThan(power(field.lower_S));
    }
  });

  test('a load drains into the conductors, shared as their unit potentials say (reciprocity)', () => {
    const { primal } = field;
    const values = Float64Array.from({ length: primal.space.reference.count }, (_, i) => 1e-3 * (i + 1));
    const load = primal.newLoad();
    primal.addToTriangle(load, 5, values);
    const { into_A } = primal.solveGrounded(load, 5);
    const total = values.reduce((sum, value) => sum + value, 0);
    expect(into_A.reduce((sum, value) => sum + value, 0)).toBeCloseTo(total, 12);
    for (let k = 0; k < n; k++) {
      const unit = primal
        .potential(Float64Array.from({ length: n }, (_, i) => (i === k ? 1 : 0)))
        .triangle(5);
      const share = values.reduce((sum, value, i) => sum + value * (unit[i] ?? 0), 0);
      expect(into_A[k]).toBeCloseTo(share, 12);
    }
  });

  test('the potential stays between the lowest and the highest conductor', () => {
    const v = Float64Array.from({ length: n }, (_, i) => (i === 0 ? 0 : 1 / i));
    const potential = field.primal.potential(v);
    const triangles = field.primal.space.mesh.corners.length / 3;
    for (let t = 0; t < triangles; t++) {
      for (const value of potential.triangle(t)) {
        expect(value).toBeGreaterThan(-1e-4);
        expect(value).toBeLessThan(1 + 1e-4);
      }
    }
  });

  test('the stream function drops by the current along each conductor', () => {
    const v = Float64Array.from({ length: n }, (_, i) => i % 3);
    const stream = field.stream(v);
    const { mesh, reference } = field.primal.space;
    const current = new Float64Array(n);
    mesh.twins.forEach((twin, e) => {
      const tag = mesh.sides[mesh.side[e] ?? -1]?.tag ?? INSULATING;
      if (twin >= 0 || tag < 0) return;
      const values = stream?.triangle(Math.floor(e / 3)) ?? new Float64Array(reference.count);
      current[tag] = (current[tag] ?? 0) + (values[e % 3] ?? 0) - (values[(e + 1) % 3] ?? 0);
    });
    mesh.fans.forEach((fan, f) => {
      const tag = Math.max(fan.tag0, fan.tag1);
      if (tag < 0) return;
      const rim = stream?.fanLayer(f, 0) ?? new Float64Array(0);
      const last = (fan.rim.length ?? 0) * reference.order;
      current[tag] = (current[tag] ?? 0) + (rim[last] ?? 0) - (rim[0] ?? 0);
    });
    rows(field.lower_S, n).forEach((row, k) => {
      const wanted = row.reduce((sum, value, j) => sum + value * (v[j] ?? 0), 0);
      expect(current[k]).toBeCloseTo(wanted, 9);
    });
  });
});

test('resistance per square scales all conductances', () => {
  const one = solved(spikeAndBar);
  const two = solved({ ...spikeAndBar, sheet_ohm: [2000, 2000] });
  two.upper_S.forEach((value, i) => {
    expect(value * 2000).toBeCloseTo(one.upper_S[i] ?? 0, 12);
  });
});

test.each([
  ['turned', { turn: 0.7 }],
  ['scaled', { scale: 3 }],
  ['shifted', { shift: [1000, -300] as const }],
])('%s copies conduct alike', (_name, place) => {
  for (const domain of [spikeAndBar, discInRing]) {
    const plain = solved(domain, { order: 6 });
    const copy = solved(placedAgain(domain, place), { order: 6 });
    copy.upper_S.forEach((upper, i) => {
      const width = Math.max(plain.gap, copy.gap) * Math.max(...plain.upper_S);
      expect(Math.abs(upper - (plain.upper_S[i] ?? 0))).toBeLessThan(width);
    });
  }
});

describe('grain: sheets of different resistance along x and y', () => {
  test('full-width bars measure R_x L/W', () => {
    const field = solved({ ...fullWidthBars, sheet_ohm: [2000, 2300] });
    expect(1 / (field.upper_S[0] ?? 0)).toBeCloseTo((2000 * 240) / 160, 6);
  });

  test('a sheet with grain is an even sheet stretched by the root of the resistances', () => {
    const stretch = Math.sqrt(2);
    const stretched: Domain = {
      ...spikeAndBar,
      loops: spikeAndBar.loops.map((loop) => ({
        edges: loop.edges.map((edge) => ({ ...edge, x: edge.x * stretch })),
      })),
    };
    const even = solved(stretched, { order: 8 });
    const grain = solved({ ...spikeAndBar, sheet_ohm: [stretch, 1 / stretch] }, { order: 8 });
    expect(grain.upper_S[0]).toBeGreaterThan(even.lower_S[0] ?? 0);
    expect(grain.lower_S[0]).toBeLessThan(even.upper_S[0] ?? 0);
    expect((grain.upper_S[0] ?? 0) / (even.upper_S[0] ?? 1)).toBeCloseTo(1, 7);
  });
});

// R R' = Rs²: potential and stream function change places (conjugate functions, textbook; from memory).
test('where metal and edge change places the resistance is the reciprocal, and upper bound turns into lower', () => {
  const domain = partialContacts(160, 120, 40);
  const [loop] = domain.loops;
  if (loop === undefined) throw new Error('no loop');
  // The two stretches of edge between the contacts: left below, bottom and right below, then right above, top and left above.
  const tags = [0, 0, INSULATING, 1, 1, 1, INSULATING, 0];
  const exchanged = domainOfLoops([{ edges: loop.edges.map((edge, i) => ({ ...edge, tag: tags[i] ?? 0 })) }]);
  const plain = solved(domain);
  const other = solved(exchanged);
  expect((plain.upper_S[0] ?? 0) * (other.lower_S[0] ?? 0)).toBeCloseTo(1, 10);
  expect((plain.lower_S[0] ?? 0) * (other.upper_S[0] ?? 0)).toBeCloseTo(1, 10);
});

describe('pieces of paper', () => {
  test('inside a closed ring all paper is at the potential of the ring', () => {
    const field = solved(ringBetweenBars);
    const potential = field.primal.potential(Float64Array.of(0, 1, 0.3));
    const { mesh } = field.primal.space;
    let seen = 0;
    for (let t = 0; t < mesh.corners.length / 3; t++) {
      const [x, y] = [mesh.x[mesh.corners[3 * t] ?? 0] ?? 0, mesh.y[mesh.corners[3 * t] ?? 0] ?? 0];
      if (Math.hypot(x - 120, y - 80) > 25.1) continue;
      seen++;
      for (const value of potential.triangle(t)) expect(value).toBeCloseTo(0.3, 12);
    }
    expect(seen).toBeGreaterThan(10);
  });

  test('paper without metal has no potential, and metal without paper no current', () => {
    const island = rectangle([300, 0], [340, 40], INSULATING);
    const domain = { ...domainOfLoops([...twoBars.loops, island]), conductors: 3 };
    const field = solved(domain);
    expect(field.untouched).toEqual([2]);
    expect(rows(field.upper_S, 3)[2]).toEqual([0, 0, 0]);
    const alone = solved(twoBars);
    expect(field.upper_S[0]).toBeGreaterThan(alone.lower_S[0] ?? 0);
    expect(field.lower_S[0]).toBeLessThan(alone.upper_S[0] ?? 0);
    const potential = field.primal.potential(Float64Array.of(0, 1, 5));
    const { mesh } = field.primal.space;
    const lost = Array.from({ length: mesh.corners.length / 3 }, (_, t) => t).filter(
      (t) => (mesh.x[mesh.corners[3 * t] ?? 0] ?? 0) > 290,
    );
    expect(lost.length).toBeGreaterThan(0);
    for (const t of lost) expect(potential.triangle(t).every(Number.isNaN)).toBe(true);
  });

  test('two separate sheets do not know of each other', () => {
    const ring = [disc([400, 80], 60, 3), hole(disc([400, 80], 10, 2))];
    const field = solved(domainOfLoops([...twoBars.loops, ...ring]), { order: 6 });
    const table = rows(field.upper_S, 4);
    expect(table[0]?.slice(2)).toEqual([0, 0]);
    expect(table[2]?.[2]).toBeCloseTo((2 * Math.PI) / Math.log(6), 6);
  });
});

describe('same input, same bytes', () => {
  const bytes = (field: Field): string =>
    [
      field.upper_S,
      field.lower_S,
      field.stream(new Float64Array(field.domain.conductors).fill(1, 0, 1))?.triangle(3),
    ]
      .map((part) => part?.join(' '))
      .join('|');

  test('whether fans are kept or made anew', () => {
    const none = { get: () => undefined, set: () => undefined };
    for (const domain of [spikeAndBar, eightElectrodes]) {
      const kept = fanStore(1e6);
      const first = bytes(solved(domain, { fans: kept }));
      expect(bytes(solved(domain, { fans: kept }))).toBe(first);
      expect(bytes(solved(domain, { fans: none }))).toBe(first);
    }
  });
});
