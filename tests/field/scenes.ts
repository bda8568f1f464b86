/** Domains built by hand for tests of the engine: loops of paper edges, with metal as tags on them. */
import { type Domain, type DomainEdge, INSULATING, type Loop } from '../../shared/field/problem.ts';

type Place = readonly [number, number];

/** A closed polygon; tag i belongs to the edge from point i to the next. Anticlockwise for outer loops, clockwise around holes. */
export function polygon(points: readonly Place[], tags: number | readonly number[]): Loop {
  return {
    edges: points.map(([x, y], i) => ({
      x,
      y,
      arc: null,
      tag: typeof tags === 'number' ? tags : (tags[i] ?? INSULATING),
    })),
  };
}

/** Outer rectangle; tags for bottom, right, top, left. */
export function rectangle([x0, y0]: Place, [x1, y1]: Place, tags: number | readonly number[]): Loop {
  return polygon(
    [
      [x0, y0],
      [x1, y0],
      [x1, y1],
      [x0, y1],
    ],
    tags,
  );
}

/** Outer circle, as two half turns. */
export function disc([x, y]: Place, radius: number, tag: number): Loop {
  const arc = { x, y, anticlockwise: true };
  return {
    edges: [
      { x: x + radius, y, arc, tag },
      { x: x - radius, y, arc, tag },
    ],
  };
}

/** The same boundary with the paper on its other side: from an outer loop to the rim of a hole. */
export function hole(loop: Loop): Loop {
  const { edges } = loop;
  const reversed = edges.map((edge, i): DomainEdge => {
    const next = edges[(i + 1) % edges.length] ?? edge;
    const arc = edge.arc === null ? null : { ...edge.arc, anticlockwise: !edge.arc.anticlockwise };
    return { x: next.x, y: next.y, arc, tag: edge.tag };
  });
  return { edges: reversed.reverse() };
}

/** A cut without width inside the paper, there and back. */
export function slit(from: Place, to: Place, tag: number = INSULATING): Loop {
  return polygon([from, to], tag);
}

export function domainOfLoops(loops: readonly Loop[], sheet_ohm: readonly [number, number] = [1, 1]): Domain {
  const tags = loops.flatMap((loop) => loop.edges.map((edge) => edge.tag));
  return { loops, conductors: Math.max(-1, ...tags) + 1, sheet_ohm };
}

/** Every position turned by an angle (rad), then scaled, then shifted. */
export function placedAgain(
  domain: Domain,
  { turn = 0, scale = 1, shift = [0, 0] }: { turn?: number; scale?: number; shift?: Place },
): Domain {
  const [c, s] = [scale * Math.cos(turn), scale * Math.sin(turn)];
  const move = <P extends { readonly x: number; readonly y: number }>(p: P): P => ({
    ...p,
    x: c * p.x - s * p.y + shift[0],
    y: s * p.x + c * p.y + shift[1],
  });
  const loops = domain.loops.map((loop) => ({
    edges: loop.edges.map((edge) => ({ ...move(edge), arc: edge.arc === null ? null : move(edge.arc) })),
  }));
  return { ...domain, loops };
}

/** Full-width bars on the short edges of a 240 mm × 160 mm sheet. */
export const fullWidthBars = domainOfLoops([rectangle([0, 0], [240, 160], [-1, 1, -1, 0])]);

/** A disc of radius 10 mm in a ring of inner radius 60 mm. */
export const discInRing = domainOfLoops([disc([0, 0], 60, 1), hole(disc([0, 0], 10, 0))]);

/** An L of two arms 40 mm wide and 200 mm long from the inner corner, metal across both ends. */
export const cornerL = domainOfLoops([
  polygon(
    [
      [0, 0],
      [240, 0],
      [240, 40],
      [40, 40],
      [40, 240],
      [0, 240],
    ],
    [-1, 1, -1, -1, 0, -1],
  ),
]);

/** Metal of a given length centred on the left and the right edge of a sheet, of no width into the paper. */
export function partialContacts(width: number, height: number, contact: number): Domain {
  const [low, high] = [(height - contact) / 2, (height + contact) / 2];
  const points: Place[] = [
    [0, 0],
    [width, 0],
    [width, low],
    [width, high],
    [width, height],
    [0, height],
    [0, high],
    [0, low],
  ];
  return domainOfLoops([polygon(points, [-1, -1, 1, -1, -1, -1, 0, -1])]);
}

/** Metal on the outer halves of two adjacent edges of a square. */
export const adjacentHalves = domainOfLoops([
  polygon(
    [
      [0, 0],
      [50, 0],
      [100, 0],
      [100, 100],
      [0, 100],
      [0, 50],
    ],
    [-1, 1, -1, -1, 0, -1],
  ),
]);

/** A disc whose rim is metal, edge, metal, edge, a quarter each: corners of a half turn between metal and edge, on arcs. */
export const fourArcs = domainOfLoops([
  {
    edges: [0, INSULATING, 1, INSULATING].map((tag, i) => ({
      x: 60 * Math.cos((Math.PI / 4) * (2 * i + 1)),
      y: 60 * Math.sin((Math.PI / 4) * (2 * i + 1)),
      arc: { x: 0, y: 0, anticlockwise: true },
      tag,
    })),
  },
]);

const sheet = rectangle([0, 0], [240, 160], INSULATING);
const bar = (x: number, tag: number): Loop => hole(rectangle([x, 20], [x + 6, 140], tag));

/** Two bars inside a sheet. */
export const twoBars = domainOfLoops([sheet, bar(57, 0), bar(177, 1)]);

/** Two broad bars with a gap of 0.05 mm between them, 120 mm long. */
export const thinGap = domainOfLoops([
  sheet,
  hole(rectangle([60, 20], [119.975, 140], 0)),
  hole(rectangle([120.025, 20], [180, 140], 1)),
]);

/** A pointed triangle before a bar. */
export const spikeAndBar = domainOfLoops([
  sheet,
  hole(
    polygon(
      [
        [20, 72],
        [120, 80],
        [20, 88],
      ],
      0,
    ),
  ),
  bar(177, 1),
]);

/** A hollow ring between two bars: the paper inside it is a piece of its own. */
export const ringBetweenBars = domainOfLoops([
  sheet,
  bar(27, 0),
  bar(207, 1),
  hole(disc([120, 80], 30, 2)),
  disc([120, 80], 25, 2),
]);

/** Eight electrodes of several shapes, two slits and a hole. */
export const eightElectrodes = domainOfLoops([
  sheet,
  hole(rectangle([20, 20], [26, 140], 0)),
  hole(
    polygon(
      [
        [150, 80],
        [214, 72],
        [214, 88],
      ],
      1,
    ),
  ),
  hole(disc([80, 50], 14, 2)),
  hole(disc([80, 115], 9, 3)),
  hole(rectangle([110, 20], [130, 26], 4)),
  hole(rectangle([110, 134], [130, 140], 5)),
  hole(
    polygon(
      [
        [180, 30],
        [200, 36],
        [190, 52],
      ],
      6,
    ),
  ),
  hole(rectangle([170, 120], [200, 123], 7)),
  slit([105, 60], [105, 105]),
  slit([140, 40], [165, 58]),
  hole(disc([50, 80], 6, INSULATING)),
]);
