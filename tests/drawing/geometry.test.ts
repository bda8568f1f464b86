/** Outlines of metal, cut lines and thinned traces, against lengths that can be written down. */
import { describe, expect, test } from 'vitest';
import { closes, visibleChains } from '../../shared/drawing/cut.ts';
import { crossings, insidePolygons, polygonOf } from '../../shared/drawing/polygon.ts';
import { lengthOf, stations, thinned } from '../../shared/drawing/traces.ts';
import { type Curve, curveLength, curvesOf } from '../../shared/field/geometry/curve.ts';
import type { Outline, Point } from '../../shared/field/geometry/outline.ts';

const polygon = (...corners: readonly (readonly [number, number])[]): Outline => ({
  edges: corners.map(([x, y]) => ({ from: { x, y }, arc: null })),
});
const circle = (x: number, y: number, r: number): Outline => ({
  edges: [{ from: { x: x + r, y }, arc: { centre: { x, y }, anticlockwise: true } }],
});

const total = (chains: readonly (readonly Curve[])[]): number =>
  chains.flat().reduce((sum, curve) => sum + curveLength(curve), 0);

/** Visible length of the union of outlines, where `on` lets it be seen. */
function visible(outlines: readonly Outline[], on: (p: Point) => boolean, rim: readonly Curve[] = []) {
  const curves = outlines.map(curvesOf);
  const polygons = curves.map(polygonOf);
  const inside = (p: Point): boolean => on(p) && polygons.some((each) => insidePolygons([each], p));
  return curves.flatMap((chain) => visibleChains(chain, [...curves.flat(), ...rim], inside));
}

describe('the visible outline', () => {
  const bar = polygon([0, 0], [10, 0], [10, 100], [0, 100]);

  test('of one piece is the piece', () => {
    const chains = visible([bar], () => true);
    expect(chains.length).toBe(1);
    expect(chains.every(closes)).toBe(true);
    expect(total(chains)).toBeCloseTo(220, 9);
  });

  test('leaves out the base of a spike on a bar', () => {
    const spike = polygon([10, 40], [40, 50], [10, 60]);
    const chains = visible([bar, spike], () => true);
    expect(total(chains)).toBeCloseTo(220 - 20 + 2 * Math.sqrt(30 * 30 + 10 * 10), 6);
  });

  test('of a disc over the edge of the paper ends at the edge', () => {
    const rim = curvesOf(polygon([0, -50], [100, -50], [100, 50], [0, 50]));
    const chains = visible([circle(0, 0, 10)], ({ x }) => x > 0, rim);
    expect(total(chains)).toBeCloseTo(Math.PI * 10, 6);
  });

  test('of two overlapping discs is two arcs', () => {
    // Centres r apart: each hides a third of the other.
    const chains = visible([circle(0, 0, 10), circle(10, 0, 10)], () => true);
    expect(total(chains)).toBeCloseTo((2 / 3) * 2 * (2 * Math.PI * 10), 5);
  });
});

test('hatch lines cross a ring in two pieces of metal', () => {
  const ring = [circle(0, 0, 25), circle(0, 0, 21)].map((outline) => polygonOf(curvesOf(outline)));
  const stops = crossings(ring, { x: 0, y: 1 }, 7);
  expect(stops.map((t) => Math.abs(t))).toEqual([
    expect.closeTo(24, 2),
    expect.closeTo(Math.sqrt(21 * 21 - 49), 2),
    expect.closeTo(Math.sqrt(21 * 21 - 49), 2),
    expect.closeTo(24, 2),
  ]);
});

describe('traces', () => {
  const arc = Array.from({ length: 901 }, (_, i) => {
    const angle = (i * Math.PI) / 900;
    return { x: 40 * Math.cos(angle), y: 40 * Math.sin(angle) };
  });

  test('are thinned to what the eye can tell', () => {
    const few = thinned(arc);
    expect(few.length).toBeLessThan(90);
    expect(few[0]).toBe(arc[0]);
    expect(few[few.length - 1]).toBe(arc[900]);
    // A chord that stays within 0.015 mm of the circle is at most 2 √(2 · 40 mm · 0.015 mm) long.
    for (const [i, p] of few.entries()) {
      const before = few[i - 1];
      if (before !== undefined) {
        expect(Math.hypot(p.x - before.x, p.y - before.y)).toBeLessThan(2 * Math.sqrt(2 * 40 * 0.0151));
      }
    }
  });

  test('carry dots at even distances', () => {
    const dots = stations(arc, 10);
    expect(lengthOf(arc)).toBeCloseTo(40 * Math.PI, 3);
    expect(dots.length).toBe(13);
    const first = dots[0];
    const last = dots[dots.length - 1];
    expect(first?.p.x).toBeCloseTo(-(last?.p.x ?? 0), 6);
    for (const { p, u } of dots) expect(Math.abs(p.x * u.x + p.y * u.y)).toBeLessThan(0.1);
  });
});
