/** Moves what a setup has on its paper by editing the line that gives its place. */
import type { Draft } from '../../checks/examine.ts';
import type { TextEdit } from '../../findings/finding.ts';

/** Edits, the handle they are about, and the same in words; or why nothing can be done. */
export type Moving =
  | { readonly edits: readonly TextEdit[]; readonly handle: string; readonly said: string }
  | { readonly refusal: string };

/** Moves a handle by whole mm: parts of a mm are rounded off. */
export function moveHandle(
  _draft: Draft,
  _block: number,
  id: string,
  _by_mm: readonly [number, number],
): Moving {
  return { refusal: `${id} cannot be moved yet.` };
}
