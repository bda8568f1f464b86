/** What the solving thread is asked for, and what it answers. All of it is plain data. */
import type { Ask, editing, Outcome, Setup, SolvedSetup } from '../../shared/index.ts';

export type Task =
  | { readonly kind: 'solve'; readonly setup: Setup; readonly ask: Ask }
  | { readonly kind: 'draw'; readonly setup: Setup; readonly solved: SolvedSetup | null };

/** `bytes` is about what the result takes in memory. */
export type Result =
  | { readonly kind: 'solve'; readonly outcome: Outcome; readonly bytes: number }
  | { readonly kind: 'draw'; readonly drawing: editing.EditorDrawing | null; readonly bytes: number };
