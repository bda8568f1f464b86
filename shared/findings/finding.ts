/** What Papervolt has to say about a place in a text. Errors are values: every stage returns its findings beside its result. */
import type { Span } from '../text/span.ts';
import type { FindingCode } from './catalogue.ts';

/** `stop`: not a pupil practical as written. It cannot be silenced. */
export type Severity = 'stop' | 'error' | 'warning' | 'note';

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
