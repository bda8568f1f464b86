/** Shapes as placed: areas against closed forms, turning, openings, tips, and the box by which others count distances. */
import { describe, expect, it } from 'vitest';
import { areaUnder, curvesOf } from '../../shared/field/geometry/curve.ts';
import type { Outline, Point } from '../../shared/field/geometry/outline.ts';
import type { Electrode } from '../../shared/setup/setup.ts';
import { setupOf } from './blocks.ts';

const bench = `
  paper 400 mm × 400 mm, 5 kΩ per square
  supply cell 1.5 V
  bar N 10 mm × 120 mm at (20, 80) mm negative
  bar P 10 mm × 120 mm at (390, 80) mm positive
`;

function placed(line: string, name = 'X'): Electrode {
  const setup = setupOf(`${bench}  ${line}`);
  const found = setup.electrodes.find((electrode) => electrode.name === name);
  if (found === undefined) throw new Error(setup.findings.map(({ message }) => message).join('\n') || line);
  return found;
}

const signedArea = (outline: Outline): number =>
  curvesOf(outline).reduce((sum, c) => sum + areaUnder(c, 0, 0), 0);
const area = (outline: Outline): number => Math.abs(signedArea(outline));
const areaOf = ({ pieces }: Electrode): number =>
  pieces.reduce(
    (sum, { geometry }) =>
      sum + area(geometry.outer) - geometry.hollows.reduce((less, hollow) => less + area(hollow), 0),
    0,
  );
const corners = ({ pieces }: Electrode): readonly Point[] =>
  pieces[0]?.geometry.outer.edges.map(({ from }) => from) ?? [];

describe('placed shapes', () => {
  it('a bar, turned, keeps its area and widens its box', () => {
    const bar = placed('bar X 10 mm × 40 mm at (200, 200) mm, turned 30° floating');
    expect(areaOf(bar)).toBeCloseTo(400, 9);
    // Half width of the box: 5 cos 30° + 20 sin 30°.
    expect(bar.box.x1 - 200).toBeCloseTo(5 * Math.cos(Math.PI / 6) + 10, 9);
  });

  it('a disc and a ring are true circles', () => {
    expect(areaOf(placed('disc X diameter 20 mm at (200, 200) mm floating'))).toBeCloseTo(100 * Math.PI, 9);
    expect(areaOf(placed('ring X diameter 50 mm, wall 5 mm at (200, 200) mm floating'))).toBeCloseTo(
      225 * Math.PI,
      9,
    );
    expect(areaOf(placed('ring X inside diameter 40 mm, wall 5 mm at (200, 200) mm floating'))).toBeCloseTo(
      225 * Math.PI,
      9,
    );
    expect(
      areaOf(placed('ring X diameter 50 mm, inside diameter 40 mm at (200, 200) mm floating')),
    ).toBeCloseTo(225 * Math.PI, 9);
  });

  it('an opening is a slot of parallel sides, and the box is that of the closed ring', () => {
    const ring = placed(
      'ring X diameter 50 mm, wall 5 mm, opening 10 mm facing right at (200, 200) mm floating',
    );
    // Cut out: between the circles of radius 25 and 20 within |y| < 5: the difference of two integrals of √(r² − y²).
    const slot = (r: number): number => 5 * Math.sqrt(r * r - 25) + r * r * Math.asin(5 / r);
    expect(areaOf(ring)).toBeCloseTo(225 * Math.PI - (slot(25) - slot(20)), 9);
    expect(ring.box).toEqual({ x0: 175, y0: 175, x1: 225, y1: 225 });
  });

  it('an opening turns with its shape', () => {
    const turned = placed(
      'ring X diameter 50 mm, wall 5 mm, opening 10 mm facing right at (200, 200) mm, turned 90° floating',
    );
    const up = placed('ring X diameter 50 mm, wall 5 mm, opening 10 mm facing up at (200, 200) mm floating');
    expect(corners(turned)).toEqual(corners(up));
  });

  it('a box has a hollow, or a gap in one wall as wide as the hollow at most', () => {
    expect(areaOf(placed('box X 30 mm × 20 mm, wall 2 mm at (200, 200) mm floating'))).toBeCloseTo(
      600 - 26 * 16,
      9,
    );
    expect(
      areaOf(placed('box X 30 mm × 20 mm, wall 2 mm, opening 6 mm facing up at (200, 200) mm floating')),
    ).toBeCloseTo(600 - 26 * 16 - 12, 9);
    const open = placed(
      'box X 30 mm × 20 mm, wall 2 mm, opening 16 mm facing left at (200, 200) mm floating',
    );
    expect(areaOf(open)).toBeCloseTo(600 - 26 * 16 - 32, 9);
    expect(corners(open)).toHaveLength(8);
  });

  it('places count edge to edge, centres level', () => {
    expect(placed('bar X 20 mm × 10 mm, 30 mm right of N floating').box).toEqual({
      x0: 55,
      y0: 75,
      x1: 75,
      y1: 85,
    });
    expect(placed('bar X 20 mm × 10 mm, 30 mm left of P floating').box).toEqual({
      x0: 335,
      y0: 75,
      x1: 355,
      y1: 85,
    });
    expect(placed('bar X 20 mm × 10 mm, 5 mm above N floating').box).toEqual({
      x0: 10,
      y0: 145,
      x1: 30,
      y1: 155,
    });
    expect(placed('bar X 20 mm × 10 mm, 5 mm below N floating').box).toEqual({
      x0: 10,
      y0: 5,
      x1: 30,
      y1: 15,
    });
    expect(placed('bar X 20 mm × 10 mm midway between N and P floating').box.x0).toBe(195);
    expect(placed('bar X 20 mm × 10 mm at centre floating').box).toEqual({
      x0: 190,
      y0: 195,
      x1: 210,
      y1: 205,
    });
  });
});

describe('spikes and prongs', () => {
  it('a sharp spike is a triangle with its tip at the point', () => {
    const spike = placed('spike X base 20 mm, length 60 mm, tip at (200, 100) mm pointing right floating');
    expect(areaOf(spike)).toBeCloseTo(600, 9);
    expect(spike.box).toEqual({ x0: 140, y0: 90, x1: 200, y1: 110 });
  });

  it('a rounded tip ends at the point and meets the sides as tangents', () => {
    const spike = placed(
      'spike X base 20 mm, length 60 mm, tip radius 1 mm, tip at (200, 100) mm pointing right floating',
    );
    expect(spike.box.x1).toBeCloseTo(200, 12);
    const [below, above, base] = corners(spike);
    if (below === undefined || above === undefined || base === undefined) throw new Error('corners');
    const centre = { x: 199, y: 100 };
    expect(Math.hypot(above.x - centre.x, above.y - centre.y)).toBeCloseTo(1, 12);
    const along = (above.x - centre.x) * (base.x - above.x) + (above.y - centre.y) * (base.y - above.y);
    expect(along).toBeCloseTo(0, 11);
    expect(below.y).toBeCloseTo(200 - above.y, 12);
  });

  it('stands at the middle of the side that faces its direction, or at a distance from its lower or left end', () => {
    expect(placed('spike X base 20 mm, length 40 mm on N pointing right').box).toEqual({
      x0: 25,
      y0: 70,
      x1: 65,
      y1: 90,
    });
    expect(placed('prong X 10 mm × 30 mm on N pointing right at 15 mm').box).toEqual({
      x0: 25,
      y0: 30,
      x1: 55,
      y1: 40,
    });
    expect(placed('prong X 4 mm × 30 mm on N pointing up').box).toEqual({ x0: 18, y0: 140, x1: 22, y1: 170 });
  });

  it('on a disc its base reaches back to touch all along', () => {
    const spike = placed(
      'disc D diameter 40 mm at (200, 200) mm floating\n  prong X 24 mm × 10 mm on D pointing right',
    );
    // Half base 12 on radius 20: the circle has fallen back by 20 − √(400 − 144) = 4 mm there.
    const metal = corners(spike).map(({ x }) => x);
    expect(Math.max(...metal)).toBeCloseTo(230, 9);
    expect(Math.min(...metal)).toBeLessThan(216);
    expect(Math.min(...metal)).toBeGreaterThan(215.9);
    // What reaches back is metal within metal, and no part of its size.
    expect(spike.box.x0).toBeCloseTo(220, 9);
  });

  it('stands on no opening, and its base does not reach through one', () => {
    const box = 'box B 40 mm × 20 mm, wall 2 mm, opening 6 mm facing up at (200, 200) mm floating\n  ';
    expect(() => placed(`${box}prong X 4 mm × 6 mm on B pointing up`)).toThrow('There is a gap in that side');
    const beside = placed(`${box}prong X 4 mm × 6 mm on B pointing up at 16 mm`);
    expect(Math.min(...corners(beside).map(({ y }) => y))).toBe(210);
    const ring = 'ring R diameter 60 mm, wall 4 mm, opening 10 mm facing up at (200, 200) mm floating\n  ';
    const onRing = placed(`${ring}prong X 8 mm × 6 mm on R pointing up at 22 mm`);
    expect(Math.min(...corners(onRing).map(({ y }) => y))).toBeGreaterThan(220);
  });

  it('takes the terminal of what it stands on, and leaves its edges and centre alone', () => {
    const spike = placed('spike X base 20 mm, length 40 mm on N pointing right');
    expect(spike).toMatchObject({ connection: { kind: 'negative' }, partOf: 'N', conductor: 0 });
    const setup = setupOf(
      `${bench}  spike X base 20 mm, length 40 mm on N pointing right\n  bar Y 10 mm × 10 mm, 100 mm right of N floating`,
    );
    expect(setup.electrodes.find(({ name }) => name === 'Y')?.box.x0).toBe(125);
    expect(setup.findings).toEqual([]);
  });

  it('may be a piece of the electrode it stands on', () => {
    const both = placed('spike N base 20 mm, length 40 mm on N pointing right', 'N');
    expect(both.pieces).toHaveLength(2);
    expect(both.box.x1).toBe(25);
  });
});

describe('drawn shapes', () => {
  it('a strip of mitred joins has the area of its middle line times its width', () => {
    const bent = placed('strip X (100, 200) (200, 200) (250, 280) (300, 200) mm, width 8 mm floating');
    const side = Math.hypot(50, 80);
    expect(areaOf(bent)).toBeCloseTo(8 * (100 + 2 * side), 9);
  });

  it('a strip that returns to its start is closed', () => {
    const frame = placed(
      'strip X (100, 200) (200, 200) (200, 300) (100, 300) (100, 200) mm, width 10 mm floating',
    );
    expect(areaOf(frame)).toBeCloseTo(110 * 110 - 90 * 90, 9);
    expect(frame.pieces[0]?.geometry.hollows).toHaveLength(1);
  });

  it('an outline is any simple polygon', () => {
    expect(
      areaOf(
        placed('outline X (100, 200) (150, 200) (150, 210) (110, 210) (110, 260) (100, 260) mm floating'),
      ),
    ).toBeCloseTo(500 + 500, 9);
  });
});
