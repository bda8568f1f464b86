/** Moves a handle in a text and tells which lines have changed. */
import { draftSheet } from '../../../shared/checks/examine.ts';
import { type Moving, moveHandle } from '../../../shared/editing/moving/move.ts';
import { probeLine } from '../../../shared/editing/moving/probe-line.ts';
import { edited } from '../cursor.ts';

export interface Move {
  readonly text: string;
  readonly id: string;
  readonly by: readonly [number, number];
  readonly block?: number;
}

/** The changed and the new lines; or why there are none. */
export function moved({ text, id, by, block = 0 }: Move): string {
  return changedLines(text, moveHandle(draftOf(text), block, id, by));
}

export function said({ text, id, by, block = 0 }: Move): string {
  const moving = moveHandle(draftOf(text), block, id, by);
  return 'refusal' in moving ? moving.refusal : moving.said;
}

export function probeAdded(text: string, at: readonly [number, number], block = 0): string {
  return changedLines(text, probeLine(draftOf(text), block, { x: at[0], y: at[1] }));
}

export const draftOf = (text: string) => draftSheet({ name: 'sheet.md', text });

function changedLines(text: string, moving: Moving): string {
  if ('refusal' in moving) return moving.refusal;
  const before = text.split('\n');
  const after = edited(text, moving.edits).split('\n');
  const added = after.length - before.length;
  const first = after.findIndex((line, i) => line !== before[i]);
  return after
    .filter((line, i) => (added === 0 ? line !== before[i] : i >= first && i < first + added))
    .join('\n');
}

/** A block of some lines under a paper and a supply. */
export const blockOf = (...lines: readonly string[]): string =>
  ['```electrodes', 'paper 240 mm × 160 mm', 'supply cell 1.5 V', ...lines, '```', ''].join('\n');
