/** Survey of shapes: areas, bounds, contacts, lonely paper; and the small measures of outlines. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { outlineArea } from '../../../shared/field/geometry/measure.ts';
import {
  distanceToOutline,
  insideOutline,
  outlineBounds,
  surveyProblem,
} from '../../../shared/field/geometry/survey.ts';
import { disc, piece, polygon, problem, rectangle, slit, turnedRound } from './shapes.ts';

describe('areas and bounds', () => {
  it('count overlapping pieces of a conductor once, each piece for itself', () => {
    const { conductors } = surveyProblem(
      problem([[piece(rectangle(10, 10, 30, 20)), piece(rectangle(20, 10, 40, 20))]]),
    );
    expect(conductors[0]?.area_mm2).toBeCloseTo(300, 9);
    expect(conductors[0]?.pieces.map((p) => p.area_mm2)).toEqual([
      expect.closeTo(200, 9),
      expect.closeTo(200, 9),
    ]);
  });

  it('count only what lies on paper, not over a hole or past the edge', () => {
    const scene = problem([[piece(rectangle(-10, 20, 30, 40))]], { holes: [rectangle(20, 0, 25, 100)] });
    const [conductor] = surveyProblem(scene).conductors;
    expect(conductor?.area_mm2).toBeCloseTo(800, 9);
    expect(conductor?.areaOnPaper_mm2).toBeCloseTo(500, 9);
    expect(conductor?.pieces[0]?.bounds).toEqual({ x0: -10, y0: 20, x1: 30, y1: 40 });
    expect(conductor?.pieces[0]?.boundsOnPaper).toEqual({ x0: 0, y0: 20, x1: 30, y1: 40 });
  });

  it('leave the hollow of a ring out', () => {
    const [ring] = surveyProblem(
      problem([[piece(disc(120, 80, 30), turnedRound(disc(120, 80, 26)))]]),
    ).conductors;
    expect(ring?.areaOnPaper_mm2).toBeCloseTo(Math.PI * (30 ** 2 - 26 ** 2), 9);
  });

  it('say so where a piece is nowhere on the paper', () => {
    const [away] = surveyProblem(problem([[piece(disc(-50, 80, 30))]])).conductors;
    expect(away?.areaOnPaper_mm2).toBe(0);
    expect(away?.pieces[0]?.boundsOnPaper).toBeNull();
  });
});

describe('contacts', () => {
  const contacts = (...outlines: Parameters<typeof piece>[0][]) =>
    surveyProblem(problem(outlines.map((outline) => [piece(outline)]))).contacts.map(({ a, b, gap_mm }) => [
      a,
      b,
      gap_mm,
    ]);

  it('by overlap, by one in the other, along an edge, at a point', () => {
    expect(contacts(disc(50, 50, 20), disc(80, 50, 20))).toEqual([[0, 1, 0]]);
    expect(contacts(disc(50, 50, 20), disc(52, 50, 3))).toEqual([[0, 1, 0]]);
    expect(contacts(rectangle(10, 10, 20, 20), rectangle(20, 12, 30, 18))).toEqual([[0, 1, 0]]);
    expect(contacts(disc(50, 50, 20), disc(90, 50, 20))).toEqual([[0, 1, 0]]);
    expect(contacts(rectangle(10, 10, 20, 20), rectangle(20, 20, 30, 30))).toEqual([[0, 1, 0]]);
  });

  it('within 0.05 mm, measured exactly between arcs and straight edges', () => {
    expect(contacts(disc(50, 50, 20), disc(90.04, 50, 20))).toEqual([[0, 1, expect.closeTo(0.04, 9)]]);
    expect(contacts(disc(50, 50, 20), rectangle(70.03, 0, 80, 100))).toEqual([
      [0, 1, expect.closeTo(0.03, 9)],
    ]);
    expect(contacts(polygon([10, 40], [49.98, 50], [10, 60]), rectangle(50, 0, 80, 100))).toEqual([
      [0, 1, expect.closeTo(0.02, 9)],
    ]);
    expect(contacts(disc(50, 50, 20), disc(90.06, 50, 20))).toEqual([]);
  });

  it('not off the paper, and not within one conductor', () => {
    expect(contacts(disc(-50, 50, 20), disc(-40, 50, 20))).toEqual([]);
    const pair = [piece(disc(50, 50, 20)), piece(disc(60, 50, 20))];
    expect(surveyProblem(problem([pair])).contacts).toEqual([]);
  });

  it('lie where the shapes are nearest', () => {
    const [contact] = surveyProblem(
      problem([[piece(disc(50, 50, 20))], [piece(disc(90.04, 50, 20))]]),
    ).contacts;
    expect(contact?.at.x).toBeCloseTo(70.02, 9);
    expect(contact?.at.y).toBeCloseTo(50, 9);
  });
});

describe('paper without a conductor', () => {
  it('is a corner that a slit cuts off, not the inside of a ring', () => {
    const scene = problem([[piece(disc(120, 80, 30), turnedRound(disc(120, 80, 26)))]], {
      slits: [slit(-10, 50, 50, -10)],
    });
    const { islands } = surveyProblem(scene);
    expect(islands).toHaveLength(1);
    expect(islands[0]?.area_mm2).toBeCloseTo(800, 9);
    expect((islands[0]?.at.x ?? 0) + (islands[0]?.at.y ?? 0)).toBeLessThan(40);
    expect(Math.min(islands[0]?.at.x ?? 0, islands[0]?.at.y ?? 0)).toBeGreaterThan(0);
  });

  it('is the whole paper where nothing lies on it', () => {
    expect(surveyProblem(problem([])).islands).toEqual([{ at: expect.anything(), area_mm2: 38400 }]);
  });
});

describe('measures of an outline', () => {
  it('a disc agrees with distance from its centre, points level with its joints included', () => {
    const inSteps = fc.integer({ min: -300, max: 300 }).map((n) => n / 10);
    fc.assert(
      fc.property(inSteps, inSteps, (x, y) => {
        const away = Math.hypot(x, y);
        if (Math.abs(away - 20) < 1e-9) return;
        for (const outline of [disc(0, 0, 20), turnedRound(disc(0, 0, 20))]) {
          expect(insideOutline(outline, { x, y })).toBe(away < 20);
          expect(distanceToOutline(outline, { x, y })).toBeCloseTo(Math.abs(away - 20), 9);
        }
      }),
      { seed: 4, numRuns: 500 },
    );
  });

  it('true extents and area of a slice', () => {
    const arc = { centre: { x: 0, y: 0 }, anticlockwise: true };
    const slice = {
      edges: [
        { from: { x: 3, y: -4 }, arc },
        { from: { x: -4, y: 3 }, arc: null },
      ],
    };
    expect(outlineBounds(slice)).toEqual({ x0: -4, y0: -4, x1: 5, y1: 5 });
    const swept = Math.atan2(3, -4) - Math.atan2(-4, 3);
    expect(outlineArea(slice)).toBeCloseTo((25 * (swept - Math.sin(swept))) / 2, 9);
  });

  it('a whole circle in one edge', () => {
    const circle = {
      edges: [{ from: { x: 5, y: 0 }, arc: { centre: { x: 0, y: 0 }, anticlockwise: false } }],
    };
    expect(outlineArea(circle)).toBeCloseTo(25 * Math.PI, 12);
    expect(insideOutline(circle, { x: 0, y: 0 })).toBe(true);
    expect(insideOutline(circle, { x: 5, y: 5 })).toBe(false);
  });
});
