/** Solved scenes for tests of sampling and tracing. */
import type { Field } from '../../../shared/field/field.ts';
import type { Domain } from '../../../shared/field/problem.ts';
import { solveDomain } from '../../../shared/field/solve/solve-domain.ts';
import { disc, domainOfLoops, hole } from '../scenes.ts';

export function solved(domain: Domain, gap = 1e-5): Field {
  const outcome = solveDomain(domain, { gap, maxUnknowns: 60_000 });
  if (!outcome.ok) throw new Error(outcome.trouble.kind);
  return outcome.field;
}

/** Conductor potentials, null for a floating one, of which there may be one. */
export function potentials(field: Field, given: readonly (number | null)[]): Float64Array {
  const n = given.length;
  const floating = given.indexOf(null);
  const values = Float64Array.from(given, (value) => value ?? 0);
  if (floating < 0) return values;
  let current = 0;
  for (let k = 0; k < n; k++) current += field.upper_S[floating * n + k]! * values[k]!;
  values[floating] = -current / field.upper_S[floating * n + floating]!;
  return values;
}

/** Disc of 10 mm radius, 30 mm off the centre of a ring of 80 mm inner radius; 1000 Ω per square, disc at 1.5 V. */
export const eccentric = domainOfLoops([disc([0, 0], 80, 1), hole(disc([30, 0], 10, 0))], [1000, 1000]);

/**
 * Two opposite line currents at the limit points p, q with p q = b² and (p - d)(q - d) = a² make circles r = b and |x - d| = a
 * equipotentials: conduction shape factor of an eccentric cylinder, Incropera & DeWitt, Fundamentals of Heat and Mass Transfer, 6th
 * ed., table 4.1 case 7: S = 2π / acosh((b² + a² - d²)/(2ab)).
 */
export const eccentricForm = (() => {
  const [a, b, d] = [10, 80, 30];
  const sum = (b * b + d * d - a * a) / d;
  const p = (sum - Math.sqrt(sum * sum - 4 * b * b)) / 2;
  const q = sum - p;
  const shape = (2 * Math.PI) / Math.acosh((b * b + a * a - d * d) / (2 * a * b));
  const current_A = (1.5 / 1000) * shape;
  const per = (1.5 * shape) / (2 * Math.PI);
  const ratio = (x: number, y: number): number => Math.log(Math.hypot(x - q, y) / Math.hypot(x - p, y));
  const onRing = ratio(b, 0);
  return {
    current_A,
    potential: (x: number, y: number): number => per * (ratio(x, y) - onRing),
    /** Angle at which a field line leaves p, less that at which it would arrive from q; 2π stand for the whole current. */
    angle: (x: number, y: number): number => Math.atan2(y, x - p) - Math.atan2(y, x - q),
  };
})();
