/** A mesh made ready for one order: what the potential and the stream function share. */
// Indices are bounded by construction throughout, hence `a[i]!`.
import type { Mesh } from '../mesh/mesh.ts';
import { ArcMap, type MapPoint } from './arc-map.ts';
import type { Space } from './discrete.ts';
import { type Dissection, dissect } from './dissection.ts';
import { type Conductivity, type TriangleStiffness, triangleStiffness } from './element.ts';
import { LAYER_COUNT, LAYER_DEPTH, radialOrder } from './fan.ts';
import { gaussLobattoPoints } from './gauss.ts';
import { type ReferenceElement, referenceTriangle } from './reference-triangle.ts';
import { type Topology, topologyOf } from './topology.ts';

/** What holds for a mesh at every order. */
export interface MeshFrame {
  readonly topology: Topology;
  /** Elements on pieces of paper that some conductor touches. */
  readonly active: Int32Array;
  /** How many vertices, edges and triangles those have. */
  readonly extent: { readonly vertices: number; readonly edges: number; readonly triangles: number };
  readonly dissection: Dissection;
}

export interface Discretisation extends MeshFrame {
  readonly reference: ReferenceElement;
  readonly space: Space;
  /** Conductivity over its geometric mean, and that mean, S per square. */
  readonly sigma: Conductivity;
  readonly sigmaMean: number;
  readonly stiffness: TriangleStiffness;
}

/** Null where no conductor touches any paper. */
export function frameOf(mesh: Mesh): MeshFrame | null {
  const topology = topologyOf(mesh);
  const active: number[] = [];
  for (let e = 0; e < topology.elements; e++) {
    if (topology.conductorsOfPiece.has(topology.piece[e]!)) active.push(e);
  }
  if (active.length === 0) return null;
  const { x, y } = centres(topology);
  const { neighbourStart, neighbours } = topology;
  const list = Int32Array.from(active);
  const dissection = dissect({ active: list, x, y, neighbourStart, neighbours });
  return { topology, active: list, extent: extentOf(topology, list), dissection };
}

/** Fans have no vertices and edges but those of the triangles around them. */
function extentOf(
  { triangles, vertices, entities, start, edge }: Topology,
  active: Int32Array,
): MeshFrame['extent'] {
  const seen = new Uint8Array(entities);
  const within = active.filter((element) => element < triangles);
  for (const t of within) {
    for (let e = 3 * t; e < 3 * t + 3; e++) {
      seen[start[e]!] = 1;
      seen[edge[e]!] = 1;
    }
  }
  const count = (entity: Uint8Array): number => entity.reduce((sum, mark) => sum + mark, 0);
  return {
    vertices: count(seen.subarray(0, vertices)),
    edges: count(seen.subarray(vertices)),
    triangles: within.length,
  };
}

/** Unknowns that the potential will have, or slightly more (those on metal are counted as if they were free). */
export function predictUnknowns({ extent }: MeshFrame, order: number): number {
  const { vertices, edges, triangles } = extent;
  return vertices + edges * (order - 1) + (triangles * (order - 1) * (order - 2)) / 2;
}

export function discretise(
  frame: MeshFrame,
  order: number,
  [ohmX, ohmY]: readonly [number, number],
): Discretisation {
  const reference = referenceTriangle(order);
  const sigmaMean = 1 / Math.sqrt(ohmX * ohmY);
  const sigma: Conductivity = [1 / (ohmX * sigmaMean), 1 / (ohmY * sigmaMean)];
  const { mesh } = frame.topology;
  return {
    ...frame,
    reference,
    sigma,
    sigmaMean,
    space: spaceOn(frame.topology, reference),
    stiffness: triangleStiffness(mesh, reference, sigma),
  };
}

function spaceOn({ mesh, rimVertices }: Topology, reference: ReferenceElement): Space {
  const rims = mesh.fans.map((fan, f) => rimOf(mesh, fan, rimVertices[f]!.length - 1));
  const curved = new Map<number, { x: Float64Array; y: Float64Array } | null>();
  return {
    mesh,
    reference,
    rims,
    edgeNodes: gaussLobattoPoints(reference.order),
    layerDepth: LAYER_DEPTH,
    radialNodes: gaussLobattoPoints(radialOrder(reference.order)),
    layerCount: LAYER_COUNT,
    curved: (t) => {
      let nodes = curved.get(t);
      if (nodes === undefined) {
        nodes = curvedNodes(mesh, reference, t);
        curved.set(t, nodes);
      }
      return nodes;
    },
  };
}

/** Rim vertices relative to the fan's vertex. A rim half-edge, seen from outside the fan, runs from ray 1 to ray 0. */
function rimOf(mesh: Mesh, fan: Mesh['fans'][number], chords: number): Float64Array {
  const rim = new Float64Array(2 * chords + 2);
  for (let place = 0; place <= chords; place++) {
    const e = fan.rim[Math.min(place, chords - 1)]!;
    const next = e % 3 === 2 ? e - 2 : e + 1;
    const vertex = mesh.corners[place < chords ? next : e]!;
    rim[2 * place] = mesh.x[vertex]! - fan.x;
    rim[2 * place + 1] = mesh.y[vertex]! - fan.y;
  }
  return rim;
}

function curvedNodes(
  mesh: Mesh,
  reference: ReferenceElement,
  t: number,
): { x: Float64Array; y: Float64Array } | null {
  const map = ArcMap.of(mesh, t);
  if (map === null) return null;
  const x = new Float64Array(reference.count);
  const y = new Float64Array(reference.count);
  const at: MapPoint = { x: 0, y: 0, xr: 0, xs: 0, yr: 0, ys: 0 };
  for (let k = 0; k < reference.count; k++) {
    map.at(reference.r[k]!, reference.s[k]!, at);
    x[k] = at.x;
    y[k] = at.y;
  }
  return { x, y };
}

/** Centres of gravity of the triangles' corners and of the fans' rims. */
function centres({ mesh, triangles, elements }: Topology): { x: Float64Array; y: Float64Array } {
  const x = new Float64Array(elements);
  const y = new Float64Array(elements);
  for (let e = 0; e < 3 * triangles; e++) {
    const t = Math.floor(e / 3);
    x[t]! += mesh.x[mesh.corners[e]!]! / 3;
    y[t]! += mesh.y[mesh.corners[e]!]! / 3;
  }
  mesh.fans.forEach((fan, f) => {
    for (const e of fan.rim) {
      x[triangles + f]! += mesh.x[mesh.corners[e]!]! / fan.rim.length;
      y[triangles + f]! += mesh.y[mesh.corners[e]!]! / fan.rim.length;
    }
  });
  return { x, y };
}
