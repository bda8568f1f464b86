/** What the server and the thread that solves for it say to each other, and how each sees the other. */
import type { ResultOf, Task, TaskKind } from './tasks.ts';

export type Order =
  | { readonly kind: 'task'; readonly id: number; readonly task: Task }
  /** Not wanted now: to be left where it stands. */
  | { readonly kind: 'stop'; readonly id: number }
  /** Keys of all problems that are needed from now on. */
  | { readonly kind: 'keep'; readonly keys: readonly string[] };

export type Reply =
  /** `bytes` is about what the result takes in memory. */
  | {
      readonly kind: 'done';
      readonly id: number;
      readonly result: ResultOf<TaskKind>;
      readonly bytes: number;
    }
  | { readonly kind: 'stopped'; readonly id: number }
  /** A mistake of ours came out over it. */
  | { readonly kind: 'failed'; readonly id: number; readonly detail: string };

/** A thread seen from outside. */
export interface Thread {
  post(order: Order): void;
  /** No reply comes after this. */
  end(): void;
}

export interface Listener {
  replied(reply: Reply): void;
  /** Died without a reply. */
  lost(): void;
}
