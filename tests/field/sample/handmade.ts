/** Small meshes written by hand, with scalars interpolated on them from formulas. */
import type { Fan, Mesh, MeshSide } from '../../../shared/field/mesh/mesh.ts';
import { FAN_RIM } from '../../../shared/field/mesh/mesh.ts';
import type { Scalar, Space } from '../../../shared/field/solve/discrete.ts';
import { gaussLobattoPoints } from '../../../shared/field/solve/gauss.ts';
import { referenceTriangle } from '../../../shared/field/solve/reference-triangle.ts';

export interface Handmade {
  readonly points: readonly (readonly [number, number])[];
  readonly triangles: readonly (readonly [number, number, number])[];
  /** Tags of edges by "from-to"; others on the boundary are insulating. */
  readonly tags?: Readonly<Record<string, number>>;
  readonly fan?: {
    readonly at: readonly [number, number];
    readonly angle: number;
    readonly ray0: readonly [number, number];
    readonly ray1: readonly [number, number];
    readonly tag0: number;
    readonly tag1: number;
    /** Points of the rim from ray 0 to ray 1. */
    readonly rim: readonly number[];
  };
}

export function handmadeSpace(made: Handmade, order: number): Space {
  const mesh = handmadeMesh(made);
  const rims = mesh.fans.map((fan) =>
    Float64Array.from(
      (made.fan?.rim ?? []).flatMap((i) => [made.points[i]![0] - fan.x, made.points[i]![1] - fan.y]),
    ),
  );
  return {
    mesh,
    reference: referenceTriangle(order),
    edgeNodes: gaussLobattoPoints(order),
    rims,
    layerDepth: 0.5,
    radialNodes: gaussLobattoPoints(4),
    layerCount: 64,
    curved: () => null,
  };
}

function handmadeMesh(made: Handmade): Mesh {
  const corners = Int32Array.from(made.triangles.flat());
  const end = (h: number): number => corners[h % 3 === 2 ? h - 2 : h + 1]!;
  const twins = new Int32Array(corners.length).fill(-1);
  const side = new Int32Array(corners.length).fill(-1);
  const sides: MeshSide[] = [];
  const rimOf = new Map<string, number>();
  const rim = made.fan?.rim ?? [];
  for (let h = 0; h < corners.length; h++) {
    for (let k = 0; k < corners.length; k++) if (corners[k] === end(h) && end(k) === corners[h]) twins[h] = k;
    if (twins[h]! >= 0) continue;
    const name = `${corners[h]}-${end(h)}`;
    const onRim = rim.some((p, i) => i > 0 && `${p}-${rim[i - 1]}` === name);
    if (onRim) rimOf.set(name, h);
    side[h] = sides.length;
    sides.push({ tag: onRim ? FAN_RIM : (made.tags?.[name] ?? -1), arc: -1, fan: onRim ? 0 : -1 });
  }
  const fans: Fan[] = [];
  if (made.fan) {
    const { at, angle, ray0, ray1, tag0, tag1 } = made.fan;
    const halfEdges = rim.slice(1).map((p, i) => rimOf.get(`${p}-${rim[i]}`)!);
    fans.push({ x: at[0], y: at[1], angle, ray0, ray1, tag0, tag1, rim: halfEdges });
  }
  return {
    x: Float64Array.from(made.points, (p) => p[0]),
    y: Float64Array.from(made.points, (p) => p[1]),
    corners,
    twins,
    side,
    sides,
    arcs: [],
    fans,
    steps: 0,
    complete: true,
  };
}

/** Interpolates f at the nodes. */
export function interpolated(space: Space, f: (x: number, y: number) => number): Scalar {
  const { mesh, reference } = space;
  return {
    space,
    triangle: (t) => {
      const [a, b, c] = [0, 1, 2].map((j) => mesh.corners[3 * t + j]!) as [number, number, number];
      return Float64Array.from(reference.r, (r, k) => {
        const s = reference.s[k]!;
        const at = (p: Float64Array): number =>
          (-(r + s) / 2) * p[a]! + ((1 + r) / 2) * p[b]! + ((1 + s) / 2) * p[c]!;
        return f(at(mesh.x), at(mesh.y));
      });
    },
    fanLayer: (fan, layer) => {
      const rim = space.rims[fan]!;
      const { x, y } = mesh.fans[fan]!;
      const values: number[] = [];
      for (const radial of space.radialNodes) {
        const scale = Math.exp(-space.layerDepth * (layer + (1 + radial) / 2));
        for (let chord = 0; chord + 1 < rim.length / 2; chord++) {
          space.edgeNodes.forEach((node, i) => {
            if (i === 0 && chord > 0) return;
            const w = (1 + node) / 2;
            const px = (1 - w) * rim[2 * chord]! + w * rim[2 * chord + 2]!;
            const py = (1 - w) * rim[2 * chord + 1]! + w * rim[2 * chord + 3]!;
            values.push(f(x + scale * px, y + scale * py));
          });
        }
      }
      return Float64Array.from(values);
    },
  };
}

/** Square of 40 mm around a hollow square of 20 mm; outside insulating, inside conductor 0. */
export const FRAME: Handmade = {
  points: [
    [-20, -20],
    [20, -20],
    [20, 20],
    [-20, 20],
    [-10, -10],
    [10, -10],
    [10, 10],
    [-10, 10],
  ],
  triangles: [
    [0, 1, 5],
    [0, 5, 4],
    [1, 2, 6],
    [1, 6, 5],
    [2, 3, 7],
    [2, 7, 6],
    [3, 0, 4],
    [3, 4, 7],
  ],
  tags: { '5-4': 0, '6-5': 0, '7-6': 0, '4-7': 0 },
};

/** L of three squares of 30 mm around a re-entrant metal corner at the origin, which carries a fan. */
export const ELL: Handmade = {
  points: [
    [10, 0],
    [10, 10],
    [-10, 10],
    [-10, -10],
    [0, -10],
    [30, 0],
    [30, 30],
    [-30, 30],
    [-30, -30],
    [0, -30],
  ],
  triangles: [
    [0, 5, 6],
    [0, 6, 1],
    [1, 6, 7],
    [1, 7, 2],
    [2, 7, 8],
    [2, 8, 3],
    [3, 8, 9],
    [3, 9, 4],
  ],
  tags: { '0-5': 0, '9-4': 0 },
  fan: {
    at: [0, 0],
    angle: 1.5 * Math.PI,
    ray0: [1, 0],
    ray1: [0, -1],
    tag0: 0,
    tag1: 0,
    rim: [0, 1, 2, 3, 4],
  },
};

/** r^(2/3) sin(2θ/3), zero on both metal rays of the L. */
export function cornerField(x: number, y: number): number {
  const r = Math.hypot(x, y);
  let angle = Math.atan2(y, x);
  if (angle < -1e-12) angle += 2 * Math.PI;
  return Math.cbrt(r * r) * Math.sin((2 * angle) / 3);
}
