/** A scalar patch by patch: polynomials in the patch's own coordinates (u, v), their values on the lattice, and the way onto the paper. */
// Indices are bounded by construction throughout, hence `a[i]!`.
import type { Scalar } from '../solve/discrete.ts';
import { PatchShape, type Spot } from './patch-shape.ts';
import { type Patches, TIP, TRIANGLE } from './patches.ts';
import { type Transforms, transformsOf } from './powers.ts';

export class PatchScalar {
  readonly patches: Patches;
  readonly shape: PatchShape;
  readonly scalar: Scalar;
  private readonly transforms: Transforms;
  private readonly polynomials: (Float64Array | undefined)[] = [];
  private readonly latticeValues: (Float64Array | undefined)[] = [];
  private readonly layers: (Float64Array | undefined)[] = [];
  /** Value and derivatives of the polynomial evaluated last. */
  private f = 0;
  private fu = 0;
  private fv = 0;

  constructor(scalar: Scalar, patches: Patches) {
    this.scalar = scalar;
    this.patches = patches;
    this.shape = new PatchShape(patches);
    this.transforms = transformsOf(scalar.space);
  }

  /** Smallest and largest nodal value of a patch. */
  range(patch: number): readonly [number, number] {
    return rangeOf(this.nodal(patch));
  }

  /** The same of all chords of a layer. */
  layerRange(fan: number, layer: number): readonly [number, number] {
    return rangeOf(this.layer(fan, layer));
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
    this.shape.place(patch, u, v, spot);
    this.evaluate(this.polynomial(patch), patch, u, v);
    const { xu, xv, yu, yv } = spot;
    const determinant = xu * yv - xv * yu;
    spot.value = this.f;
    spot.gx = (this.fu * yv - this.fv * yu) / determinant;
    spot.gy = (this.fv * xu - this.fu * xv) / determinant;
  }

  private nodal(patch: number): Float64Array {
    const { patches, scalar } = this;
    if (patches.kind[patch] === TRIANGLE) return scalar.triangle(patch);
    if (patches.kind[patch] === TIP) return this.polynomial(patch);
    return this.onChord(this.layer(patches.fan[patch]!, patches.layer[patch]!), patches.chord[patch]!);
  }

  private layer(fan: number, layer: number): Float64Array {
    const key = fan * (this.patches.space.layerCount + 1) + layer;
    let values = this.layers[key];
    if (values === undefined) {
      values = this.scalar.fanLayer(fan, layer);
      this.layers[key] = values;
    }
    return values;
  }

  /** A layer's values on one chord: radial node by radial node, order + 1 each. */
  private onChord(layer: Float64Array, chord: number): Float64Array {
    const { radialNodes, reference } = this.patches.space;
    const width = reference.order + 1;
    const values = new Float64Array(radialNodes.length * width);
    for (let a = 0; a < radialNodes.length; a++) {
      const from = a * this.rimNodes(layer) + chord * reference.order;
      values.set(layer.subarray(from, from + width), a * width);
    }
    return values;
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
    const values = this.onChord(this.layer(fan, layer - 1), chord);
    const width = values.length / (last + 1);
    const rim = this.transforms.ofChord(values.subarray(last * width));
    return Float64Array.from([...rim, this.vertexValue(fan)]);
  }

  /**
   * The value that the scalar tends to at a fan's vertex: that of the ray along which it does not change, if there is one (the
   * potential along metal, the stream function along an insulating edge), else the mean of the two rays.
   */
  private vertexValue(fan: number): number {
    const first = this.layer(fan, 0);
    const [start, end] = [first[0]!, this.onLastRay(first)];
    const deep = this.layer(fan, this.patches.layers[fan]! - 1);
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

  /** The chord's polynomial at v/w, w = (1 - u)/2, going over linearly to the vertex's value. */
  private evaluateTip(c: Float64Array, u: number, v: number): void {
    const vertex = c[c.length - 1]!;
    const weight = (1 - u) / 2;
    const along = weight > 0 ? v / weight : 0;
    let row = 0;
    let slope = 0;
    for (let j = c.length - 2; j >= 0; j--) {
      slope = slope * along + row;
      row = row * along + c[j]!;
    }
    this.f = vertex + weight * (row - vertex);
    this.fu = (vertex - row + along * slope) / 2;
    this.fv = slope;
  }
}

function rangeOf(values: Float64Array): readonly [number, number] {
  let low = values[0]!;
  let high = low;
  for (let i = 1; i < values.length; i++) {
    const value = values[i]!;
    if (value < low) low = value;
    else if (value > high) high = value;
  }
  return [low, high];
}
