/** Tells whether a place of a patch lies on metal, within a few micrometres. */
// Indices are bounded by construction throughout, hence `a[i]!`.
import { hypot } from '../maths.ts';
import { nextSide } from './lattice.ts';
import type { PatchScalar } from './patch-scalar.ts';
import { Spot } from './patch-shape.ts';
import { LAYER, TIP } from './patches.ts';

/** Nearer than this to metal, mm, counts as on it. */
export const ON_METAL_MM = 0.005;

export class MetalTouch {
  private readonly scalar: PatchScalar;
  /** By mesh vertex: 1 at the ends of metal sides. */
  private readonly metalVertex: Uint8Array;
  private readonly spot = new Spot();

  constructor(scalar: PatchScalar) {
    const { mesh } = scalar.patches.space;
    this.scalar = scalar;
    this.metalVertex = new Uint8Array(mesh.x.length);
    for (let halfEdge = 0; halfEdge < mesh.corners.length; halfEdge++) {
      if (mesh.side[halfEdge]! < 0 || mesh.sides[mesh.side[halfEdge]!]!.tag < 0) continue;
      this.metalVertex[mesh.corners[halfEdge]!] = 1;
      this.metalVertex[mesh.corners[nextSide(halfEdge)]!] = 1;
    }
  }

  at(patch: number, u: number, v: number): boolean {
    const { patches } = this.scalar;
    const { spot } = this;
    this.scalar.shape.place(patch, u, v, spot);
    const area = Math.abs(spot.xu * spot.yv - spot.xv * spot.yu);
    // Millimetres per unit of u, v and u + v, across lines of constant u, v and u + v.
    const perU = area / hypot(spot.xv, spot.yv);
    const perV = area / hypot(spot.xu, spot.yu);
    const kind = patches.kind[patch];
    if (kind === TIP) return this.isMetal(patch, 1) || this.isMetal(patch, 2);
    if (kind === LAYER) {
      return (
        ((1 - v) * perV < ON_METAL_MM && this.isMetal(patch, 1)) ||
        ((1 + v) * perV < ON_METAL_MM && this.isMetal(patch, 3))
      );
    }
    const perSum = area / hypot(spot.xu - spot.xv, spot.yu - spot.yv);
    const onSide = [
      (1 + v) * perV < ON_METAL_MM,
      -(u + v) * perSum < ON_METAL_MM,
      (1 + u) * perU < ON_METAL_MM,
    ];
    return [0, 1, 2].some(
      (j) => (onSide[j]! && this.isMetal(patch, j)) || this.atMetalCorner(patch, j, onSide),
    );
  }

  private isMetal(patch: number, border: number): boolean {
    return (this.scalar.patches.tag(patch, border) ?? -1) >= 0;
  }

  /** On both sides that meet in the corner. */
  private atMetalCorner(patch: number, corner: number, onSide: readonly boolean[]): boolean {
    const { corners } = this.scalar.patches.space.mesh;
    return (
      onSide[corner]! && onSide[(corner + 2) % 3]! && this.metalVertex[corners[3 * patch + corner]!] === 1
    );
  }
}
