/** Back into the fan: the values on its layers from those on its rim. */
// Indices are bounded by construction throughout, hence `a[i]!`.
import { solveUpper } from './dense.ts';
import { type FanElement, radialOrder } from './fan.ts';

/**
 * Nodal values on layers 0, 1, … of a fan, found one after the other as they are asked for. Under a rim w (against the constant of
 * the held rays) the next layer's rim is w' = -(C + S)⁻¹ Bᵀ w, S the stiffness of all that lies below.
 */
export class FanLayers {
  private readonly element: FanElement;
  private readonly constant: number;
  /** Values on the outer rim of each layer reached so far, against the constant. */
  private readonly rims: Float64Array[];

  constructor(element: FanElement, rimValues: Float64Array) {
    const { tie, first, free } = element;
    this.element = element;
    this.constant = tie < 0 ? 0 : rimValues[tie]!;
    this.rims = [rimValues.slice(first, first + free).map((value) => value - this.constant)];
  }

  /** Radial node a (0 outer) times rim node i at a × rimNodes + i. */
  layer(layer: number): Float64Array {
    while (this.rims.length < layer + 2) this.rims.push(this.inward(this.rims[this.rims.length - 1]!));
    const outer = this.rims[layer]!;
    const inner = this.rims[layer + 1]!;
    const { rimNodes, first, free, shape } = this.element;
    const radial = radialOrder(shape.order);
    const between = this.between(outer, inner);
    const values = new Float64Array((radial + 1) * rimNodes).fill(this.constant);
    for (let a = 0; a <= radial; a++) {
      const source = a === 0 ? outer : a === radial ? inner : between.subarray((a - 1) * free, a * free);
      for (let i = 0; i < free; i++) values[a * rimNodes + first + i]! += source[i]!;
    }
    return values;
  }

  private inward(outer: Float64Array): Float64Array {
    const n = this.element.free;
    const { transfer } = this.element;
    const inner = new Float64Array(n);
    for (let i = 0; i < n; i++) {
      let sum = 0;
      for (let j = 0; j < n; j++) sum += transfer[i * n + j]! * outer[j]!;
      inner[i] = sum;
    }
    return inner;
  }

  /** Inner radial nodes y of one layer from its eliminated front: L11ᵀ y = -L21ᵀ (outer, inner). */
  private between(outer: Float64Array, inner: Float64Array): Float64Array {
    const { front, frontSize, free } = this.element;
    const count = frontSize - 2 * free;
    const values = new Float64Array(count);
    for (let i = 0; i < 2 * free; i++) {
      const row = (count + i) * frontSize;
      const value = i < free ? outer[i]! : inner[i - free]!;
      for (let j = 0; j < count; j++) values[j]! -= front[row + j]! * value;
    }
    solveUpper(front, frontSize, values, count);
    return values;
  }
}
