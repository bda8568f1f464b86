/** Recursive bisection of the elements: the order in which fronts meet. Depends on the mesh alone, so both problems and all orders share it. */
// Indices are bounded by construction throughout, hence `a[i]!`.

/** A binary tree of ranges over `order`, children before parents; node n covers places from[n] … to[n] - 1. */
export interface Dissection {
  readonly order: Int32Array;
  readonly from: Int32Array;
  readonly to: Int32Array;
  /** Children, or -1 for the leaves of one element. */
  readonly left: Int32Array;
  readonly right: Int32Array;
}

export interface ElementGraph {
  /** Elements to arrange. */
  readonly active: Int32Array;
  /** Centres of all elements. */
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly neighbourStart: Int32Array;
  readonly neighbours: Int32Array;
}

/** Below this size any cut is as good as another, and the longer side decides. */
const SMALL = 8;

/** Halves each set of elements across x, y, x + y or x - y, whichever cuts the fewest neighbours apart. */
export function dissect(graph: ElementGraph): Dissection {
  const order = Int32Array.from(graph.active);
  const directions = [
    graph.x,
    graph.y,
    graph.x.map((x, i) => x + graph.y[i]!),
    graph.x.map((x, i) => x - graph.y[i]!),
  ];
  const nodes = 2 * order.length - 1;
  const [from, to] = [new Int32Array(nodes), new Int32Array(nodes)];
  const [left, right] = [new Int32Array(nodes).fill(-1), new Int32Array(nodes).fill(-1)];
  const side = new Int32Array(graph.x.length).fill(-1);
  let made = 0;
  let stamp = 0;
  const halve = (low: number, high: number): number => {
    let children: [number, number] = [-1, -1];
    if (high - low > 1) {
      const middle = (low + high) >> 1;
      if (high - low < SMALL) select(order, { low, high, middle }, longerSide(order, low, high, graph));
      else chooseCut(low, middle, high);
      children = [halve(low, middle), halve(middle, high)];
    }
    [from[made], to[made]] = [low, high];
    [left[made], right[made]] = children;
    return made++;
  };
  const chooseCut = (low: number, middle: number, high: number): void => {
    let best = 0;
    let fewest = Number.POSITIVE_INFINITY;
    for (let d = 0; d < directions.length; d++) {
      select(order, { low, high, middle }, directions[d]!);
      stamp++;
      for (let i = middle; i < high; i++) side[order[i]!] = stamp;
      const cut = countCut(order.subarray(low, middle), side, stamp, graph);
      if (cut < fewest) [best, fewest] = [d, cut];
    }
    select(order, { low, high, middle }, directions[best]!);
  };
  halve(0, order.length);
  return { order, from, to, left, right };
}

function countCut(half: Int32Array, side: Int32Array, stamp: number, graph: ElementGraph): number {
  let cut = 0;
  for (let i = 0; i < half.length; i++) {
    const end = graph.neighbourStart[half[i]! + 1]!;
    for (let k = graph.neighbourStart[half[i]!]!; k < end; k++) {
      if (side[graph.neighbours[k]!] === stamp) cut++;
    }
  }
  return cut;
}

function longerSide(order: Int32Array, low: number, high: number, graph: ElementGraph): Float64Array {
  let [x0, x1] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  let [y0, y1] = [x0, x1];
  for (let i = low; i < high; i++) {
    x0 = Math.min(x0, graph.x[order[i]!]!);
    x1 = Math.max(x1, graph.x[order[i]!]!);
    y0 = Math.min(y0, graph.y[order[i]!]!);
    y1 = Math.max(y1, graph.y[order[i]!]!);
  }
  return x1 - x0 > y1 - y0 ? graph.x : graph.y;
}

/** Hoare's selection: places low … middle - 1 get the smaller keys, middle … high - 1 the larger. */
function select(
  order: Int32Array,
  range: { readonly low: number; readonly high: number; readonly middle: number },
  key: Float64Array,
): void {
  let { low, high } = range;
  const { middle } = range;
  while (high - low > 1) {
    const pivot = key[order[(low + high) >> 1]!]!;
    let i = low;
    let j = high - 1;
    while (i <= j) {
      while (key[order[i]!]! < pivot) i++;
      while (key[order[j]!]! > pivot) j--;
      if (i <= j) {
        const kept = order[i]!;
        order[i++] = order[j]!;
        order[j--] = kept;
      }
    }
    if (middle <= j) high = j + 1;
    else if (middle >= i) low = i;
    else return;
  }
}
