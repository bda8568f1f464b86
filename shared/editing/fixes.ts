/** Fixes that findings bring, at a place or for the whole sheet. */
import type { Finding, Fix, TextEdit } from '../findings/finding.ts';
import type { Span } from '../text/span.ts';
import { meets } from './place.ts';

export interface OfferedFix {
  readonly finding: Finding;
  readonly fix: Fix;
  /** True for a certain fix that is its finding's only one. */
  readonly preferred: boolean;
}

export function fixesAt(findings: readonly Finding[], range: Span): readonly OfferedFix[] {
  return findings
    .filter(({ span }) => meets(span, range))
    .flatMap((finding) =>
      finding.fixes.map((fix) => ({ finding, fix, preferred: fix.certain && finding.fixes.length === 1 })),
    );
}

/** The edits of all certain fixes; one that touches an earlier one waits for the next time. */
export function certainEdits(findings: readonly Finding[]): readonly TextEdit[] {
  const taken: TextEdit[] = [];
  for (const { fixes } of findings) {
    const fix = fixes.find(({ certain }) => certain);
    if (fix === undefined) continue;
    const free = fix.edits.every(({ span }) => taken.every((edit) => !meets(edit.span, span)));
    if (free) taken.push(...fix.edits);
  }
  return taken;
}
