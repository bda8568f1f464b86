/** Meshes: what every one of them must satisfy, over known and random scenes, and that no scene costs unbounded work. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { areaUnder, domainCurve } from '../../../shared/field/geometry/curve.ts';
import { domainOf } from '../../../shared/field/geometry/domain.ts';
import type { Outline } from '../../../shared/field/geometry/outline.ts';
import { FAN_RIM, type Fan, type Mesh } from '../../../shared/field/mesh/mesh.ts';
import { meshDomain } from '../../../shared/field/mesh/mesh-domain.ts';
import type { Domain } from '../../../shared/field/problem.ts';
import {
  cut,
  disc,
  domain,
  loop,
  piece,
  polygon,
  problem,
  rectangle,
  slit,
  turnedRound,
} from '../geometry/shapes.ts';

const nextEdge = (e: number) => (e % 3 === 2 ? e - 2 : e + 1);

/** Vertex v of the mesh, from (x, y). */
function at(mesh: Mesh, v: number | undefined, x = 0, y = 0): [number, number] {
  return [(mesh.x[v ?? -1] ?? Number.NaN) - x, (mesh.y[v ?? -1] ?? Number.NaN) - y];
}

const cross = ([ax, ay]: [number, number], [bx, by]: [number, number]) => ax * by - ay * bx;

/** Ends of a half-edge, from (x, y). */
function ends(mesh: Mesh, e: number, x = 0, y = 0): [[number, number], [number, number]] {
  return [at(mesh, mesh.corners[e], x, y), at(mesh, mesh.corners[nextEdge(e)], x, y)];
}

function triangleAreas(mesh: Mesh): number[] {
  return Array.from({ length: mesh.corners.length / 3 }, (_, t) => {
    const [x, y] = at(mesh, mesh.corners[3 * t]);
    return cross(at(mesh, mesh.corners[3 * t + 1], x, y), at(mesh, mesh.corners[3 * t + 2], x, y)) / 2;
  });
}

function smallestAngle(mesh: Mesh): number {
  let smallest = Math.PI;
  for (let e = 0; e < mesh.corners.length; e++) {
    const [x, y] = at(mesh, mesh.corners[e]);
    const b = at(mesh, mesh.corners[nextEdge(e)], x, y);
    const c = at(mesh, mesh.corners[nextEdge(nextEdge(e))], x, y);
    smallest = Math.min(smallest, Math.atan2(cross(b, c), b[0] * c[0] + b[1] * c[1]));
  }
  return (smallest * 180) / Math.PI;
}

/** Area between the chords of the mesh's boundary and their circles, counted for the paper. */
function underArcs(mesh: Mesh): number {
  let sum = 0;
  mesh.side.forEach((side, e) => {
    const arc = mesh.arcs[mesh.sides[side]?.arc ?? -1];
    if (!arc) return;
    const [a, b] = ends(mesh, e, arc.x, arc.y);
    const turn = Math.atan2(cross(a, b), a[0] * b[0] + a[1] * b[1]);
    sum += (arc.radius ** 2 * (turn - Math.sin(turn))) / 2;
  });
  return sum;
}

function fanArea(mesh: Mesh, fan: Fan): number {
  return fan.rim.reduce((sum, e) => {
    const [b, a] = ends(mesh, e, fan.x, fan.y);
    return sum + cross(a, b) / 2;
  }, 0);
}

function meshArea(mesh: Mesh): number {
  const triangles = triangleAreas(mesh).reduce((sum, area) => sum + area, 0);
  return triangles + underArcs(mesh) + mesh.fans.reduce((sum, fan) => sum + fanArea(mesh, fan), 0);
}

function domainArea({ loops }: Domain): number {
  return loops
    .flatMap(({ edges }) => edges.map((edge, i) => domainCurve(edge, edges[i + 1] ?? edges[0] ?? edge)))
    .reduce((sum, curve) => sum + areaUnder(curve, 0, 0), 0);
}

/** Twins point at each other over the same two vertices; what has no twin has a side, and only that. */
function expectConsistent(mesh: Mesh): void {
  const { corners, twins, side } = mesh;
  const faulty = [...twins.keys()].filter((e) => {
    const twin = twins[e] ?? -1;
    if (twin < 0) return !((side[e] ?? -1) >= 0);
    const matched = twins[twin] === e && side[e] === -1;
    return !(matched && corners[twin] === corners[nextEdge(e)] && corners[e] === corners[nextEdge(twin)]);
  });
  expect(faulty).toEqual([]);
  expect(Math.min(...triangleAreas(mesh))).toBeGreaterThan(0);
  const offCircle = [...side.keys()].filter((e) => {
    const arc = mesh.arcs[mesh.sides[side[e] ?? -1]?.arc ?? -1];
    return arc && Math.abs(Math.hypot(...at(mesh, corners[e], arc.x, arc.y)) - arc.radius) > 1e-9;
  });
  expect(offCircle).toEqual([]);
}

/** Rims run from ray 0 to ray 1 without a gap, and turn by the fan's angle. */
function expectStrungRims(mesh: Mesh): void {
  mesh.fans.forEach((fan, f) => {
    let turned = 0;
    fan.rim.forEach((e, i) => {
      expect(mesh.sides[mesh.side[e] ?? -1]).toMatchObject({ tag: FAN_RIM, fan: f });
      const [b, a] = ends(mesh, e, fan.x, fan.y);
      turned += Math.atan2(cross(a, b), a[0] * b[0] + a[1] * b[1]);
      const before = fan.rim[i - 1];
      if (before !== undefined) expect(mesh.corners[nextEdge(e)]).toBe(mesh.corners[before]);
      else expect(cross(a, [...fan.ray0])).toBeCloseTo(0, 9);
      if (i === fan.rim.length - 1) expect(cross(b, [...fan.ray1])).toBeCloseTo(0, 9);
    });
    expect(turned).toBeCloseTo(fan.angle, 9);
  });
}

/** What the fans' straight rays may cut off their arcs: ρ³/12R a ray. */
function rayAllowance(mesh: Mesh): number {
  const bend = Math.max(0, ...mesh.arcs.map(({ radius }) => 1 / radius));
  return mesh.fans.reduce((sum, fan) => {
    const [start] = ends(mesh, fan.rim[0] ?? 0, fan.x, fan.y);
    return sum + (bend * Math.hypot(...start) ** 3) / 6;
  }, 0);
}

function expectSound(mesh: Mesh, of: Domain): void {
  expect(mesh.complete).toBe(true);
  expectConsistent(mesh);
  expectStrungRims(mesh);
  expect(Math.abs(meshArea(mesh) - domainArea(of))).toBeLessThan(1e-7 + rayAllowance(mesh));
}

const paper = loop(rectangle(0, 0, 240, 160), -1);
const bar = (x: number, tag: number) => loop(turnedRound(rectangle(x - 3, 20, x + 3, 140)), tag);
const island = (outline: Outline, tag: number) => loop(turnedRound(outline), tag);

const scenes: Record<string, Domain> = {
  'two bars': domain([paper, bar(60, 0), bar(180, 1)]),
  'spike and bar': domain([paper, island(polygon([20, 72], [120, 80], [20, 88]), 0), bar(180, 1)]),
  'needle of 0.2 mm': domain([paper, island(polygon([20, 79.9], [120, 80], [20, 80.1]), 0), bar(180, 1)]),
  'spike 0.01 mm before a bar': domain([
    paper,
    island(polygon([20, 72], [176.99, 80], [20, 88]), 0),
    bar(180, 1),
  ]),
  'gap of 0.05 mm over 40 mm': domain([
    paper,
    island(rectangle(50, 60, 120, 100), 0),
    island(rectangle(120.05, 60, 190, 100), 1),
  ]),
  'discs 0.1 mm apart': domain([paper, island(disc(99.95, 80, 20), 0), island(disc(140.05, 80, 20), 1)]),
  'disc in a ring, 0.1 mm from it': domain([loop(disc(0, 0, 60), 1), island(disc(49.9, 0, 10), 0)]),
  'pins of radius 0.001 mm': domain([paper, island(disc(60, 80, 1e-3), 0), island(disc(180, 80, 1e-3), 1)]),
  'wires without width': domain([paper, cut(slit(60, 20, 60, 140), 0), cut(slit(180, 20, 180, 140), 1)]),
  'slit that all but cuts the paper': domain([paper, cut(slit(120, 0.1, 120, 159.9), -1)]),
};

describe('meshes of known scenes', () => {
  it.each(Object.entries(scenes))('%s', (_, scene) => {
    const mesh = meshDomain(scene, { size_mm: 60 });
    expectSound(mesh, scene);
    expect(smallestAngle(mesh)).toBeGreaterThan(23.9);
    expect(mesh.steps).toBeLessThan(8 * mesh.x.length);
  });

  it('is one piece with as many holes as islands (Euler)', () => {
    const mesh = meshDomain(scenes['two bars'] as Domain);
    const triangles = mesh.corners.length / 3;
    const boundary = mesh.twins.filter((twin) => twin < 0).length;
    const edges = (3 * triangles + boundary) / 2;
    expect(mesh.x.length - edges + triangles).toBe(1 - 2);
  });

  it('has fans at re-entrant corners of metal and none at right angles of paper', () => {
    expect(meshDomain(domain([paper])).fans).toHaveLength(0);
    expect(meshDomain(domain([paper, bar(60, 0)])).fans.map(({ angle }) => angle)).toEqual(
      [1, 2, 3, 4].map(() => expect.closeTo((3 * Math.PI) / 2, 12)),
    );
  });

  it('has a fan of a full turn at each end of a slit', () => {
    const { fans } = meshDomain(domain([paper, cut(slit(60, 40, 60, 120), -1)]));
    expect(fans.map(({ angle }) => angle)).toEqual([2 * Math.PI, 2 * Math.PI]);
  });

  it('has no fan where metal meets the paper’s edge squarely, and one where it does so aslant', () => {
    const square = domainOf(problem([[piece(rectangle(-5, 40, 120, 60))]]));
    expect(meshDomain(square).fans).toHaveLength(2);
    const aslant = domainOf(problem([[piece(polygon([-5, 40], [120, 45], [120, 60], [-5, 60]))]]));
    expect(meshDomain(aslant).fans.filter(({ tag0, tag1 }) => tag0 !== tag1)).toHaveLength(1);
  });

  it('judges right angles in the plane where the grain is stretched away', () => {
    const lozenge = polygon([120, 60], [140, 80], [120, 100], [100, 80]);
    const scene = domain([paper, loop(lozenge, -1)]);
    const inside = domain([loop(lozenge, -1)]);
    expect(meshDomain(inside).fans).toHaveLength(0);
    expect(meshDomain({ ...inside, sheet_ohm: [1000, 1300] }).fans).toHaveLength(4);
    expect(meshDomain({ ...domain([paper]), sheet_ohm: [1000, 1300] }).fans).toHaveLength(0);
    expect(scene.conductors).toBe(0);
  });

  it('sees the corners between islands that touch in a point', () => {
    const corners = [island(rectangle(60, 20, 120, 80), 0), island(rectangle(120, 80, 180, 140), 1)];
    const touching = domain([paper, ...corners]);
    const mesh = meshDomain(touching);
    expectSound(mesh, touching);
    const between = mesh.fans.filter(({ tag0, tag1 }) => tag0 !== tag1);
    expect(between.map(({ x, y, angle }) => [x, y, angle])).toEqual([
      [120, 80, expect.closeTo(Math.PI / 2, 12)],
      [120, 80, expect.closeTo(Math.PI / 2, 12)],
    ]);
  });

  it('gives the same bytes twice', () => {
    const scene = scenes['spike and bar'] as Domain;
    expect(meshDomain(scene)).toEqual(meshDomain(scene));
  });
});

describe('meshes of arranged problems', () => {
  it.each([
    ['disc and bar that overlap', problem([[piece(disc(100, 80, 20)), piece(rectangle(100, 76, 200, 84))]])],
    ['disc that touches the paper’s edge', problem([[piece(disc(120, 20, 20))]])],
    ['disc half off the paper', problem([[piece(disc(120, 5, 20))]])],
    ['disc that touches a bar', problem([[piece(disc(120, 80, 20)), piece(rectangle(140, 20, 146, 140))]])],
    ['slits that cross', problem([], { slits: [slit(60, 40, 180, 120), slit(60, 100, 180, 50)] })],
    [
      'slits that end on metal and on the edge',
      problem([[piece(disc(120, 80, 30))]], { slits: [slit(20, 80, 120, 80), slit(150, -5, 170, 90)] }),
    ],
    [
      'ring with an opening',
      problem([
        [
          {
            outer: {
              edges: [
                { from: { x: 148, y: 90 }, arc: { centre: { x: 120, y: 80 }, anticlockwise: true } },
                { from: { x: 148, y: 70 }, arc: null },
                { from: { x: 144, y: 71 }, arc: { centre: { x: 120, y: 80 }, anticlockwise: false } },
                { from: { x: 144, y: 89 }, arc: null },
              ],
            },
            hollows: [],
          },
        ],
      ]),
    ],
  ])('%s', (_, scene) => {
    const bare = domainOf(scene);
    const mesh = meshDomain(bare, { size_mm: 60 });
    expectSound(mesh, bare);
    expect(smallestAngle(mesh)).toBeGreaterThan(20);
  });

  it.each([-1e-2, -1e-4, -3e-6, -1e-6, -3e-7, 0, 3e-7, 1e-6, 3e-6, 1e-4, 1e-2])(
    'disc %d mm from a bar of its own conductor',
    (gap) => {
      const bare = domainOf(problem([[piece(disc(120 - gap, 80, 20)), piece(rectangle(140, 20, 146, 140))]]));
      const mesh = meshDomain(bare, { size_mm: 60 });
      expectSound(mesh, bare);
      // A gap between disc and bar takes about √(R/gap) triangles to line; a touch or an overlap takes none.
      const lining = gap > 1e-6 ? 25 / Math.sqrt(gap) : 0;
      expect(mesh.corners.length / 3).toBeLessThan(1000 + lining);
    },
  );

  it('random discs, bars and slits, overlapping at will', () => {
    const place = fc.integer({ min: -10, max: 250 });
    const shape = fc.oneof(
      fc.tuple(place, place, fc.integer({ min: 2, max: 40 })).map(([x, y, r]) => disc(x, y, r)),
      fc
        .tuple(place, place, fc.integer({ min: 2, max: 60 }), fc.integer({ min: 2, max: 60 }))
        .map(([x, y, w, h]) => rectangle(x, y, x + w, y + h)),
      fc
        .tuple(place, place, fc.integer({ min: 10, max: 60 }), fc.integer({ min: 1, max: 60 }))
        .map(([x, y, w, h]) => polygon([x, y], [x + w, y + h], [x - 5, y + h + 3])),
    );
    const shapes = fc.array(shape, { minLength: 1, maxLength: 6 });
    const slits = fc.array(fc.tuple(place, place, place, place), { maxLength: 3 });
    fc.assert(
      fc.property(shapes, slits, (metal, cuts) => {
        const scene = problem([metal.map((outer) => piece(outer))], { slits: cuts.map((c) => slit(...c)) });
        const bare = domainOf(scene);
        if (bare.loops.length === 0) return;
        const mesh = meshDomain(bare, { size_mm: 60 });
        expectSound(mesh, bare);
        expect(mesh.steps).toBeLessThan(12 * mesh.x.length);
      }),
      { seed: 3, numRuns: 150 },
    );
  });
});

describe('bounded work', () => {
  it('200 electrodes', () => {
    const many = Array.from({ length: 200 }, (_, k) => {
      const x = 6 + 12 * (k % 20);
      const y = 8 + 16 * Math.floor(k / 20);
      return [piece(k % 2 ? disc(x, y, 4) : rectangle(x - 3, y - 5, x + 3, y + 5))];
    });
    const mesh = meshDomain(domainOf(problem(many)), { size_mm: 60 });
    expect(mesh.complete).toBe(true);
    expect(mesh.corners.length / 3).toBeLessThan(12_000);
    expect(mesh.steps).toBeLessThan(40_000);
  });

  it('stops at its vertex limit and says so', () => {
    const mesh = meshDomain(scenes['gap of 0.05 mm over 40 mm'] as Domain, { size_mm: 60, maxVertices: 300 });
    expect(mesh.complete).toBe(false);
    expect(mesh.x.length).toBeLessThanOrEqual(301);
  });

  it.each([
    ['nothing', domain([])],
    ['a loop without area', domain([cut(slit(0, 0, 10, 0), -1)])],
    ['loops that cross', domain([paper, island(rectangle(-20, 20, 20, 40), 0)])],
  ])('%s: no triangles, not complete', (_, scene) => {
    expect(meshDomain(scene)).toMatchObject({ complete: false, corners: new Int32Array(0) });
  });

  it.each([1e-3, 1e6])('paper of %d mm, same mesh up to scale', (scale) => {
    const scene = (s: number) =>
      domain([
        loop(rectangle(0, 0, 240 * s, 160 * s), -1),
        island(rectangle(57 * s, 20 * s, 63 * s, 140 * s), 0),
      ]);
    const mesh = meshDomain(scene(scale));
    expect(mesh.complete).toBe(true);
    expect(mesh.corners.length).toBeLessThan(3 * meshDomain(scene(1)).corners.length);
  });
});
