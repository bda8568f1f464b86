/** Findings about inherited lines: said once where the line stands, and again only where the variation is the cause. */
import type { Block } from '../block/tree.ts';
import type { Finding } from '../findings/finding.ts';
import type { Setup } from './setup.ts';

/** Findings in other blocks are dropped where that block's setup has them too, otherwise moved to the opening line of this one. */
export function inheritedFindings(
  findings: readonly Finding[],
  block: Block,
  base: Setup | null,
): readonly Finding[] {
  const known = new Set((base?.findings ?? []).flatMap(keysOf));
  return findings.flatMap((found): readonly Finding[] => {
    const own = found.span.from >= block.excerpt.span.from && found.span.to <= block.excerpt.span.to;
    if (own) return [found];
    if (known.has(keyOf(found, found.span))) return [];
    const at = block.head.like?.span ?? block.head.span;
    const related = [{ span: found.span, message: 'The inherited line stands here.' }, ...found.related];
    return [{ ...found, span: at, related, fixes: [] }];
  });
}

const keyOf = ({ code, message }: Finding, { from, to }: Finding['span']): string =>
  `${code} ${from} ${to} ${message}`;

/** A finding that was itself moved counts at its old place too. */
const keysOf = (found: Finding): readonly string[] =>
  [found.span, ...found.related.map(({ span }) => span)].map((span) => keyOf(found, span));
