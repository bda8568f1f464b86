/** From the region of bare paper to triangles and fans. */
import { atan2 } from '../maths.ts';
import type { Domain } from '../problem.ts';
import { boundaryOf } from './corners.ts';
import { firstTriangulation } from './delaunay.ts';
import { FAN_RIM, type Mesh } from './mesh.ts';
import { type FanDraft, type Pieces, piecesOf } from './pieces.ts';
import { refine } from './refine.ts';
import { nextEdge, type Triangulation } from './triangulation.ts';

export interface MeshOptions {
  /** Largest edge, mm; a quarter of the longer side of the paper's box if not given. */
  readonly size_mm?: number;
  readonly maxVertices?: number;
  /** Largest radius of a fan, mm; as large as there is room for if not given. */
  readonly fan_mm?: number;
}

const MAX_VERTICES = 60_000;

/**
 * Meshes a domain whose edges meet only in their ends. A domain that encloses nothing or whose edges cross gives a mesh without
 * triangles that is not `complete`.
 */
export function meshDomain(domain: Domain, options: MeshOptions = {}): Mesh {
  const size_mm = options.size_mm ?? defaultSize(domain);
  const pieces = piecesOf(boundaryOf(domain), domain.sheet_ohm, size_mm, options.fan_mm ?? Infinity);
  const triangulation = firstTriangulation(pieces);
  if (!triangulation) return emptyMesh(pieces);
  const limits = { size_mm, maxVertices: options.maxVertices ?? MAX_VERTICES };
  const { steps, complete } = refine(triangulation, pieces.sides, pieces.arcs, limits);
  return finished(triangulation, pieces, steps, complete);
}

function defaultSize(domain: Domain): number {
  let x0 = Infinity;
  let x1 = -Infinity;
  let y0 = Infinity;
  let y1 = -Infinity;
  for (const loop of domain.loops) {
    for (const { x, y } of loop.edges) {
      x0 = Math.min(x0, x);
      x1 = Math.max(x1, x);
      y0 = Math.min(y0, y);
      y1 = Math.max(y1, y);
    }
  }
  return Math.max(x1 - x0, y1 - y0) / 4;
}

function emptyMesh(pieces: Pieces): Mesh {
  return {
    x: new Float64Array(0),
    y: new Float64Array(0),
    corners: new Int32Array(0),
    twins: new Int32Array(0),
    side: new Int32Array(0),
    sides: pieces.sides,
    arcs: pieces.arcs,
    fans: [],
    steps: 0,
    complete: false,
  };
}

/** Closes the gaps that removed triangles left, and strings the fans' rims. */
function finished(from: Triangulation, pieces: Pieces, steps: number, complete: boolean): Mesh {
  const place = new Int32Array(from.triangles).fill(-1);
  let count = 0;
  for (let t = 0; t < from.triangles; t++) if ((from.corners[3 * t] ?? -1) >= 0) place[t] = count++;
  const corners = new Int32Array(3 * count);
  const twins = new Int32Array(3 * count);
  const side = new Int32Array(3 * count);
  for (let e = 0; e < 3 * from.triangles; e++) {
    const t = place[(e / 3) | 0] ?? -1;
    if (t < 0) continue;
    const here = 3 * t + (e % 3);
    const twin = from.twins[e] ?? -1;
    corners[here] = from.corners[e] ?? -1;
    twins[here] = twin < 0 ? -1 : 3 * (place[(twin / 3) | 0] ?? -1) + (twin % 3);
    side[here] = from.side[e] ?? -1;
  }
  const x = from.x.slice(0, from.vertices);
  const y = from.y.slice(0, from.vertices);
  const { sides, arcs } = pieces;
  const bare = { x, y, corners, twins, side, sides, arcs, steps, complete };
  return { ...bare, fans: stringRims(bare, pieces.fans) };
}

/** Collects each fan's rim and orders it by the angle of the chords' middles from ray 0. */
function stringRims(mesh: Omit<Mesh, 'fans'>, drafts: readonly FanDraft[]): Mesh['fans'] {
  const { x, y, corners, side, sides } = mesh;
  const rims: { e: number; angle: number }[][] = drafts.map(() => []);
  for (let e = 0; e < side.length; e++) {
    const on = sides[side[e] ?? -1];
    if (on?.tag !== FAN_RIM) continue;
    const fan = drafts[on.fan] as FanDraft;
    const a = corners[e] ?? 0;
    const b = corners[nextEdge(e)] ?? 0;
    const mx = ((x[a] ?? 0) + (x[b] ?? 0)) / 2 - fan.x;
    const my = ((y[a] ?? 0) + (y[b] ?? 0)) / 2 - fan.y;
    const [rx, ry] = fan.ray0;
    const turn = atan2(rx * my - ry * mx, rx * mx + ry * my);
    rims[on.fan]?.push({ e, angle: turn < 0 ? turn + 2 * Math.PI : turn });
  }
  return drafts.map((draft, i) => {
    const rim = (rims[i] ?? []).sort((p, q) => p.angle - q.angle).map(({ e }) => e);
    return { ...draft, rim };
  });
}
