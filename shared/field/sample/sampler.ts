/** Value and gradient of a scalar at any point of the bare paper. */
import type { Scalar } from '../solve/discrete.ts';
import { locator } from './locate.ts';
import { PatchScalar } from './patch-scalar.ts';
import { Spot } from './patch-shape.ts';
import { Patches, TIP } from './patches.ts';

export interface Sample {
  readonly value: number;
  /** Along x and y, per mm. Finite also at a singular vertex: that of its near surroundings. */
  readonly gradient: readonly [number, number];
}

export interface Sampler {
  /**
   * At (x, y) mm; null where there is no bare paper. Points within 1e-9 mm of a straight boundary, 1e-4 mm of a circular one, count
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
      // At the vertex itself (u = 1 of a tip) the map has no inverse.
      const u = patches.kind[place.patch] === TIP ? Math.min(place.u, 1 - 1e-6) : place.u;
      local.look(place.patch, u, place.v, spot);
      return { value: spot.value, gradient: [spot.gx, spot.gy] };
    },
  };
}
