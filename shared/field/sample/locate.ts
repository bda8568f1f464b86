/** Finds the patch, and the place in it, of a point on the bare paper: a uniform grid of buckets, then the patch's own coordinates. */
// Indices are bounded by construction throughout, hence `a[i]!`.
import { hypot, log } from '../maths.ts';
import { type PatchShape, Spot } from './patch-shape.ts';
import { LAYER, layerScale, TRIANGLE } from './patches.ts';

export interface Place {
  readonly patch: number;
  readonly u: number;
  readonly v: number;
}

/** A point this far outside a straight side, or outside a curved one, mm, counts as on it. */
const OUTSIDE_MM = 1e-9;
const OUTSIDE_CURVE_MM = 2e-6;

/** Returns the place of a point, null where there is no bare paper; at borders the patch of the lowest number. */
export type Locator = (x: number, y: number) => Place | null;

export function locator(shape: PatchShape): Locator {
  const { mesh } = shape.patches.space;
  const grid = new BucketGrid(mesh.x, mesh.y, shape.patches.triangles);
  for (let t = 0; t < shape.patches.triangles; t++) grid.add(t, boxOfTriangle(shape, t));
  mesh.fans.forEach((_, fan) => {
    grid.add(shape.patches.firstOfFan[fan]!, boxOfFan(shape, fan));
  });
  grid.finish();
  return (x, y) => {
    for (const patch of grid.at(x, y)) {
      const isTriangle = shape.patches.kind[patch] === TRIANGLE;
      const place = isTriangle
        ? inTriangle(shape, patch, x, y)
        : inFan(shape, shape.patches.fan[patch]!, x, y);
      if (place !== null) return place;
    }
    return null;
  };
}

type Box = readonly [left: number, bottom: number, right: number, top: number];

/** Square buckets over the mesh, about one a triangle; each lists in rising order the items whose boxes meet it. */
class BucketGrid {
  private readonly left: number;
  private readonly bottom: number;
  private readonly size: number;
  private readonly columns: number;
  private readonly rows: number;
  private readonly boxes: { readonly item: number; readonly box: Box }[] = [];
  private starts = new Int32Array(0);
  private items = new Int32Array(0);

  constructor(x: Float64Array, y: Float64Array, wanted: number) {
    let [left, bottom, right, top] = [Infinity, Infinity, -Infinity, -Infinity];
    for (let i = 0; i < x.length; i++) {
      left = Math.min(left, x[i]!);
      right = Math.max(right, x[i]!);
      bottom = Math.min(bottom, y[i]!);
      top = Math.max(top, y[i]!);
    }
    // Curved sides and the vertices of fans may lie outside the box of the mesh's vertices.
    const margin = hypot(right - left, top - bottom) / 8;
    this.left = left - margin;
    this.bottom = bottom - margin;
    const width = right - left + 2 * margin;
    const height = top - bottom + 2 * margin;
    this.size = Math.max(Math.sqrt((width * height) / Math.max(wanted, 1)), Math.max(width, height) / 1000);
    this.columns = Math.max(1, Math.ceil(width / this.size));
    this.rows = Math.max(1, Math.ceil(height / this.size));
  }

  add(item: number, box: Box): void {
    this.boxes.push({ item, box });
  }

  finish(): void {
    const counts = new Int32Array(this.columns * this.rows + 1);
    for (const { box } of this.boxes) {
      this.forBuckets(box, (bucket) => {
        counts[bucket + 1] = counts[bucket + 1]! + 1;
      });
    }
    for (let i = 1; i < counts.length; i++) counts[i] = counts[i]! + counts[i - 1]!;
    this.starts = counts;
    this.items = new Int32Array(counts[counts.length - 1]!);
    const next = counts.slice();
    for (const { item, box } of this.boxes) {
      this.forBuckets(box, (bucket) => {
        this.items[next[bucket]!] = item;
        next[bucket] = next[bucket]! + 1;
      });
    }
  }

  at(x: number, y: number): Int32Array {
    const bucket = this.row(y) * this.columns + this.column(x);
    return this.items.subarray(this.starts[bucket]!, this.starts[bucket + 1]!);
  }

  private forBuckets([left, bottom, right, top]: Box, each: (bucket: number) => void): void {
    for (let row = this.row(bottom); row <= this.row(top); row++) {
      for (let column = this.column(left); column <= this.column(right); column++) {
        each(row * this.columns + column);
      }
    }
  }

  private column(x: number): number {
    return Math.max(0, Math.min(this.columns - 1, Math.floor((x - this.left) / this.size)));
  }

  private row(y: number): number {
    return Math.max(0, Math.min(this.rows - 1, Math.floor((y - this.bottom) / this.size)));
  }
}

/** A curved side bulges by no more than half its length beyond its chord. */
function boxOfTriangle(shape: PatchShape, t: number): Box {
  const { mesh } = shape.patches.space;
  const xs = [0, 1, 2].map((j) => mesh.x[mesh.corners[3 * t + j]!]!);
  const ys = [0, 1, 2].map((j) => mesh.y[mesh.corners[3 * t + j]!]!);
  const box: Box = [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
  const bulge = !shape.isCurved(t) ? 0 : hypot(box[2] - box[0], box[3] - box[1]) / 2;
  return widened(box, bulge + 2 * OUTSIDE_MM);
}

function boxOfFan(shape: PatchShape, fan: number): Box {
  const { mesh, rims } = shape.patches.space;
  const { x, y } = mesh.fans[fan]!;
  let [left, bottom, right, top] = [x, y, x, y];
  const rim = rims[fan]!;
  for (let i = 0; i < rim.length; i += 2) {
    left = Math.min(left, x + rim[i]!);
    right = Math.max(right, x + rim[i]!);
    bottom = Math.min(bottom, y + rim[i + 1]!);
    top = Math.max(top, y + rim[i + 1]!);
  }
  return widened([left, bottom, right, top], 2 * OUTSIDE_MM);
}

function widened([left, bottom, right, top]: Box, by: number): Box {
  return [left - by, bottom - by, right + by, top + by];
}

const spot = new Spot();

/** Newton's iteration on the map from (u, v) to the paper; one step where the triangle is straight. */
function inTriangle(shape: PatchShape, patch: number, x: number, y: number): Place | null {
  const curved = shape.isCurved(patch);
  let u = -1 / 3;
  let v = -1 / 3;
  let [fromU, fromV, fromSum] = [0, 0, 0];
  for (let step = 0; step < (curved ? 12 : 1); step++) {
    shape.place(patch, u, v, spot);
    const { xu, xv, yu, yv } = spot;
    const area = xu * yv - xv * yu;
    if (!(area > 0)) return null;
    const du = ((x - spot.x) * yv - (y - spot.y) * xv) / area;
    const dv = ((y - spot.y) * xu - (x - spot.x) * yu) / area;
    u += du;
    v += dv;
    if (!(Math.abs(u) < 3 && Math.abs(v) < 3)) return null;
    // Distances per unit of u, v and u + v.
    fromU = area / hypot(xv, yv);
    fromV = area / hypot(xu, yu);
    fromSum = area / hypot(xu - xv, yu - yv);
    if (Math.abs(du) + Math.abs(dv) < 1e-13) break;
  }
  const sides = shape.patches.space.mesh.sides;
  const allowed = (border: number): number => {
    const side = shape.patches.space.mesh.side[3 * patch + border]!;
    return side >= 0 && sides[side]!.arc >= 0 ? OUTSIDE_CURVE_MM : OUTSIDE_MM;
  };
  const within =
    (1 + v) * fromV >= -allowed(0) && -(u + v) * fromSum >= -allowed(1) && (1 + u) * fromU >= -allowed(2);
  return within ? { patch, u, v } : null;
}

/** The chord whose sector holds the point, then the layer: the point is s times a point of the chord, t = -ln s. */
function inFan(shape: PatchShape, fan: number, x: number, y: number): Place | null {
  const { space, layers } = shape.patches;
  const rim = space.rims[fan]!;
  const dx = x - space.mesh.fans[fan]!.x;
  const dy = y - space.mesh.fans[fan]!.y;
  const chords = rim.length / 2 - 1;
  for (let chord = 0; chord < chords; chord++) {
    const ax = rim[2 * chord]!;
    const ay = rim[2 * chord + 1]!;
    const ex = rim[2 * chord + 2]! - ax;
    const ey = rim[2 * chord + 3]! - ay;
    // (dx, dy) = s (a + w e), so that s = d × e / a × e and s w = a × d / a × e.
    const cross = ax * ey - ay * ex;
    const s = (dx * ey - dy * ex) / cross;
    const sw = (ax * dy - ay * dx) / cross;
    const length = hypot(ex, ey);
    const slack = OUTSIDE_MM / length;
    if (s < -slack || sw < -slack || sw > s + slack || s > 1 + (OUTSIDE_MM * length) / cross) continue;
    const v = s > 0 ? Math.min(1, Math.max(-1, (2 * sw) / s - 1)) : 0;
    const t = s > 0 ? Math.max(0, -log(s)) : Infinity;
    const layer = Math.min(layers[fan]!, Math.floor(t / space.layerDepth));
    const patch = shape.patches.fanPatch(fan, layer, chord);
    if (shape.patches.kind[patch] === LAYER)
      return { patch, u: (2 * t) / space.layerDepth - 2 * layer - 1, v };
    const weight = Math.max(0, s) / layerScale(space, layer);
    return { patch, u: 1 - 2 * weight, v: v * weight };
  }
  return null;
}
