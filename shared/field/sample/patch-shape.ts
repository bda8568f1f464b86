/** Where the places (u, v) of patches lie on the paper. */
// Indices are bounded by construction throughout, hence `a[i]!`.
import { exp } from '../maths.ts';
import { ArcMap, type MapPoint } from '../solve/arc-map.ts';
import { layerScale, type Patches, TIP, TRIANGLE } from './patches.ts';

/** What holds at a place of a patch, filled in place; `xu` = ∂x/∂u, mm. */
export class Spot {
  x = 0;
  y = 0;
  xu = 0;
  xv = 0;
  yu = 0;
  yv = 0;
  value = 0;
  /** Gradient on the paper, per mm. */
  gx = 0;
  gy = 0;
}

export class PatchShape {
  readonly patches: Patches;
  private readonly arcs: (ArcMap | null | undefined)[] = [];
  private readonly point: MapPoint = { x: 0, y: 0, xr: 0, xs: 0, yr: 0, ys: 0 };

  constructor(patches: Patches) {
    this.patches = patches;
  }

  /** Position of (u, v) and its derivatives. */
  place(patch: number, u: number, v: number, spot: Spot): void {
    if (this.patches.kind[patch] !== TRIANGLE) {
      this.placeInFan(patch, u, v, spot);
      return;
    }
    const arc = this.arc(patch);
    if (arc !== null) {
      this.placeInCurved(arc, u, v, spot);
      return;
    }
    const { mesh } = this.patches.space;
    const a = mesh.corners[3 * patch]!;
    const b = mesh.corners[3 * patch + 1]!;
    const c = mesh.corners[3 * patch + 2]!;
    spot.xu = (mesh.x[b]! - mesh.x[a]!) / 2;
    spot.yu = (mesh.y[b]! - mesh.y[a]!) / 2;
    spot.xv = (mesh.x[c]! - mesh.x[a]!) / 2;
    spot.yv = (mesh.y[c]! - mesh.y[a]!) / 2;
    spot.x = mesh.x[a]! + (1 + u) * spot.xu + (1 + v) * spot.xv;
    spot.y = mesh.y[a]! + (1 + u) * spot.yu + (1 + v) * spot.yv;
  }

  isCurved(patch: number): boolean {
    return this.patches.kind[patch] === TRIANGLE && this.arc(patch) !== null;
  }

  /** The map has no derivative exactly at a corner: it is taken close by. */
  private placeInCurved(arc: ArcMap, u: number, v: number, spot: Spot): void {
    const { point } = this;
    const atCorner = Math.max(-(u + v), 1 + u, 1 + v) > 2 - 2 * NEAR_CORNER;
    if (atCorner) {
      arc.at(u - NEAR_CORNER * (u + 1 / 3), v - NEAR_CORNER * (v + 1 / 3), point);
      spot.xu = point.xr;
      spot.xv = point.xs;
      spot.yu = point.yr;
      spot.yv = point.ys;
    }
    arc.at(u, v, point);
    spot.x = point.x;
    spot.y = point.y;
    if (atCorner) return;
    spot.xu = point.xr;
    spot.xv = point.xs;
    spot.yu = point.yr;
    spot.yv = point.ys;
  }

  /** Vertex + e^-t (point of the chord). */
  private placeInFan(patch: number, u: number, v: number, spot: Spot): void {
    const { space } = this.patches;
    const fan = this.patches.fan[patch]!;
    const chord = this.patches.chord[patch]!;
    const { x, y } = space.mesh.fans[fan]!;
    const rim = space.rims[fan]!;
    const ax = rim[2 * chord]!;
    const ay = rim[2 * chord + 1]!;
    const hx = (rim[2 * chord + 2]! - ax) / 2;
    const hy = (rim[2 * chord + 3]! - ay) / 2;
    const outer = layerScale(space, this.patches.layer[patch]!);
    if (this.patches.kind[patch] === TIP) {
      // The triangle from the chord to the vertex, where u = 1 and v = 0.
      const weight = (1 - u) / 2;
      spot.x = x + outer * (weight * (ax + hx) + v * hx);
      spot.y = y + outer * (weight * (ay + hy) + v * hy);
      spot.xu = (-outer * (ax + hx)) / 2;
      spot.yu = (-outer * (ay + hy)) / 2;
      spot.xv = outer * hx;
      spot.yv = outer * hy;
      return;
    }
    const px = ax + (1 + v) * hx;
    const py = ay + (1 + v) * hy;
    const scale = outer * exp((-(1 + u) * space.layerDepth) / 2);
    const slope = (-scale * space.layerDepth) / 2;
    spot.x = x + scale * px;
    spot.y = y + scale * py;
    spot.xu = slope * px;
    spot.yu = slope * py;
    spot.xv = scale * hx;
    spot.yv = scale * hy;
  }

  private arc(triangle: number): ArcMap | null {
    let arc = this.arcs[triangle];
    if (arc === undefined) {
      arc = ArcMap.of(this.patches.space.mesh, triangle);
      this.arcs[triangle] = arc;
    }
    return arc;
  }
}

const NEAR_CORNER = 1e-7;
