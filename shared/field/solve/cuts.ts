/**
 * Cuts for the stream function. Around a loop of boundary that feeds a net current ψ does not come back to its start. One loop of a
 * piece of paper needs no cut (all currents sum to zero); each further one is joined to those already joined by a chain of elements,
 * across which ψ may jump by one unknown constant.
 */
// Indices are bounded by construction throughout, hence `a[i]!`.
import { INSULATING } from '../problem.ts';
import type { Lift } from './assemble.ts';
import type { Space } from './discrete.ts';
import { barycentric } from './reference-triangle.ts';
import { type Topology, triangleOf } from './topology.ts';

export interface Cuts {
  readonly count: number;
  readonly lifts: Map<number, Lift[]>;
}

export function cutsOf(topology: Topology, space: Space): Cuts {
  return new CutSearch(topology, space).run();
}

const UNSEEN = -2;
const SOURCE = -1;

/** Breadth-first search over elements from the loops already joined, which ends its branch wherever it meets a loop not yet joined. */
class CutSearch {
  private readonly topology: Topology;
  private readonly space: Space;
  private readonly loops: Map<number, number[]>;
  private readonly joined = new Set<number>();
  /** For each element the one before it, the place at which that one is left, and the place at which this one is entered. */
  private readonly from: Int32Array;
  private readonly leftAt: Int32Array;
  private readonly enteredAt: Int32Array;
  private readonly queue: number[] = [];
  private readonly lifts = new Map<number, Lift[]>();
  private count = 0;

  constructor(topology: Topology, space: Space) {
    this.topology = topology;
    this.space = space;
    this.loops = electrodeLoops(topology);
    this.from = new Int32Array(topology.elements).fill(UNSEEN);
    this.leftAt = new Int32Array(topology.elements);
    this.enteredAt = new Int32Array(topology.elements);
  }

  run(): Cuts {
    const begun = new Set<number>();
    for (const [loop, edges] of this.loops) {
      const piece = this.topology.piece[triangleOf(edges[0]!)]!;
      if (begun.has(piece)) continue;
      begun.add(piece);
      this.join(loop);
    }
    for (let next = 0; next < this.queue.length; next++) this.visit(this.queue[next]!);
    return { count: this.count, lifts: this.lifts };
  }

  private join(loop: number): void {
    this.joined.add(loop);
    for (const e of this.loops.get(loop)!) this.reach(triangleOf(e), e, SOURCE, -1);
  }

  /** A place is a half-edge of a triangle or a chord of a fan's rim. */
  private reach(element: number, enteredAt: number, from: number, leftAt: number): void {
    if (this.from[element] !== UNSEEN) return;
    this.from[element] = from;
    this.leftAt[element] = leftAt;
    this.enteredAt[element] = enteredAt;
    this.queue.push(element);
  }

  private visit(element: number): void {
    const { triangles, mesh, onRim, tag } = this.topology;
    if (element >= triangles) {
      mesh.fans[element - triangles]!.rim.forEach((e, place) => {
        this.reach(triangleOf(e), e, element, place);
      });
      return;
    }
    for (let e = 3 * element; e < 3 * element + 3; e++) {
      const twin = mesh.twins[e]!;
      const rim = onRim.get(e);
      if (twin >= 0) this.reach(triangleOf(twin), twin, element, e);
      else if (rim !== undefined) this.reach(triangles + rim.fan, rim.place, element, e);
      else if (tag(e) !== INSULATING) this.meet(element, e);
    }
  }

  private meet(element: number, halfEdge: number): void {
    const loop = this.topology.loopOf(this.topology.start[halfEdge]!);
    if (this.joined.has(loop)) return;
    this.cut(element, halfEdge);
    this.join(loop);
  }

  /** One cut unknown: walks back along the chain of elements and gives each its jump. */
  private cut(last: number, halfEdge: number): void {
    const cut = this.count++;
    let exit = halfEdge;
    for (let element = last; element !== SOURCE; element = this.from[element]!) {
      const entry = this.enteredAt[element]!;
      const isTriangle = element < this.topology.triangles;
      const values = isTriangle
        ? triangleLift(this.space, entry % 3, exit % 3)
        : rimLift(this.space, element - this.topology.triangles, entry, exit);
      const known = this.lifts.get(element);
      if (known === undefined) this.lifts.set(element, [{ cut, values }]);
      else known.push({ cut, values });
      exit = this.leftAt[element]!;
    }
  }
}

/** Half-edges on conductors, by boundary loop. */
function electrodeLoops(topology: Topology): Map<number, number[]> {
  const loops = new Map<number, number[]>();
  for (const e of topology.boundary) {
    if (topology.tag(e) === INSULATING) continue;
    const loop = topology.loopOf(topology.start[e]!);
    const known = loops.get(loop);
    if (known === undefined) loops.set(loop, [e]);
    else known.push(e);
  }
  return loops;
}

/**
 * Entered through one side and left through another, a triangle turns about the corner they share: the jump is ±(barycentric
 * coordinate of that corner), + on the left of the way and - on the right. Where the way changes its pivot from one end of a side
 * to the other, λ_a - (-λ_b) = 1: the two triangles differ by a constant along their common side.
 */
function triangleLift({ reference }: Space, entry: number, exit: number): Float64Array {
  const pivotOnRight = (entry + 1) % 3 === exit;
  const corner = pivotOnRight ? exit : entry;
  const sign = pivotOnRight ? -1 : 1;
  return Float64Array.from(
    { length: reference.count },
    (_, k) => sign * barycentric(reference.r[k]!, reference.s[k]!)[corner]!,
  );
}

/** The same on a fan's rim, crossed from chord to chord: ±1 between the two chords, 0 outside, linear along them. */
function rimLift(space: Space, fan: number, entry: number, exit: number): Float64Array {
  const { order } = space.reference;
  const chords = space.rims[fan]!.length / 2 - 1;
  const low = Math.min(entry, exit);
  const high = Math.max(entry, exit);
  const sign = exit > entry ? -1 : 1;
  const values = new Float64Array(chords * order + 1);
  for (let k = low * order + 1; k < (high + 1) * order; k++) {
    const chord = Math.floor(k / order);
    const along = (1 + space.edgeNodes[k - chord * order]!) / 2;
    values[k] = sign * (chord === low ? along : chord === high ? 1 - along : 1);
  }
  return values;
}
