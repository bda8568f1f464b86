/** What Papervolt has to say about a place in a text. Errors are values: every stage returns its findings beside its result. */
import type { Span } from '../text/span.ts';
import { catalogue, type FindingCode } from './catalogue.ts';
import type { CatalogueEntry, Severity } from './entry.ts';

export type { Severity };

export interface TextEdit {
  readonly span: Span;
  readonly text: string;
}

export interface Fix {
  /** What the fix does, as a menu entry: "Write 10 MΩ". */
  readonly title: string;
  readonly edits: readonly TextEdit[];
  /** True where the repair is certain and may be applied with others in one go. */
  readonly certain: boolean;
}

export interface Finding {
  readonly code: FindingCode;
  readonly severity: Severity;
  readonly span: Span;
  /** One or two plain sentences: what is wrong and, where it helps, by how much. */
  readonly message: string;
  /** What to do, one line each. */
  readonly hints: readonly string[];
  readonly fixes: readonly Fix[];
  readonly related: readonly { readonly span: Span; readonly message: string }[];
}

/** Everything a finding needs beyond its code, with the rare parts optional. */
export interface FindingParts {
  readonly span: Span;
  readonly message: string;
  readonly severity?: Severity;
  readonly hints?: readonly string[];
  readonly fixes?: readonly Fix[];
  readonly related?: readonly { readonly span: Span; readonly message: string }[];
}

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
