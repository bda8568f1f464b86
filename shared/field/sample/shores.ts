/** The edge of the paper, loop by loop in the order of travel with the paper on the left, and the stretches of it that are metal. */
// Indices are bounded by construction throughout, hence `a[i]!`.
import { nextSide } from './lattice.ts';
import type { PatchScalar } from './patch-scalar.ts';
import { Spot } from './patch-shape.ts';
import type { Patches } from './patches.ts';

/** A stretch of metal along the edge: sides of cells, in order. */
export interface Shore {
  readonly conductor: number;
  readonly patch: readonly number[];
  readonly side: readonly number[];
  /** True where the last side ends at the start of the first. */
  readonly closed: boolean;
}

interface Step {
  readonly patch: number;
  readonly border: number;
}

/** All stretches of metal, longest possible each, in the order of their first half-edge's number. */
export function shoresOf(patches: Patches): Shore[] {
  return edgeLoops(patches).flatMap((loop) => stretches(patches, loop));
}

/** Borders along every loop of the edge; where it passes a fan, along one ray to the vertex and out along the other. */
function edgeLoops(patches: Patches): Step[][] {
  const { mesh } = patches.space;
  const passed = new Uint8Array(mesh.corners.length);
  const fanAtEnd = new Map<number, number>();
  mesh.fans.forEach(({ rim }, fan) => {
    fanAtEnd.set(rim[rim.length - 1]!, fan);
  });
  const isEdge = (halfEdge: number): boolean =>
    patches.neighbour(Math.floor(halfEdge / 3), halfEdge % 3) === null;
  const loops: Step[][] = [];
  for (let first = 0; first < mesh.corners.length; first++) {
    if (passed[first] === 1 || !isEdge(first)) continue;
    const loop: Step[] = [];
    let halfEdge = first;
    while (passed[halfEdge] === 0) {
      if (isEdge(halfEdge)) {
        passed[halfEdge] = 1;
        loop.push({ patch: Math.floor(halfEdge / 3), border: halfEdge % 3 });
        halfEdge = nextSide(halfEdge);
      } else if (mesh.twins[halfEdge]! >= 0) halfEdge = nextSide(mesh.twins[halfEdge]!);
      else {
        const fan = fanAtEnd.get(halfEdge)!;
        loop.push(...aroundVertex(patches, fan));
        halfEdge = nextSide(mesh.fans[fan]!.rim[0]!);
      }
    }
    loops.push(loop);
  }
  return loops;
}

/** In along ray 1, out along ray 0. */
function aroundVertex(patches: Patches, fan: number): Step[] {
  const tip = patches.layers[fan]!;
  const chords = patches.space.mesh.fans[fan]!.rim.length;
  const steps: Step[] = [];
  for (let layer = 0; layer <= tip; layer++) {
    steps.push({ patch: patches.fanPatch(fan, layer, chords - 1), border: 1 });
  }
  for (let layer = tip; layer >= 0; layer--) {
    steps.push({ patch: patches.fanPatch(fan, layer, 0), border: layer === tip ? 2 : 3 });
  }
  return steps;
}

function stretches(patches: Patches, loop: readonly Step[]): Shore[] {
  const tags = loop.map(({ patch, border }) => patches.tag(patch, border)!);
  const turn = tags.findIndex((tag, i) => tag !== tags[(i + tags.length - 1) % tags.length]);
  const closed = turn < 0;
  const shores: Shore[] = [];
  let from = 0;
  const at = (i: number): number => (i + Math.max(turn, 0)) % loop.length;
  for (let i = 1; i <= loop.length; i++) {
    const tag = tags[at(from)]!;
    if (i < loop.length && tags[at(i)] === tag) continue;
    if (tag >= 0) {
      const steps = Array.from({ length: i - from }, (_, k) => loop[at(from + k)]!);
      shores.push(shoreOf(patches, steps, tag, closed));
    }
    from = i;
  }
  return shores;
}

function shoreOf(patches: Patches, steps: readonly Step[], conductor: number, closed: boolean): Shore {
  const patch: number[] = [];
  const side: number[] = [];
  for (const step of steps) {
    for (const place of patches.lattice(step.patch).borders[step.border]!) {
      patch.push(step.patch);
      side.push(place);
    }
  }
  return { conductor, patch, side, closed };
}

export interface SideEnds {
  readonly ax: number;
  readonly ay: number;
  readonly bx: number;
  readonly by: number;
}

/** Where the sides of a shore begin and end on the paper. */
export function endsOfSides(scalar: PatchScalar, shore: Shore): SideEnds[] {
  const a = new Spot();
  const b = new Spot();
  return shore.side.map((side, i) => {
    const patch = shore.patch[i]!;
    const { u, v, cells } = scalar.patches.lattice(patch);
    const from = cells[side]!;
    const to = cells[nextSide(side)]!;
    scalar.shape.place(patch, u[from]!, v[from]!, a);
    scalar.shape.place(patch, u[to]!, v[to]!, b);
    return { ax: a.x, ay: a.y, bx: b.x, by: b.y };
  });
}
