/** Findings about inherited lines: said once where the line stands, and again only where the variation is the cause. */
import type { Block, Statement } from '../block/tree.ts';
import type { Finding, Fix } from '../findings/finding.ts';
import type { Span } from '../text/span.ts';
import { nameGiven } from './references.ts';
import { fixBy } from './report.ts';
import type { Setup } from './setup.ts';
import type { Writing } from './writing.ts';

interface Variation {
  readonly block: Block;
  /** The setup that the block is like. */
  readonly base: Setup | null;
  /** Of the block, inherited ones included. */
  readonly statements: readonly Statement[];
  readonly writing: Writing;
}

/**
 * Findings in other blocks are dropped where that block's setup has them too. Otherwise they are moved to the line of this block that
 * changes or moves what they speak of, or to its opening line.
 */
export function inheritedFindings(findings: readonly Finding[], variation: Variation): readonly Finding[] {
  const { block, base } = variation;
  const known = new Set((base?.findings ?? []).flatMap(keysOf));
  return findings.flatMap((found): readonly Finding[] => {
    if (within(found.span, block.excerpt.span)) return [found];
    if (known.has(keyOf(found, found.span))) return [];
    const cause = causeOf(found, variation);
    const related = [{ span: found.span, message: 'The inherited line stands here.' }, ...found.related];
    const span = cause?.span ?? block.head.like?.span ?? block.head.span;
    return [{ ...found, span, related, fixes: cause === null ? [] : fixesFor(found, cause, variation) }];
  });
}

const within = (inner: Span, outer: Span): boolean => inner.from >= outer.from && inner.to <= outer.to;

type Cause = Extract<Statement, { kind: 'change' | 'move' }>;

/** The line of the block that changes or moves the thing whose line the finding marks, or one that it relates to. */
function causeOf(found: Finding, { block, statements }: Variation): Cause | null {
  for (const { span } of [found, ...found.related]) {
    const marked = statements.find((s) => nameGiven(s) !== null && within(span, s.span));
    const name = marked === undefined ? null : nameGiven(marked);
    const cause = block.statements.find(
      (s): s is Cause => (s.kind === 'change' || s.kind === 'move') && s.name.text === name?.text,
    );
    if (cause !== undefined) return cause;
  }
  return null;
}

/** The fixes of an inherited line would change the other setup. A terminal that is missing can be given here. */
function fixesFor({ code }: Finding, { name, span }: Cause, { writing }: Variation): readonly Fix[] {
  if (code !== 'terminal-missing') return [];
  return ['positive', 'negative', 'floating'].map((terminal) => {
    const line = `change ${name.text} ${terminal}`;
    return fixBy(`Add ${line}`, [writing.lineAfter(span, line)]);
  });
}

const keyOf = ({ code, message }: Finding, { from, to }: Span): string => `${code} ${from} ${to} ${message}`;

/** A finding that was itself moved counts at its old place too. */
const keysOf = (found: Finding): readonly string[] =>
  [found.span, ...found.related.map(({ span }) => span)].map((span) => keyOf(found, span));
