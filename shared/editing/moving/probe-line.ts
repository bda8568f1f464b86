/** Adds a probe at a place of the paper: its line, with the next free letter. */
import type { Draft } from '../../checks/examine.ts';
import type { Point } from '../../field/geometry/outline.ts';
import type { Moving } from './move.ts';

/** `at` in mm on the paper; the probe stands on whole mm. */
export function probeLine(_draft: Draft, _block: number, _at: Point): Moving {
  return { refusal: 'No probe can be added yet.' };
}
