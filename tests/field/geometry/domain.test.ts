/** The region of bare paper: areas against independent sums, loops and tags of known shapes, degenerate shapes. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { domainCurve } from '../../../shared/field/geometry/curve.ts';
import { domainOf } from '../../../shared/field/geometry/domain.ts';
import { signedArea } from '../../../shared/field/geometry/measure.ts';
import type { Domain, Loop } from '../../../shared/field/problem.ts';
import { disc, piece, polygon, problem, rectangle, slit, turnedRound } from './shapes.ts';

const PAPER = 240 * 160;

function loopCurves({ edges }: Loop) {
  return edges.map((edge, i) => domainCurve(edge, edges[i + 1] ?? edges[0] ?? edge));
}

function bareArea({ loops }: Domain): number {
  return loops.reduce((sum, loop) => sum + signedArea(loopCurves(loop)), 0);
}

function tagsOf({ loops }: Domain): string[] {
  return loops.map(({ edges }) => edges.map(({ tag, arc }) => (arc ? `(${tag})` : `${tag}`)).join(' '));
}

/** Area of the lens common to two discs (circle-circle intersection, from memory). */
function lens(r: number, s: number, d: number): number {
  const alpha = Math.acos((d * d + r * r - s * s) / (2 * d * r));
  const beta = Math.acos((d * d + s * s - r * r) / (2 * d * s));
  const kite = Math.sqrt((-d + r + s) * (d + r - s) * (d - r + s) * (d + r + s)) / 2;
  return r * r * alpha + s * s * beta - kite;
}

describe('the region of bare paper', () => {
  it('is the paper alone where nothing lies on it', () => {
    const bare = domainOf(problem([]));
    expect(tagsOf(bare)).toEqual(['-1 -1 -1 -1']);
    expect(bareArea(bare)).toBe(PAPER);
  });

  it('has two loops more for a ring, one outside and one inside', () => {
    const ring = piece(disc(120, 80, 30), turnedRound(disc(120, 80, 26)));
    const bare = domainOf(problem([[ring]]));
    expect(tagsOf(bare)).toEqual(['-1 -1 -1 -1', '(0) (0)', '(0) (0)']);
    expect(bareArea(bare)).toBeCloseTo(PAPER - Math.PI * (30 ** 2 - 26 ** 2), 9);
  });

  it('clips metal at the edge of the paper', () => {
    const bare = domainOf(problem([[piece(rectangle(-10, 20, 6, 140))]]));
    expect(tagsOf(bare)).toEqual(['-1 -1 -1 -1 0 0 0 -1']);
    expect(bareArea(bare)).toBe(PAPER - 6 * 120);
  });

  it('ignores metal that only touches the paper from outside', () => {
    const bare = domainOf(problem([[piece(rectangle(-10, 20, 0, 140))]]));
    expect(tagsOf(bare).join()).not.toContain('0');
    expect(bareArea(bare)).toBe(PAPER);
  });

  it('lets metal bridge a hole', () => {
    const bridged = problem([[piece(rectangle(50, 76, 110, 84))]], { holes: [rectangle(70, 60, 90, 100)] });
    expect(bareArea(domainOf(bridged))).toBeCloseTo(PAPER - 20 * 40 - 40 * 8, 9);
    expect(tagsOf(domainOf(bridged))).toEqual(['-1 -1 -1 -1', '-1 -1 0 0 0 -1 -1 -1 0 0 0 -1']);
  });

  it('keeps both sides of a slit on bare paper and none under metal', () => {
    const bare = domainOf(
      problem([[piece(rectangle(100, 60, 140, 100))]], { slits: [slit(80, 80, 160, 80)] }),
    );
    expect(bareArea(bare)).toBe(PAPER - 40 * 40);
    const slitLength = loopCurves(bare.loops[1] as Loop).filter(
      (_, i) => bare.loops[1]?.edges[i]?.tag === -1,
    );
    expect(slitLength.map((c) => Math.abs(c.bx - c.ax))).toEqual([20, 20, 20, 20]);
  });

  it('falls in two where a slit cuts across', () => {
    const bare = domainOf(problem([], { slits: [slit(120, -5, 120, 170)] }));
    expect(bare.loops.map((loop) => signedArea(loopCurves(loop)))).toEqual([120 * 160, 120 * 160]);
  });

  it.each([20.5, 30, 39, 41, 59.9])(
    'leaves out the lens once where discs 40 and 20 overlap, %d apart',
    (apart) => {
      const bare = domainOf(problem([[piece(disc(100, 80, 40)), piece(disc(100 + apart, 80, 20))]]));
      expect(bareArea(bare)).toBeCloseTo(PAPER - Math.PI * (40 ** 2 + 20 ** 2) + lens(40, 20, apart), 8);
    },
  );

  it('joins edges in one line and arcs of one circle', () => {
    const halves = [piece(rectangle(40, 40, 60, 50)), piece(rectangle(60, 40, 80, 50))];
    expect(tagsOf(domainOf(problem([halves])))[1]).toBe('0 0 0 0');
    const lollipop = [piece(disc(100, 80, 20)), piece(rectangle(100, 76, 200, 84))];
    expect(tagsOf(domainOf(problem([lollipop])))[1]).toBe('(0) 0 0 0');
  });

  it('takes points within a millionth of a millimetre as one', () => {
    const nearly = [piece(rectangle(40, 40, 60, 50)), piece(rectangle(60 + 4e-7, 40 - 3e-7, 80, 50))];
    const bare = domainOf(problem([nearly]));
    expect(bare.loops).toHaveLength(2);
    expect(bareArea(bare)).toBeCloseTo(PAPER - 400, 4);
  });

  it('takes a disc that touches a bar as one outline with two cusps at the point', () => {
    const bare = domainOf(problem([[piece(disc(120, 80, 20)), piece(rectangle(140, 20, 146, 140))]]));
    expect(tagsOf(bare)[1]).toBe('(0) 0 0 0 0 0 (0)');
    expect(bareArea(bare)).toBeCloseTo(PAPER - Math.PI * 400 - 720, 8);
  });
});

describe('areas over random scenes', () => {
  const cell = fc.integer({ min: -2, max: 14 });
  const box = fc
    .tuple(cell, cell, fc.integer({ min: 1, max: 6 }), fc.integer({ min: 1, max: 6 }))
    .map(([x, y, w, h]) => [x, y, x + w, y + h] as const);
  const boxes = fc.array(box, { minLength: 1, maxLength: 9 });
  const slits = fc.array(fc.tuple(cell, cell, cell, cell), { maxLength: 4 });

  /** Unit squares of the paper that no box covers. */
  function bareSquares(all: readonly (readonly [number, number, number, number])[]): number {
    let count = 0;
    for (let x = 0; x < 12; x++) {
      for (let y = 0; y < 12; y++) {
        if (!all.some(([x0, y0, x1, y1]) => x0 <= x && x < x1 && y0 <= y && y < y1)) count++;
      }
    }
    return count;
  }

  it('rectangles on a grid, overlapping, touching and collinear, with slits', () => {
    fc.assert(
      fc.property(boxes, boxes, slits, (metal, holes, cuts) => {
        const scene = problem(
          metal.map(([x0, y0, x1, y1]) => [piece(rectangle(x0, y0, x1, y1))]),
          {
            paper: rectangle(0, 0, 12, 12),
            holes: holes.slice(0, 2).map(([x0, y0, x1, y1]) => rectangle(x0, y0, x1, y1)),
            slits: cuts.map(([x0, y0, x1, y1]) => slit(x0, y0, x1, y1)),
          },
        );
        expect(bareArea(domainOf(scene))).toBeCloseTo(bareSquares([...metal, ...holes.slice(0, 2)]), 9);
      }),
      { seed: 1, numRuns: 400 },
    );
  });

  it('every loop closes and every edge has its length', () => {
    const place = fc.integer({ min: -20, max: 260 });
    const shape = fc.oneof(
      fc.tuple(place, place, fc.integer({ min: 1, max: 60 })).map(([x, y, r]) => disc(x, y, r)),
      fc
        .tuple(place, place, fc.integer({ min: 1, max: 80 }), fc.integer({ min: 1, max: 80 }))
        .map(([x, y, w, h]) => rectangle(x, y, x + w, y + h)),
    );
    fc.assert(
      fc.property(fc.array(shape, { minLength: 1, maxLength: 8 }), (shapes) => {
        const bare = domainOf(problem(shapes.map((outer) => [piece(outer)])));
        for (const { edges } of bare.loops) {
          expect(edges.length).toBeGreaterThan(1);
          edges.forEach((edge, i) => {
            const to = edges[(i + 1) % edges.length] ?? edge;
            expect(Math.hypot(to.x - edge.x, to.y - edge.y)).toBeGreaterThan(1e-7);
            if (!edge.arc) return;
            const off = Math.hypot(edge.x - edge.arc.x, edge.y - edge.arc.y);
            expect(Math.hypot(to.x - edge.arc.x, to.y - edge.arc.y)).toBeCloseTo(off, 9);
          });
        }
        const area = bareArea(bare);
        expect(area).toBeGreaterThanOrEqual(-1e-9);
        expect(area).toBeLessThanOrEqual(PAPER + 1e-9);
      }),
      { seed: 2, numRuns: 300 },
    );
  });
});

describe('degenerate shapes', () => {
  it('metal without size leaves the paper as it is', () => {
    const nothing = [
      piece(rectangle(40, 40, 40, 40)),
      piece(rectangle(50, 40, 50, 90)),
      piece(disc(100, 80, 0)),
    ];
    expect(tagsOf(domainOf(problem([nothing])))).toEqual(['-1 -1 -1 -1']);
  });

  it('metal over all of the paper leaves none', () => {
    expect(domainOf(problem([[piece(rectangle(-1e6, -1e6, 1e6, 1e6))]])).loops).toEqual([]);
  });

  it('numbers that are not finite are no edges', () => {
    const bare = domainOf(problem([[piece(rectangle(10, 10, Number.NaN, 30))]]));
    expect(bareArea(bare)).toBe(PAPER);
  });

  it('a polygon that crosses itself counts by parity', () => {
    const bow = polygon([100, 60], [140, 100], [140, 60], [100, 100]);
    expect(bareArea(domainOf(problem([[piece(bow)]])))).toBeCloseTo(PAPER - 800, 9);
  });
});
