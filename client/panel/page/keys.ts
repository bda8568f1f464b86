/** What a key means in the panel, on the paper and on what lies there. */
import type { Point } from './coordinates.ts';

export type Intent =
  | { readonly kind: 'step'; readonly by: Point }
  | { readonly kind: 'go to its line' }
  | { readonly kind: 'add a probe' }
  | { readonly kind: 'escape' };

export interface Key {
  readonly key: string;
  readonly shift: boolean;
  /** Control, Alt or the system's key: then it is not for us. */
  readonly modified: boolean;
}

const directions: Readonly<Record<string, Point>> = {
  ArrowLeft: { x: -1, y: 0 },
  ArrowRight: { x: 1, y: 0 },
  ArrowUp: { x: 0, y: 1 },
  ArrowDown: { x: 0, y: -1 },
};

/** One millimetre; with the shift key ten. */
export function intentOf({ key, shift, modified }: Key, on: 'paper' | 'handle'): Intent | null {
  if (modified) return null;
  const direction = directions[key];
  if (direction !== undefined) {
    const size = shift ? 10 : 1;
    return { kind: 'step', by: { x: size * direction.x + 0, y: size * direction.y + 0 } };
  }
  if (key === 'Escape') return { kind: 'escape' };
  if (key === 'Enter') return { kind: on === 'handle' ? 'go to its line' : 'add a probe' };
  if (key === 'p' || key === 'P') return on === 'paper' ? { kind: 'add a probe' } : null;
  return null;
}
