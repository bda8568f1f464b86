/** About what plain data takes in memory: strings by their length, numbers as eight bytes, records and lists with what holds them together. */
export function plainBytes(value: unknown): number {
  if (typeof value === 'string') return 16 + 2 * value.length;
  if (typeof value !== 'object' || value === null) return 8;
  if (ArrayBuffer.isView(value)) return 64 + value.byteLength;
  const held = Array.isArray(value) ? value : Object.values(value);
  return held.reduce((sum: number, part) => sum + plainBytes(part), 32);
}
