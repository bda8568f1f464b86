/** What a part of a block says, without where it stands and without some of its fields: parts of one key mean the same. */
export function statementKey(node: unknown, ...without: readonly string[]): string {
  const omitted = new Set(['span', ...without]);
  return JSON.stringify(node, (key, value: unknown) => (omitted.has(key) ? undefined : value));
}
