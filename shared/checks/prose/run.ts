/** A run of prose with the way back to the file, and the mends that can be made in it. */
import type { Fix, TextEdit } from '../../findings/finding.ts';
import type { Span } from '../../text/span.ts';

export interface Run {
  readonly kind: 'paragraph' | 'heading' | 'cell' | 'caption';
  /** As its reader sees it; see `clean-text.ts`. */
  readonly text: string;
  /** Offset in the file of a character. */
  at(index: number): number;
}

/** A table of Markdown. */
export interface ProseTable {
  readonly head: readonly Run[];
  /** The rows below the heading. */
  readonly rows: readonly (readonly Run[])[];
}

/** Another text for a part of a run. */
export interface Change {
  readonly run: Run;
  readonly from: number;
  readonly to: number;
  readonly text: string;
}

/** In the file, of a part that is not empty. */
export function spanOf(run: Run, from: number, to: number): Span {
  return { from: run.at(from), to: run.at(Math.max(from, to - 1)) + 1 };
}

/** The changes as one fix; none where markup or a line break lies inside one of them. */
export function fix(title: string, changes: readonly Change[], certain: boolean): readonly Fix[] {
  const edits: TextEdit[] = [];
  for (const change of changes) {
    if (change.run.text.slice(change.from, change.to) === change.text) continue;
    const edit = editOf(change);
    if (edit === null) return [];
    edits.push(edit);
  }
  return edits.length === 0 ? [] : [{ title, edits, certain }];
}

/** Without what stays at both ends. */
function editOf({ run, from, to, text }: Change): TextEdit | null {
  const old = run.text.slice(from, to);
  let head = 0;
  while (head < old.length && head < text.length && old.charAt(head) === text.charAt(head)) head++;
  let tail = 0;
  const most = Math.min(old.length, text.length) - head;
  while (tail < most && old.charAt(old.length - 1 - tail) === text.charAt(text.length - 1 - tail)) tail++;
  const inner = text.slice(head, text.length - tail);
  return head + tail === old.length
    ? insertion(run, from + head, inner)
    : replacement(run, from + head, to - tail, inner);
}

function insertion(run: Run, index: number, text: string): TextEdit | null {
  const before = index > 0 ? run.at(index - 1) + 1 : run.at(index);
  const atEnd = index >= run.text.length || run.text.charAt(index) === '\n';
  if (!atEnd && run.at(index) !== before) return null;
  return { span: { from: before, to: before }, text };
}

function replacement(run: Run, from: number, to: number, text: string): TextEdit | null {
  const span = spanOf(run, from, to);
  const whole = span.to - span.from === to - from && !run.text.slice(from, to).includes('\n');
  return whole ? { span, text } : null;
}
