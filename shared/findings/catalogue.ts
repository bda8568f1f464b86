/**
 * The catalogue of findings: every code with its usual severity and its meaning in one line. Codes are lower-case words. One table
 * a room, so that a new finding touches the room that makes it.
 */
import { blockCodes } from './block-codes.ts';
import { checkCodes } from './check-codes.ts';
import type { Finding, FindingParts, Severity } from './finding.ts';
import { setupCodes } from './setup-codes.ts';
import { sheetCodes } from './sheet-codes.ts';

export interface CatalogueEntry {
  readonly severity: Severity;
  readonly meaning: string;
  /** Published source of the rule, or "common practice, no source". */
  readonly source?: string;
}

export const catalogue = {
  ...blockCodes,
  ...setupCodes,
  ...sheetCodes,
  ...checkCodes,
} as const satisfies Record<string, CatalogueEntry>;

export type FindingCode = keyof typeof catalogue;

/** A finding with the catalogue's severity unless another is given. */
export function finding(code: FindingCode, parts: FindingParts): Finding {
  const entry: CatalogueEntry = catalogue[code];
  return {
    code,
    severity: parts.severity ?? entry.severity,
    span: parts.span,
    message: parts.message,
    hints: parts.hints ?? [],
    fixes: parts.fixes ?? [],
    related: parts.related ?? [],
  };
}
