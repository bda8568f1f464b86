/** Value and gradient of a scalar at any point of the bare paper. */
import type { Scalar } from '../solve/discrete.ts';
import { locator } from './locate.ts';
import { PatchScalar } from './patch-scalar.ts';
import { Spot } from './patch-shape.ts';
import { Patches } from './patches.ts';

export interface Sample {
  readonly value: number;
  /** Along x and y, per mm. Finite also at a singular vertex: that of its near surroundings. */
  readonly gradient: readonly [number, number];
}

export interface Sampler {
  /**
   * At (x, y) mm; null where there is no bare paper, or paper that no conductor touches. Points within 1e-9 mm of a straight boundary, 2e-6 mm of a circular one, count
   * as on it. On a slit it is one side's value that comes.
   */
  at(x: number, y: number): Sample | null;
}

/** Fans are sampled down to this radius, mm. */
const SAMPLED_TIP_MM = 1e-8;

export function sampler(scalar: Scalar): Sampler {
  const patches = new Patches(scalar.space, SAMPLED_TIP_MM, 1);
  const local = new PatchScalar(scalar, patches);
  const locate = locator(local.shape);
  const spot = new Spot();
  return {
    at: (x, y) => {
      const place = locate(x, y);
      if (place === null) return null;
      local.look(place.patch, place.u, place.v, spot);
      if (Number.isNaN(spot.value)) return null;
      return { value: spot.value, gradient: [spot.gx, spot.gy] };
    },
  };
}
