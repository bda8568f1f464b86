/** What several setups say of one place is said once: lines that a setup inherits are those of another block. */
import type { Finding } from '../../findings/finding.ts';

export function oncePerPlace(findings: readonly Finding[]): readonly Finding[] {
  const seen = new Set<string>();
  return findings.filter(({ code, span: { from, to } }) => {
    const key = `${code} ${from} ${to}`;
    return !seen.has(key) && seen.add(key);
  });
}
