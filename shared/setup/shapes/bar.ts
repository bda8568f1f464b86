/** A bar: a rectangle, W along x and H along y before turning. */
import type { BarShape } from '../../block/tree.ts';
import { rectangle } from '../plane.ts';
import { type Form, solid, turnedForm } from './form.ts';

export function barForm({ size, place }: BarShape): Form {
  const outer = rectangle(size.width.value, size.height.value);
  return turnedForm(solid(outer), outer, place.turned?.value ?? 0);
}
