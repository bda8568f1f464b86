import { describe, expect, it } from 'vitest';
import type { Domain } from '../../../shared/field/problem.ts';
import { meshedTip } from '../../../shared/field/sample/meshed-tip.ts';
import { pointResponse } from '../../../shared/field/sample/point-response.ts';
import { sampler } from '../../../shared/field/sample/sampler.ts';
import { smoothResponse } from '../../../shared/field/sample/smooth-response.ts';
import { solveDomain } from '../../../shared/field/solve/solve-domain.ts';
import { disc, domainOfLoops, polygon, ringBetweenBars, spikeAndBar, twoBars } from '../scenes.ts';
import { eccentric, eccentricForm, solved } from './solved.ts';

const solve = (domain: Domain) => solveDomain(domain, { gap: 1e-6, maxUnknowns: 60_000 });
const radius = 0.5;

describe('pointResponse', () => {
  it('sees the resistance of a disc tip in an earthed ring', () => {
    // Conduction shape factor of an eccentric cylinder, Incropera & DeWitt, 6th ed., table 4.1 case 7.
    const field = solved(domainOfLoops([disc([0, 0], 60, 0)], [1000, 1000]));
    for (const d of [0.3, 20, 40, 50, 57.5, 59.2]) {
      const exact =
        (1000 / (2 * Math.PI)) * Math.acosh((60 * 60 + radius * radius - d * d) / (2 * 60 * radius));
      const response = pointResponse(field, d, 1e-3, radius)!;
      expect(Math.abs(response.self_ohm / exact - 1)).toBeLessThan(1e-5);
      expect(response.weights[0]).toBeCloseTo(1, 10);
    }
  });

  it('gives at a far point what a point current would, with its image in the ring', () => {
    // Image of a line current in an earthed cylinder (textbook): R = Rs/(2π) ln((b² - d²)/(b a)), for a small against all distances.
    const field = solved(domainOfLoops([disc([0, 0], 60, 0)], [1000, 1000]));
    const exact = (1000 / (2 * Math.PI)) * Math.log((60 * 60 - 30 * 30) / (60 * 0.01));
    expect(pointResponse(field, 0, 30, 0.01)!.self_ohm / exact).toBeCloseTo(1, 6);
  });

  it('agrees with a meshed tip in free paper, near edges and near metal', () => {
    const field = solved(twoBars, 1e-7);
    const places = [
      [110, 70],
      [150, 150],
      [235, 80],
      [230, 150],
      [70, 60],
      [40, 100],
      // Hardly clear of metal, of an edge, and of both edges at a corner of the paper.
      [63.56, 60],
      [120, 0.55],
      [239.2, 159.3],
    ] as const;
    for (const [x, y] of places) {
      const smooth = smoothResponse(field.primal, { x, y, radius })!;
      const meshed = meshedTip(field.domain, { x, y, radius }, solve)!;
      expect(Math.abs(smooth.self_ohm / meshed.self_ohm - 1)).toBeLessThan(1e-5);
      meshed.weights.forEach((weight, k) => {
        expect(Math.abs(smooth.weights[k]! - weight)).toBeLessThan(1e-5);
      });
    }
  });

  it('agrees with a meshed tip in the fans before a spike and at the middle of a ring', () => {
    for (const [domain, places] of [
      [
        spikeAndBar,
        [
          [127, 80],
          [112, 86],
          [190, 145],
        ],
      ],
      [ringBetweenBars, [[120, 80]]],
    ] as const) {
      const field = solved(domain, 1e-7);
      for (const [x, y] of places) {
        const { self_ohm, weights } = pointResponse(field, x, y, radius)!;
        const meshed = meshedTip(domain, { x, y, radius }, solve)!;
        expect(Math.abs(self_ohm / meshed.self_ohm - 1)).toBeLessThan(1e-5);
        meshed.weights.forEach((weight, k) => {
          expect(Math.abs(weights[k]! - weight)).toBeLessThan(1e-5);
        });
      }
    }
  });

  it('agrees with a meshed tip on paper with a grain', () => {
    const grained: Domain = { ...twoBars, sheet_ohm: [1000, 2200] };
    const field = solved(grained, 1e-8);
    for (const [x, y] of [
      [110, 70],
      [150, 150],
      [230, 150],
    ] as const) {
      const smooth = smoothResponse(field.primal, { x, y, radius })!;
      const meshed = meshedTip(grained, { x, y, radius }, solve)!;
      expect(Math.abs(smooth.self_ohm / meshed.self_ohm - 1)).toBeLessThan(1e-5);
    }
  });

  it('weighs the conductors by reciprocity, closer to the truth than sampling', () => {
    const field = solved(eccentric, 1e-7);
    const v = Float64Array.of(1.5, 0);
    const samples = sampler(field.primal.potential(v));
    // A fine tip: a broad one takes the potential of a place nearer to metal.
    const radius = 1e-3;
    for (const [x, y] of [
      [-30, 0],
      [30, 45],
      [60, 20],
    ] as const) {
      const response = pointResponse(field, x, y, radius)!;
      expect(response.weights[0]! + response.weights[1]!).toBeCloseTo(1, 10);
      const exact = eccentricForm.potential(x, y);
      expect(Math.abs(response.potentialOf(v) - exact)).toBeLessThan(1e-7);
      expect(Math.abs(samples.at(x, y)!.value - exact)).toBeLessThan(1e-6);
    }
  });

  it('takes the potential of metal it touches, and doubles its resistance on the edge', () => {
    const field = solved(twoBars);
    const onMetal = pointResponse(field, 63.3, 80, radius)!;
    expect(onMetal.self_ohm).toBe(0);
    expect([...onMetal.weights]).toEqual([1, 0]);
    // Half a disc on the straight edge of an earthed half ring: R = Rs/π ln(b/a), a quarter turn of symmetry (textbook).
    const half = domainOfLoops([
      {
        edges: [
          ...polygon([[-60, 0]], -1).edges,
          { x: 60, y: 0, arc: { x: 0, y: 0, anticlockwise: true }, tag: 0 },
        ],
      },
    ]);
    const response = pointResponse(solved(half), 0, 0, radius)!;
    expect(response.self_ohm / (Math.log(60 / radius) / Math.PI)).toBeCloseTo(1, 5);
  });

  it('has nothing to say off the paper, on paper that no metal touches, and at a corner', () => {
    const field = solved(ringBetweenBars);
    expect(pointResponse(field, -5, 0, radius)).toBeNull();
    expect(pointResponse(field, 30, 80, radius)).toBeNull();
    expect(pointResponse(field, 0, 0, radius)).toBeNull();
    const loose = polygon(
      [
        [300, 0],
        [400, 0],
        [400, 40],
        [340, 40],
        [340, 100],
        [300, 100],
      ],
      -1,
    );
    const beside = solved(domainOfLoops([...twoBars.loops, loose]));
    expect(pointResponse(beside, 320, 20, radius)).toBeNull();
    expect(pointResponse(beside, 339.9, 40.1, radius)).toBeNull();
    expect(sampler(beside.primal.potential(Float64Array.of(0, 1))).at(320, 20)).toBeNull();
  });

  it('is nearly all of one conductor inside a closed ring', () => {
    const response = pointResponse(solved(ringBetweenBars), 120, 85, radius)!;
    expect(response.weights[2]).toBeCloseTo(1, 10);
  });
});
