/** A disc: a full circle of metal. */
import type { DiscShape } from '../../block/tree.ts';
import { circle, origin } from '../plane.ts';
import { type Form, solid, turnedForm } from './form.ts';

export function discForm({ diameter }: DiscShape): Form {
  const outer = circle(origin, diameter.value / 2);
  return turnedForm(solid(outer), outer, 0);
}
