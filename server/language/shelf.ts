/** Things by key with room for so many bytes: what has not been used for longest goes first. */
export class Shelf<V> {
  /** In order of use. */
  private readonly kept = new Map<string, { readonly value: V; readonly bytes: number }>();
  private readonly most: number;
  private used = 0;

  /** `most`: bytes. */
  constructor(most: number) {
    this.most = most;
  }

  get bytes(): number {
    return this.used;
  }

  get size(): number {
    return this.kept.size;
  }

  has(key: string): boolean {
    return this.kept.has(key);
  }

  get(key: string): V | null {
    const found = this.kept.get(key);
    if (found === undefined) return null;
    this.kept.delete(key);
    this.kept.set(key, found);
    return found.value;
  }

  /** The newest stays, however large it is. */
  put(key: string, value: V, bytes: number): void {
    this.drop(key);
    this.kept.set(key, { value, bytes });
    this.used += bytes;
    for (const [oldest] of this.kept) {
      if (this.used <= this.most || oldest === key) break;
      this.drop(oldest);
    }
  }

  drop(key: string): void {
    this.used -= this.kept.get(key)?.bytes ?? 0;
    this.kept.delete(key);
  }

  keepOnly(wanted: (key: string) => boolean): void {
    for (const key of [...this.kept.keys()]) if (!wanted(key)) this.drop(key);
  }
}
