/** Takes what was read from a piece of text to where that piece stands now. */

/**
 * A copy of plain data, lists, maps and sets included, in which every place stands `by` further on: the `from` and `to` of spans and the
 * `at` of cut lines, where they are numbers. What was one object stays one.
 */
export function moved<T>(read: T, by: number): T {
  const copies = new Map<object, object>();
  const copyOf = (value: unknown): unknown => {
    if (typeof value !== 'object' || value === null) return value;
    const known = copies.get(value) ?? made(value);
    copies.set(value, known);
    return known;
  };
  const made = (value: object): object => {
    if (Array.isArray(value)) return value.map(copyOf);
    if (value instanceof Map) return new Map(Array.from(value, ([key, held]) => [key, copyOf(held)]));
    if (value instanceof Set) return new Set(Array.from(value, copyOf));
    const copy: Record<string, unknown> = {};
    for (const [key, held] of Object.entries(value)) {
      copy[key] = typeof held === 'number' && isPlace(key) ? held + by : copyOf(held);
    }
    return copy;
  };
  // A copy has the form of what it is copied from.
  return copyOf(read) as T;
}

const isPlace = (key: string): boolean => key === 'from' || key === 'to' || key === 'at';
