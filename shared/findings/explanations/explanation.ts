/** What is told about a finding beside its meaning: why it matters, how it looks wrong and right, and whether it may be left. */

export interface Explanation {
  /** For a teacher, in one to three sentences: what goes wrong where it stays. */
  readonly why: string;
  /** What `wrong` and `right` are cut from: lines of a block, text of a sheet (with its fences), or the file of a department. */
  readonly from: 'block' | 'sheet' | 'department';
  /** Null where no text of a few lines has the finding. */
  readonly wrong: string | null;
  /** The same, mended. */
  readonly right: string | null;
  /** What the department's file has to say for the finding to be made. */
  readonly department?: string;
  /** A reason for which the finding may be left as it is; null where it can only be mended. */
  readonly allow: string | null;
}

export function lines(...written: readonly string[]): string {
  return written.join('\n');
}
