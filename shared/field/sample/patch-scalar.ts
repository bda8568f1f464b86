/** A scalar patch by patch: polynomials in the patch's own coordinates (u, v), their values on the lattice, and the way onto the paper. */
// Indices are bounded by construction throughout, hence `a[i]!`.
import { exp } from '../maths.ts';
import type { Scalar } from '../solve/discrete.ts';
import { layerScale, type Patches, TIP, TRIANGLE } from './patches.ts';
import { type Transforms, transformsOf } from './powers.ts';

/** What holds at a place (u, v) of a patch. Filled in place by `PatchScalar`; derivatives `xu` = ∂x/∂u, in mm. */
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

export class PatchScalar {
  readonly patches: Patches;
  readonly scalar: Scalar;
  private readonly transforms: Transforms;
  private readonly polynomials: (Float64Array | undefined)[] = [];
  private readonly latticeValues: (Float64Array | undefined)[] = [];
  private readonly curves: (Curve | null | undefined)[] = [];
  /** Value and derivatives of the polynomial evaluated last. */
  private f = 0;
  private fu = 0;
  private fv = 0;

  constructor(scalar: Scalar, patches: Patches) {
    this.scalar = scalar;
    this.patches = patches;
    this.transforms = transformsOf(scalar.space);
  }

  /** Smallest and largest nodal value of a patch. */
  range(patch: number): readonly [number, number] {
    const values = this.nodal(patch);
    let low = values[0]!;
    let high = low;
    for (const value of values) {
      if (value < low) low = value;
      else if (value > high) high = value;
    }
    return [low, high];
  }

  /** Values on the points of the patch's lattice. */
  lattice(patch: number): Float64Array {
    let values = this.latticeValues[patch];
    if (values === undefined) {
      const { u, v } = this.patches.lattice(patch);
      values = new Float64Array(u.length);
      for (let i = 0; i < u.length; i++) values[i] = this.value(patch, u[i]!, v[i]!);
      this.latticeValues[patch] = values;
    }
    return values;
  }

  value(patch: number, u: number, v: number): number {
    this.evaluate(this.polynomial(patch), patch, u, v);
    return this.f;
  }

  /** Derivative of the polynomial evaluated last, at its place, along (du, dv). */
  slope(du: number, dv: number): number {
    return this.fu * du + this.fv * dv;
  }

  /** Value, place and both gradients at (u, v). */
  look(patch: number, u: number, v: number, spot: Spot): void {
    this.place(patch, u, v, spot);
    this.evaluate(this.polynomial(patch), patch, u, v);
    const { xu, xv, yu, yv } = spot;
    const determinant = xu * yv - xv * yu;
    spot.value = this.f;
    spot.gx = (this.fu * yv - this.fv * yu) / determinant;
    spot.gy = (this.fv * xu - this.fu * xv) / determinant;
  }

  /** Place on the paper of (u, v), with derivatives. */
  place(patch: number, u: number, v: number, spot: Spot): void {
    const { mesh } = this.patches.space;
    if (this.patches.kind[patch] !== TRIANGLE) {
      this.placeInFan(patch, u, v, spot);
      return;
    }
    const curve = this.curve(patch);
    if (curve !== null) {
      this.evaluate(curve.x, patch, u, v);
      [spot.x, spot.xu, spot.xv] = [this.f, this.fu, this.fv];
      this.evaluate(curve.y, patch, u, v);
      [spot.y, spot.yu, spot.yv] = [this.f, this.fu, this.fv];
      return;
    }
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

  /** Vertex + e^-t (point of the chord); at the tip straight to the vertex. */
  private placeInFan(patch: number, u: number, v: number, spot: Spot): void {
    const { space } = this.patches;
    const fan = this.patches.fan[patch]!;
    const layer = this.patches.layer[patch]!;
    const chord = this.patches.chord[patch]!;
    const { x, y } = space.mesh.fans[fan]!;
    const rim = space.rims[fan]!;
    const ax = rim[2 * chord]!;
    const ay = rim[2 * chord + 1]!;
    const hx = (rim[2 * chord + 2]! - ax) / 2;
    const hy = (rim[2 * chord + 3]! - ay) / 2;
    const px = ax + (1 + v) * hx;
    const py = ay + (1 + v) * hy;
    const tip = this.patches.kind[patch] === TIP;
    const outer = layerScale(space, layer);
    const scale = tip ? (outer * (1 - u)) / 2 : outer * exp((-(1 + u) * space.layerDepth) / 2);
    const slope = tip ? -outer / 2 : (-scale * space.layerDepth) / 2;
    spot.x = x + scale * px;
    spot.y = y + scale * py;
    spot.xu = slope * px;
    spot.yu = slope * py;
    spot.xv = scale * hx;
    spot.yv = scale * hy;
  }

  private curve(triangle: number): Curve | null {
    let curve = this.curves[triangle];
    if (curve === undefined) {
      const nodes = this.patches.space.curved(triangle);
      curve =
        nodes === null
          ? null
          : { x: this.transforms.ofTriangle(nodes.x), y: this.transforms.ofTriangle(nodes.y) };
      this.curves[triangle] = curve;
    }
    return curve;
  }

  private nodal(patch: number): Float64Array {
    const { patches, scalar } = this;
    if (patches.kind[patch] === TRIANGLE) return scalar.triangle(patch);
    if (patches.kind[patch] === TIP) return this.polynomial(patch);
    return chordValues(scalar, patches.fan[patch]!, patches.layer[patch]!, patches.chord[patch]!);
  }

  private polynomial(patch: number): Float64Array {
    let polynomial = this.polynomials[patch];
    if (polynomial === undefined) {
      const { patches, transforms } = this;
      if (patches.kind[patch] === TRIANGLE) polynomial = transforms.ofTriangle(this.scalar.triangle(patch));
      else if (patches.kind[patch] === TIP) polynomial = this.tipPolynomial(patch);
      else polynomial = transforms.ofLayer(this.nodal(patch));
      this.polynomials[patch] = polynomial;
    }
    return polynomial;
  }

  /** At the tip: the values of its outer rim, going over linearly to the vertex's value. Coefficients of (1 - u)/2, then the constant. */
  private tipPolynomial(patch: number): Float64Array {
    const fan = this.patches.fan[patch]!;
    const layer = this.patches.layer[patch]!;
    const chord = this.patches.chord[patch]!;
    const { radialNodes } = this.patches.space;
    const last = radialNodes.length - 1;
    const values = chordValues(this.scalar, fan, layer - 1, chord);
    const width = values.length / (last + 1);
    const rim = this.transforms.ofChord(values.subarray(last * width));
    return Float64Array.from([...rim, this.vertexValue(fan)]);
  }

  /**
   * The value that the scalar tends to at a fan's vertex: that of the ray along which it does not change, if there is one (the
   * potential along metal, the stream function along an insulating edge), else the mean of the two rays.
   */
  private vertexValue(fan: number): number {
    const first = this.scalar.fanLayer(fan, 0);
    const [start, end] = [first[0]!, this.onLastRay(first)];
    const deep = this.scalar.fanLayer(fan, this.patches.layers[fan]! - 1);
    const inner = deep.subarray(deep.length - this.rimNodes(deep));
    const [deepStart, deepEnd] = [inner[0]!, inner[inner.length - 1]!];
    const change0 = Math.abs(deepStart - start);
    const change1 = Math.abs(deepEnd - end);
    const still = 1e-9 * (change0 + change1);
    if (change0 <= still && change1 > still) return deepStart;
    if (change1 <= still && change0 > still) return deepEnd;
    return (deepStart + deepEnd) / 2;
  }

  private rimNodes(layer: Float64Array): number {
    return layer.length / this.patches.space.radialNodes.length;
  }

  private onLastRay(layer: Float64Array): number {
    return layer[this.rimNodes(layer) - 1]!;
  }

  /** Horner's scheme in u within Horner's scheme in v; sets f, fu, fv. Rows of one power of v shrink by one in a triangle. */
  private evaluate(c: Float64Array, patch: number, u: number, v: number): void {
    const kind = this.patches.kind[patch];
    if (kind === TIP) {
      this.evaluateTip(c, u, v);
      return;
    }
    const { order } = this.patches.space.reference;
    const triangle = kind === TRIANGLE;
    const width = this.patches.space.radialNodes.length;
    let [f, fu, fv] = [0, 0, 0];
    let at = c.length;
    for (let j = order; j >= 0; j--) {
      const length = triangle ? order - j + 1 : width;
      let row = 0;
      let slope = 0;
      for (let i = length - 1; i >= 0; i--) {
        slope = slope * u + row;
        row = row * u + c[--at]!;
      }
      fv = fv * v + f;
      f = f * v + row;
      fu = fu * v + slope;
    }
    this.f = f;
    this.fu = fu;
    this.fv = fv;
  }

  private evaluateTip(c: Float64Array, u: number, v: number): void {
    const vertex = c[c.length - 1]!;
    let row = 0;
    let slope = 0;
    for (let j = c.length - 2; j >= 0; j--) {
      slope = slope * v + row;
      row = row * v + c[j]!;
    }
    const weight = (1 - u) / 2;
    this.f = vertex + weight * (row - vertex);
    this.fu = (vertex - row) / 2;
    this.fv = weight * slope;
  }
}

interface Curve {
  readonly x: Float64Array;
  readonly y: Float64Array;
}

/** Nodal values of one chord of a layer: radial node by radial node, order + 1 each. */
function chordValues(scalar: Scalar, fan: number, layer: number, chord: number): Float64Array {
  const { order } = scalar.space.reference;
  const radial = scalar.space.radialNodes.length;
  const all = scalar.fanLayer(fan, layer);
  const rimNodes = all.length / radial;
  const values = new Float64Array(radial * (order + 1));
  for (let a = 0; a < radial; a++) {
    const from = a * rimNodes + chord * order;
    values.set(all.subarray(from, from + order + 1), a * (order + 1));
  }
  return values;
}
