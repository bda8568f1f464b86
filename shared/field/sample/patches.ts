/**
 * The paper as a set of patches on each of which a scalar is one polynomial: the mesh's triangles, then the fans' layers chord by
 * chord, and at the bottom of every fan a tip. Numbers them, and knows what lies across every border.
 */
// Indices are bounded by construction throughout, hence `a[i]!`.
import { exp, hypot, log } from '../maths.ts';
import { INSULATING } from '../problem.ts';
import type { Space } from '../solve/discrete.ts';
import { BORDER, type Lattice, layerLattice, tipLattice, triangleLattice } from './lattice.ts';

/** Cells that a layer of a fan has between its outer and its inner rim. */
const RADIAL_CELLS = 2;

/** Kinds of patches, as `Patches.kind` has them. */
export const TRIANGLE = 0;
export const LAYER = 1;
export const TIP = 2;

export class Patches {
  readonly space: Space;
  readonly triangles: number;
  readonly count: number;
  /** Parts of each side of a triangle and of each chord. */
  readonly parts: number;
  /** Layers above the tip, and number of the first patch, by fan. */
  readonly layers: Int32Array;
  readonly firstOfFan: Int32Array;
  private readonly lattices: readonly Lattice[];
  /** By patch; the last three hold for patches of fans, where the layer after the last is the tip. */
  readonly kind: Uint8Array;
  readonly fan: Int32Array;
  readonly layer: Int32Array;
  readonly chord: Int32Array;
  /** By half-edge: the patch of the fan whose rim it is, or -1. */
  private readonly rimPatch: Int32Array;

  /** Fans are followed to `tipRadius_mm`; a patch is cut for drawing into `parts` each way. */
  constructor(space: Space, tipRadius_mm: number, parts: number) {
    const { mesh } = space;
    this.space = space;
    this.parts = parts;
    this.triangles = mesh.corners.length / 3;
    this.lattices = [triangleLattice(parts), layerLattice(RADIAL_CELLS, parts), tipLattice(parts)];
    this.layers = Int32Array.from(space.rims, (rim) => layersDownTo(space, rim, tipRadius_mm));
    this.firstOfFan = new Int32Array(mesh.fans.length);
    this.rimPatch = new Int32Array(mesh.corners.length).fill(-1);
    let count = this.triangles;
    mesh.fans.forEach((fan, f) => {
      const first = count;
      this.firstOfFan[f] = first;
      fan.rim.forEach((halfEdge, chord) => {
        this.rimPatch[halfEdge] = first + chord;
      });
      count += fan.rim.length * (this.layers[f]! + 1);
    });
    this.count = count;
    this.kind = new Uint8Array(this.count);
    this.fan = new Int32Array(this.count).fill(-1);
    this.layer = new Int32Array(this.count);
    this.chord = new Int32Array(this.count);
    mesh.fans.forEach((fan, f) => {
      this.numberFan(f, fan.rim.length);
    });
  }

  private numberFan(fan: number, chords: number): void {
    let patch = this.firstOfFan[fan]!;
    for (let layer = 0; layer <= this.layers[fan]!; layer++) {
      for (let chord = 0; chord < chords; chord++) {
        this.kind[patch] = layer < this.layers[fan]! ? LAYER : TIP;
        this.fan[patch] = fan;
        this.layer[patch] = layer;
        this.chord[patch] = chord;
        patch++;
      }
    }
  }

  fanPatch(fan: number, layer: number, chord: number): number {
    return this.firstOfFan[fan]! + layer * this.space.mesh.fans[fan]!.rim.length + chord;
  }

  lattice(patch: number): Lattice {
    return this.lattices[this.kind[patch]!]!;
  }

  /**
   * Side (patch's lattice numbering) beyond side `side` of `patch`, as patch and side; null at the edge of the paper. Both have
   * the same two points, in opposite order.
   */
  beyond(patch: number, side: number): { readonly patch: number; readonly side: number } | null {
    const code = this.lattice(patch).beyond[side]!;
    if (code >= 0) return { patch, side: code };
    const border = Math.floor(~code / BORDER);
    const next = this.neighbour(patch, border);
    if (next === null) return null;
    const sides = this.lattice(next.patch).borders[next.border]!;
    return { patch: next.patch, side: sides[sides.length - 1 - (~code % BORDER)]! };
  }

  /** Conductor number or INSULATING of a border at the edge of the paper; null for one inside it. */
  tag(patch: number, border: number): number | null {
    const { mesh } = this.space;
    if (this.neighbour(patch, border) !== null) return null;
    if (this.kind[patch] === TRIANGLE) return mesh.sides[mesh.side[3 * patch + border]!]?.tag ?? INSULATING;
    const fan = mesh.fans[this.fan[patch]!]!;
    return border === 1 ? fan.tag1 : fan.tag0;
  }

  neighbour(patch: number, border: number): { readonly patch: number; readonly border: number } | null {
    const { mesh } = this.space;
    if (this.kind[patch] === TRIANGLE) {
      const halfEdge = 3 * patch + border;
      const twin = mesh.twins[halfEdge]!;
      if (twin >= 0) return { patch: Math.floor(twin / 3), border: twin % 3 };
      const rim = this.rimPatch[halfEdge]!;
      return rim >= 0 ? { patch: rim, border: 0 } : null;
    }
    const fan = this.fan[patch]!;
    const layer = this.layer[patch]!;
    const chord = this.chord[patch]!;
    const rim = mesh.fans[fan]!.rim;
    const tip = this.kind[patch] === TIP;
    if (border === 0) {
      if (layer > 0) return { patch: this.fanPatch(fan, layer - 1, chord), border: 2 };
      const halfEdge = rim[chord]!;
      return { patch: Math.floor(halfEdge / 3), border: halfEdge % 3 };
    }
    if (border === 1) {
      return chord + 1 < rim.length ? { patch: patch + 1, border: tip ? 2 : 3 } : null;
    }
    if (border === 2 && !tip) return { patch: this.fanPatch(fan, layer + 1, chord), border: 0 };
    return chord > 0 ? { patch: patch - 1, border: 1 } : null;
  }
}

/** Layers until the rim, shrunk by e^-depth each time, is within `radius` of the vertex. */
function layersDownTo(space: Space, rim: Float64Array, radius: number): number {
  let largest = 0;
  for (let i = 0; i < rim.length; i += 2) largest = Math.max(largest, hypot(rim[i]!, rim[i + 1]!));
  const wanted = Math.ceil(log(largest / radius) / space.layerDepth);
  return Math.max(1, Math.min(space.layerCount, wanted));
}

/** Size of the outer rim of a layer against that of the fan. */
export function layerScale(space: Space, layer: number): number {
  return exp(-layer * space.layerDepth);
}
