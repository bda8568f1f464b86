/** Sets that only grow together: which of the numbers 0 … n - 1 are tied to each other. */
// Indices are bounded by construction throughout, hence `a[i]!`.

export class UnionFind {
  private readonly parent: Int32Array;

  constructor(count: number) {
    this.parent = Int32Array.from({ length: count }, (_, i) => i);
  }

  /** The smallest number tied to i stands for the whole set. */
  find(i: number): number {
    const parent = this.parent;
    let x = i;
    while (parent[x] !== x) {
      parent[x] = parent[parent[x]!]!;
      x = parent[x]!;
    }
    return x;
  }

  tie(i: number, k: number): void {
    const a = this.find(i);
    const b = this.find(k);
    if (a < b) this.parent[b] = a;
    else this.parent[a] = b;
  }
}
