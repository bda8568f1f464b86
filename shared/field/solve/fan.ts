/**
 * The corner fan: one dense element on its rim that stands for all layers of a geometric refinement toward a singular vertex.
 *
 * Inside the fan a point is x = e^-t ρ(s), ρ on the rim chord from a to b. With d = b - a, c = |a × b| the energy of isotropic unit
 * conductivity is
 *   ∫∫ (|d|² u_t² + 2 ρ·d u_t u_s + |ρ|² u_s²) / c  ds dt,
 * free of t: every layer of equal depth has one and the same stiffness [A B; Bᵀ C] on its outer and inner rim. Eliminating the
 * middle of two equal layers gives the block of one layer twice as deep.
 */
// Indices are bounded by construction throughout, hence `a[i]!`.
import { partialCholesky, solveLower, solveUpper } from './dense.ts';
import { gaussLobattoPoints, gaussRule, lagrangeTable } from './gauss.ts';

/** Depth of a layer in t = ln(rim radius / radius). */
export const LAYER_DEPTH = 0.5;
/**
 * Seven doublings make 128 layers. The tip, e^-64 of the radius, counts as one point: even in the sharpest corner of all (metal along
 * one side of a slit, V ~ r^¼) that changes the energy by e^-32.
 */
const DOUBLINGS = 7;
export const LAYER_COUNT = 2 ** DOUBLINGS;

/** Radial polynomial order of a layer for triangles of order p. */
export function radialOrder(order: number): number {
  return Math.max(2, Math.ceil(order / 2) + 1);
}

/** What a fan's matrix depends on, scale and turn apart. */
export interface FanShape {
  readonly order: number;
  /** Rim vertices from ray 0 to ray 1, (x, y) each, first one at (1, 0); rounded, so that equal shapes are equal to the bit. */
  readonly rim: Float64Array;
  /** Whether the unknown is constant along ray 0 and along ray 1. */
  readonly held0: boolean;
  readonly held1: boolean;
}

/** A fan with everything below its rim eliminated, for unit conductivity. */
export interface FanElement {
  readonly shape: FanShape;
  /** Rim nodes: chords × order + 1. */
  readonly rimNodes: number;
  /** Row-major rimNodes × rimNodes. A held ray's constant is carried by the rim node on that ray (`tie`). */
  readonly stiffness: Float64Array;
  /** Rim node that carries the constant of the held rays, or -1. */
  readonly tie: number;
  /** Rim nodes that vary against the constant: from `first` on, `free` of them. */
  readonly first: number;
  readonly free: number;
  /** From the values on one layer's outer rim to those on its inner rim, free × free. */
  readonly transfer: Float64Array;
  /** Front of one layer after the elimination of its inner radial nodes, `frontSize` rows: inner nodes, outer rim, inner rim. */
  readonly front: Float64Array;
  readonly frontSize: number;
}

/** Keeps fans by shape. What it holds never changes a result: an element is a function of its shape to the bit. */
export interface FanStore {
  get(key: string): FanElement | undefined;
  set(key: string, element: FanElement): void;
}

/** A store that forgets its oldest elements beyond a limit of numbers held. */
export function fanStore(limit: number): FanStore {
  const elements = new Map<string, FanElement>();
  let held = 0;
  const count = ({ stiffness, transfer, front }: FanElement): number =>
    stiffness.length + transfer.length + front.length;
  return {
    get: (key) => elements.get(key),
    set: (key, element) => {
      elements.set(key, element);
      held += count(element);
      for (const [oldest, old] of elements) {
        if (held <= limit || elements.size === 1) break;
        elements.delete(oldest);
        held -= count(old);
      }
    },
  };
}

/** The shape of a rim given by its vertices relative to the fan's vertex. */
export function fanShape(
  order: number,
  rim: ArrayLike<number>,
  held: { held0: boolean; held1: boolean },
): FanShape {
  const x0 = rim[0]!;
  const y0 = rim[1]!;
  const square = x0 * x0 + y0 * y0;
  const turned = new Float64Array(rim.length);
  for (let i = 0; i < rim.length; i += 2) {
    turned[i] = rounded((rim[i]! * x0 + rim[i + 1]! * y0) / square);
    turned[i + 1] = rounded((rim[i + 1]! * x0 - rim[i]! * y0) / square);
  }
  return { order, rim: turned, held0: held.held0, held1: held.held1 };
}

/** Multiples of 2^-41, half a part in 10^12 of the fan's radius. */
function rounded(value: number): number {
  return Math.round(value * 2 ** 41) / 2 ** 41;
}

/** The element of a shape, from the store if it holds one; null if the shape is degenerate. */
export function fanElement(shape: FanShape, store: FanStore): FanElement | null {
  const key = `${shape.order} ${shape.held0 ? 1 : 0}${shape.held1 ? 1 : 0} ${shape.rim.join(' ')}`;
  const found = store.get(key);
  if (found !== undefined) return found;
  const element = condense(shape);
  if (element !== null) store.set(key, element);
  return element;
}

function condense(shape: FanShape): FanElement | null {
  const { order, rim, held0, held1 } = shape;
  const rimNodes = (rim.length / 2 - 1) * order + 1;
  const first = held0 ? 1 : 0;
  const free = (held1 ? rimNodes - 1 : rimNodes) - first;
  const tie = held0 ? 0 : held1 ? rimNodes - 1 : -1;
  const { front, size } = layerFront(shape, first, free);
  const radial = radialOrder(order);
  const inner = free * (radial - 1);
  if (!partialCholesky(front, 0, size, inner)) return null;
  const block = (row: number, column: number): Float64Array =>
    symmetricBlock(front, size, [inner + row * free, inner + column * free], free);
  let rings: Rings | null = { a: block(0, 0), b: block(0, 1), c: block(1, 1) };
  const layer = rings;
  for (let doubling = 0; doubling < DOUBLINGS; doubling++) {
    rings = doubled(rings, free);
    if (rings === null) return null;
  }
  const condensed = tie < 0 ? tipJoined(rings, free) : rings.a;
  const transfer = rimTransfer(layer, condensed, free);
  if (transfer === null) return null;
  const stiffness = onRim({ condensed, free, first, rimNodes, tie });
  return { shape, rimNodes, stiffness, tie, first, free, transfer, front, frontSize: size };
}

/** Below an outer rim w the next rim is w' = -(C + S)⁻¹ Bᵀ w, S the stiffness of all that lies below it. */
function rimTransfer({ b, c }: Rings, condensed: Float64Array, n: number): Float64Array | null {
  const sum = c.map((value, i) => value + condensed[i]!);
  if (!partialCholesky(sum, 0, n, n)) return null;
  const transfer = new Float64Array(n * n);
  for (let j = 0; j < n; j++) {
    const column = b.slice(j * n, (j + 1) * n).map((value) => -value);
    solveLower(sum, n, column);
    solveUpper(sum, n, column);
    for (let i = 0; i < n; i++) transfer[i * n + j] = column[i]!;
  }
  return transfer;
}

/** Stiffness [A B; Bᵀ C] between an outer rim (first) and an inner one. */
interface Rings {
  readonly a: Float64Array;
  readonly b: Float64Array;
  readonly c: Float64Array;
}

/** Two equal stacks of layers on top of each other, their common rim eliminated first. */
function doubled({ a, b, c }: Rings, n: number): Rings | null {
  const size = 3 * n;
  const front = new Float64Array(size * size);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      front[i * size + j] = c[i * n + j]! + a[i * n + j]!;
      front[(n + i) * size + j] = b[i * n + j]!;
      front[(n + i) * size + n + j] = a[i * n + j]!;
      front[(2 * n + i) * size + j] = b[j * n + i]!;
      front[(2 * n + i) * size + 2 * n + j] = c[i * n + j]!;
    }
  }
  if (!partialCholesky(front, 0, size, n)) return null;
  return {
    a: symmetricBlock(front, size, [n, n], n),
    b: symmetricBlock(front, size, [n, 2 * n], n),
    c: symmetricBlock(front, size, [2 * n, 2 * n], n),
  };
}

/** Block at (row, column) of a symmetric matrix of which the lower triangle is stored. */
function symmetricBlock(
  matrix: Float64Array,
  size: number,
  [row, column]: [number, number],
  n: number,
): Float64Array {
  const block = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      const [r, c] = row + i >= column + j ? [row + i, column + j] : [column + j, row + i];
      block[i * n + j] = matrix[r * size + c]!;
    }
  }
  return block;
}

/** No held ray: the tip is one free constant, S = A - (B 1)(B 1)ᵀ / (1ᵀ C 1). */
function tipJoined({ a, b, c }: Rings, n: number): Float64Array {
  const toTip = new Float64Array(n);
  let tip = 0;
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      toTip[i]! += b[i * n + j]!;
      tip += c[i * n + j]!;
    }
  }
  const joined = Float64Array.from(a);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) joined[i * n + j]! -= (toTip[i]! * toTip[j]!) / tip;
  }
  return joined;
}

/** From values against the constant of the held rays to values: every row sums to zero. */
function onRim(from: {
  condensed: Float64Array;
  free: number;
  first: number;
  rimNodes: number;
  tie: number;
}): Float64Array {
  const { condensed, free, first, rimNodes, tie } = from;
  const full = new Float64Array(rimNodes * rimNodes);
  for (let i = 0; i < free; i++) {
    const row = (first + i) * rimNodes;
    let sum = 0;
    for (let j = 0; j < free; j++) {
      if (tie < 0 && j === i) continue;
      full[row + first + j] = condensed[i * free + j]!;
      sum += condensed[i * free + j]!;
    }
    if (tie < 0) {
      full[row + first + i] = -sum;
    } else {
      full[row + tie] = -sum;
      full[tie * rimNodes + first + i] = -sum;
      full[tie * rimNodes + tie]! += sum;
    }
  }
  return full;
}

/**
 * One layer before elimination. Unknowns: radial node a (0 outer, last inner) times free rim node i, ordered inner radial nodes,
 * outer rim, inner rim. Over one chord the stiffness is
 *   K(a i, b j) = ∂t∂t(a,b) |d|²(i,j) + ∂t·(a,b) ρ·d(i,j') + ∂t·(b,a) ρ·d(j,i') + ··(a,b) |ρ|²(i',j')
 * with radial integrals times rim integrals; a prime marks ∂_s.
 */
function layerFront(shape: FanShape, first: number, free: number): { front: Float64Array; size: number } {
  const { order, rim } = shape;
  const radial = radialIntegrals(radialOrder(order));
  const levels = radial.levels;
  const size = free * levels;
  const front = new Float64Array(size * size);
  const start = (a: number): number => (a === 0 ? levels - 2 : a === levels - 1 ? a : a - 1) * free;
  const nodes = order + 1;
  const table = rimTable(order);
  for (let chord = 0; 2 * chord + 2 < rim.length; chord++) {
    const { dd, pd, pp } = chordIntegrals(rim.subarray(2 * chord, 2 * chord + 4), table);
    for (let ij = 0; ij < nodes * nodes; ij++) {
      const i = Math.floor(ij / nodes);
      const j = ij % nodes;
      const row = chord * order + i - first;
      const column = chord * order + j - first;
      if (row < 0 || row >= free || column < 0 || column >= free) continue;
      const ji = j * nodes + i;
      for (let ab = 0; ab < levels * levels; ab++) {
        const a = Math.floor(ab / levels);
        const b = ab % levels;
        front[(start(a) + row) * size + start(b) + column]! +=
          radial.slopes[ab]! * dd[ij]! +
          radial.mixed[ab]! * pd[ij]! +
          radial.mixed[b * levels + a]! * pd[ji]! +
          radial.masses[ab]! * pp[ij]!;
      }
    }
  }
  return { front, size };
}

/** ∫ l_a' l_b', ∫ l_a' l_b and ∫ l_a l_b over a layer 0 ≤ t ≤ LAYER_DEPTH. */
function radialIntegrals(order: number): {
  levels: number;
  slopes: Float64Array;
  mixed: Float64Array;
  masses: Float64Array;
} {
  const rule = gaussRule(order + 1);
  const { values, derivatives, nodes: levels } = lagrangeTable(gaussLobattoPoints(order), rule.points);
  const slopes = new Float64Array(levels * levels);
  const mixed = new Float64Array(levels * levels);
  const masses = new Float64Array(levels * levels);
  for (let k = 0; k < rule.points.length; k++) {
    const weight = rule.weights[k]!;
    for (let ab = 0; ab < levels * levels; ab++) {
      const a = k * levels + Math.floor(ab / levels);
      const b = k * levels + (ab % levels);
      slopes[ab]! += (weight * derivatives[a]! * derivatives[b]! * 2) / LAYER_DEPTH;
      mixed[ab]! += weight * derivatives[a]! * values[b]!;
      masses[ab]! += (weight * values[a]! * values[b]! * LAYER_DEPTH) / 2;
    }
  }
  return { levels, slopes, mixed, masses };
}

/** The rim basis of a chord at Gauss points enough for products with |ρ|². */
function rimTable(order: number) {
  const rule = gaussRule(order + 2);
  return { ...lagrangeTable(gaussLobattoPoints(order), rule.points), rule };
}

/** ∫ |d|²/c l_i l_j ds, ∫ ρ·d/c l_i ∂_s l_j ds, ∫ |ρ|²/c ∂_s l_i ∂_s l_j ds over the chord from (ax, ay) to (bx, by). */
function chordIntegrals(ends: Float64Array, table: ReturnType<typeof rimTable>) {
  const [ax, ay, bx, by] = [ends[0]!, ends[1]!, ends[2]!, ends[3]!];
  const [dx, dy] = [bx - ax, by - ay];
  const c = ax * by - ay * bx;
  const n = table.nodes;
  const dd = new Float64Array(n * n);
  const pd = new Float64Array(n * n);
  const pp = new Float64Array(n * n);
  for (let k = 0; k < table.rule.points.length; k++) {
    const s = (1 + table.rule.points[k]!) / 2;
    const weight = table.rule.weights[k]! / c;
    const x = ax + s * dx;
    const y = ay + s * dy;
    for (let ij = 0; ij < n * n; ij++) {
      const i = k * n + Math.floor(ij / n);
      const j = k * n + (ij % n);
      // ds = dξ/2 and ∂_s = 2 ∂_ξ for ξ in [-1, 1].
      dd[ij]! += (weight / 2) * (dx * dx + dy * dy) * table.values[i]! * table.values[j]!;
      pd[ij]! += weight * (x * dx + y * dy) * table.values[i]! * table.derivatives[j]!;
      pp[ij]! += weight * 2 * (x * x + y * y) * table.derivatives[i]! * table.derivatives[j]!;
    }
  }
  return { dd, pd, pp };
}
