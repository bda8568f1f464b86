/**
 * A triangulation that grows: half-edge arrays and the few moves the refinement needs. Every half-edge without a twin is boundary
 * and carries a side; nothing inside is constrained, so the Delaunay rule may flip any inner edge.
 *
 * Indices are bounded by construction: `a[i]!` below never meets a missing entry.
 */
import { incircle, orient2d } from 'robust-predicates';

/** The next half-edge around the triangle, and the one before. */
export const nextEdge = (e: number): number => (e % 3 === 2 ? e - 2 : e + 1);
export const previousEdge = (e: number): number => (e % 3 === 0 ? e + 2 : e - 1);

export class Triangulation {
  x: Float64Array;
  y: Float64Array;
  vertices = 0;
  /** Three vertices a triangle; the first is -1 where a triangle was taken away. */
  corners: Int32Array;
  twins: Int32Array;
  side: Int32Array;
  triangles = 0;
  /** Triangles to look at (again), each at most once in the list. */
  waiting: Int32Array;
  waitingCount = 0;
  private isWaiting: Uint8Array;
  private stack = new Int32Array(256);
  private depth = 0;
  /** Flips so far, for bounded work. */
  flips = 0;

  constructor(vertexRoom: number, triangleRoom: number) {
    this.x = new Float64Array(vertexRoom);
    this.y = new Float64Array(vertexRoom);
    this.corners = new Int32Array(3 * triangleRoom);
    this.twins = new Int32Array(3 * triangleRoom).fill(-1);
    this.side = new Int32Array(3 * triangleRoom).fill(-1);
    this.waiting = new Int32Array(triangleRoom);
    this.isWaiting = new Uint8Array(triangleRoom);
  }

  addVertex(x: number, y: number): number {
    if (this.vertices === this.x.length) {
      this.x = grown(this.x, new Float64Array(2 * this.vertices));
      this.y = grown(this.y, new Float64Array(2 * this.vertices));
    }
    this.x[this.vertices] = x;
    this.y[this.vertices] = y;
    return this.vertices++;
  }

  /** A triangle with neither twins nor sides. */
  addTriangle(a: number, b: number, c: number): number {
    const t = this.triangles++;
    if (3 * t === this.corners.length) {
      this.corners = grown(this.corners, new Int32Array(6 * t));
      this.twins = grown(this.twins, new Int32Array(6 * t));
      this.side = grown(this.side, new Int32Array(6 * t));
      this.isWaiting = grown(this.isWaiting, new Uint8Array(2 * t));
      this.waiting = grown(this.waiting, new Int32Array(2 * t));
    }
    this.corners[3 * t] = a;
    this.corners[3 * t + 1] = b;
    this.corners[3 * t + 2] = c;
    this.twins.fill(-1, 3 * t, 3 * t + 3);
    this.side.fill(-1, 3 * t, 3 * t + 3);
    this.wait(t);
    return t;
  }

  wait(t: number): void {
    if (this.isWaiting[t]) return;
    this.isWaiting[t] = 1;
    this.waiting[this.waitingCount++] = t;
  }

  /** The last of the waiting triangles, or -1. */
  takeWaiting(): number {
    if (this.waitingCount === 0) return -1;
    const t = this.waiting[--this.waitingCount]!;
    this.isWaiting[t] = 0;
    return t;
  }

  /** Joins half-edge e to what lay across `across`: its twin, or else its side. */
  private inherit(e: number, twin: number, side: number): void {
    this.twins[e] = twin;
    this.side[e] = side;
    if (twin >= 0) this.twins[twin] = e;
  }

  join(e: number, f: number): void {
    this.twins[e] = f;
    this.twins[f] = e;
    this.side[e] = -1;
    this.side[f] = -1;
  }

  private push(e: number): void {
    if (this.depth === this.stack.length) this.stack = grown(this.stack, new Int32Array(2 * this.depth));
    this.stack[this.depth++] = e;
  }

  /** Restores the Delaunay rule around the half-edges pushed before (Lawson's flips). */
  private legalise(): void {
    const { x, y } = this;
    while (this.depth > 0) {
      const e = this.stack[--this.depth]!;
      const f = this.twins[e]!;
      if (f < 0) continue;
      const b = this.corners[e]!;
      const c = this.corners[nextEdge(e)]!;
      const a = this.corners[previousEdge(e)]!;
      const d = this.corners[previousEdge(f)]!;
      if (incircle(x[a]!, y[a]!, x[b]!, y[b]!, x[c]!, y[c]!, x[d]!, y[d]!) > 0) this.flip(e, f);
    }
  }

  /**
   *      c                c
   *    / ↑ \            /   \
   *   a  e  d    →     a --- d      e becomes b → d, f becomes c → a, the diagonal joins nextEdge(e) and nextEdge(f)
   *    \ ↓ /            \   /
   *      b                b
   */
  private flip(e: number, f: number): void {
    const { corners, twins, side } = this;
    const e1 = nextEdge(e);
    const e2 = previousEdge(e);
    const f1 = nextEdge(f);
    const f2 = previousEdge(f);
    const b = corners[e]!;
    const c = corners[f]!;
    const a = corners[e2]!;
    const d = corners[f2]!;
    const caTwin = twins[e1]!;
    const caSide = side[e1]!;
    const bdTwin = twins[f1]!;
    const bdSide = side[f1]!;
    corners[e] = b;
    corners[e1] = d;
    corners[e2] = a;
    corners[f] = c;
    corners[f1] = a;
    corners[f2] = d;
    this.inherit(e, bdTwin, bdSide);
    this.inherit(f, caTwin, caSide);
    this.join(e1, f1);
    this.flips++;
    this.wait((e / 3) | 0);
    this.wait((f / 3) | 0);
    this.push(e);
    this.push(e2);
    this.push(f);
    this.push(f2);
  }

  /** Divides the straight boundary half-edge e at (x, y). */
  splitBoundary(e: number, x: number, y: number): void {
    const p = this.addVertex(x, y);
    const e1 = nextEdge(e);
    const e2 = previousEdge(e);
    const n = 3 * this.addTriangle(p, this.corners[e1]!, this.corners[e2]!);
    this.side[n] = this.side[e]!;
    this.inherit(n + 1, this.twins[e1]!, this.side[e1]!);
    this.corners[e1] = p;
    this.join(e1, n + 2);
    this.wait((e / 3) | 0);
    this.push(e2);
    this.push(n + 1);
    this.legalise();
  }

  /** Divides the boundary half-edge e = a → b whose arc bulges away from the paper, at (x, y) on the arc: adds the triangle b, a, p. */
  splitOutward(e: number, x: number, y: number): void {
    const p = this.addVertex(x, y);
    const side = this.side[e]!;
    const n = 3 * this.addTriangle(this.corners[nextEdge(e)]!, this.corners[e]!, p);
    this.join(e, n);
    this.side[n + 1] = side;
    this.side[n + 2] = side;
    this.wait((e / 3) | 0);
    this.push(e);
    this.legalise();
  }

  /**
   * Divides the boundary half-edge e = a → b whose arc bulges into the paper, at (x, y) on the arc. The sliver between chord and arc
   * holds no vertex, so the Delaunay rule makes a, b, p a triangle, which is then taken away. False if something was in the way.
   */
  splitInward(e: number, x: number, y: number): boolean {
    const a = this.corners[e]!;
    const b = this.corners[nextEdge(e)]!;
    const middleX = (this.x[a]! + this.x[b]!) / 2;
    const middleY = (this.y[a]! + this.y[b]!) / 2;
    const t = this.locate((e / 3) | 0, middleX, middleY, x, y);
    if (t < 0 || !this.holds(t, x, y)) return false;
    this.insert(t, x, y);
    const p = this.vertices - 1;
    const sliver = this.edgeOpposite(t, p, a, b);
    if (sliver < 0) return false;
    const side = this.side[sliver]!;
    for (const inner of [nextEdge(sliver), previousEdge(sliver)]) {
      const outer = this.twins[inner]!;
      if (outer < 0) continue;
      this.twins[outer] = -1;
      this.side[outer] = side;
      this.wait((outer / 3) | 0);
    }
    const gone = (sliver / 3) | 0;
    this.corners[3 * gone] = -1;
    this.twins.fill(-1, 3 * gone, 3 * gone + 3);
    this.side.fill(-1, 3 * gone, 3 * gone + 3);
    return true;
  }

  /** The boundary half-edge a → b opposite the inner vertex p, searched around p from a triangle at p; -1 if there is none. */
  private edgeOpposite(start: number, p: number, a: number, b: number): number {
    let e = 3 * start;
    while (this.corners[e] !== p) e = nextEdge(e);
    for (let guard = 0; guard < this.triangles; guard++) {
      const opposite = nextEdge(e);
      if (
        this.corners[opposite] === a &&
        this.corners[nextEdge(opposite)] === b &&
        this.twins[opposite]! < 0
      ) {
        return opposite;
      }
      e = this.twins[previousEdge(e)]!;
      if (e < 0 || ((e / 3) | 0) === start) return -1;
    }
    return -1;
  }

  /** Puts a vertex into triangle t. Triangle t keeps the new vertex as a corner. */
  insert(t: number, x: number, y: number): void {
    const p = this.addVertex(x, y);
    const e = 3 * t;
    const a = this.corners[e]!;
    const b = this.corners[e + 1]!;
    const c = this.corners[e + 2]!;
    const n = 3 * this.addTriangle(b, c, p);
    const m = 3 * this.addTriangle(c, a, p);
    this.inherit(n, this.twins[e + 1]!, this.side[e + 1]!);
    this.inherit(m, this.twins[e + 2]!, this.side[e + 2]!);
    this.corners[e + 2] = p;
    this.join(e + 1, n + 2);
    this.join(n + 1, m + 2);
    this.join(m + 1, e + 2);
    this.wait(t);
    this.push(e);
    this.push(n);
    this.push(m);
    this.legalise();
  }

  /**
   * Walks straight from (gx, gy) in or on triangle t towards (x, y). Returns the triangle that holds it, or -1 - e for the boundary
   * half-edge e that is in the way.
   */
  locate(t: number, gx: number, gy: number, x: number, y: number): number {
    let entry = -1;
    let now = t;
    for (let guard = 0; guard <= this.triangles; guard++) {
      const e = this.exit(now, entry, gx, gy, x, y);
      if (e < 0) return now;
      const twin = this.twins[e]!;
      if (twin < 0) return -1 - e;
      entry = twin;
      now = (twin / 3) | 0;
    }
    return now;
  }

  /** The half-edge through which the line g → (x, y) leaves triangle t, or -1 if it ends inside. */
  private exit(t: number, entry: number, gx: number, gy: number, x: number, y: number): number {
    const dx = x - gx;
    const dy = y - gy;
    for (let j = 0; j < 3; j++) {
      const e = 3 * t + j;
      if (e === entry) continue;
      const p = this.corners[e]!;
      const q = this.corners[nextEdge(e)]!;
      const px = this.x[p]!;
      const py = this.y[p]!;
      const qx = this.x[q]!;
      const qy = this.y[q]!;
      if ((qx - px) * (y - py) - (qy - py) * (x - px) >= 0) continue;
      if (dx * (py - gy) - dy * (px - gx) > 0) continue;
      if (dx * (qy - gy) - dy * (qx - gx) < 0) continue;
      return e;
    }
    return -1;
  }

  /** Is (x, y) inside triangle t or on its edge? */
  holds(t: number, x: number, y: number): boolean {
    for (let j = 0; j < 3; j++) {
      const p = this.corners[3 * t + j]!;
      const q = this.corners[3 * t + ((j + 1) % 3)]!;
      if (orient2d(this.x[p]!, this.y[p]!, this.x[q]!, this.y[q]!, x, y) > 0) return false;
    }
    return true;
  }
}

function grown<A extends Float64Array | Int32Array | Uint8Array>(old: A, larger: A): A {
  larger.set(old);
  return larger;
}
