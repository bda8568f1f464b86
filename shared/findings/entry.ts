/** A line of the catalogue of findings. */

/** `stop`: not a pupil practical as written. It cannot be silenced. */
export type Severity = 'stop' | 'error' | 'warning' | 'note';

export interface CatalogueEntry {
  readonly severity: Severity;
  readonly meaning: string;
  /** Published source of the rule, or "common practice, no source". */
  readonly source?: string;
}
