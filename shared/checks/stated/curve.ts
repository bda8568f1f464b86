/**
 * A potential between two places where it is known, by the cubic through both values with both slopes (Hermite). With h the interval and
 * t the part of it gone by, m the slopes times h:
 *
 *     V(t) = (1 + 2t)(1 − t)² V₀ + t(1 − t)² m₀ + t²(3 − 2t) V₁ − t²(1 − t) m₁
 */
export interface CurvePoint {
  readonly distance_mm: number;
  /** Null where nothing is known. */
  readonly value_V: number | null;
  /** Along the curve; null on metal. */
  readonly slope_V_per_mm: number | null;
  readonly uncertainty_V: number;
}

/** Of the cubic's way off the straight line, that part is taken as its possible error; all of it where a slope is missing. */
const errorPart = 0.1;

/** Points in order of distance; null beyond them and beside places where nothing is known. */
export function along(
  points: readonly CurvePoint[],
  d: number,
): { readonly value_V: number; readonly uncertainty_V: number } | null {
  const i = points.findIndex(({ distance_mm }) => distance_mm >= d - 1e-6);
  const [a, b] = [points[Math.max(0, i - 1)], points[i]];
  if (a === undefined || b === undefined || a.value_V === null || b.value_V === null) return null;
  const h = b.distance_mm - a.distance_mm;
  if (h <= 0)
    return Math.abs(d - b.distance_mm) < 0.01 ? { value_V: b.value_V, uncertainty_V: b.uncertainty_V } : null;
  const t = Math.min(1, Math.max(0, (d - a.distance_mm) / h));
  const straight = a.value_V + t * (b.value_V - a.value_V);
  const rise = b.value_V - a.value_V;
  // With one slope alone: the parabola with it.
  const m0 =
    a.slope_V_per_mm === null
      ? b.slope_V_per_mm === null
        ? rise
        : 2 * rise - h * b.slope_V_per_mm
      : h * a.slope_V_per_mm;
  const m1 = b.slope_V_per_mm === null ? 2 * rise - m0 : h * b.slope_V_per_mm;
  const value_V =
    (1 + 2 * t) * (1 - t) ** 2 * a.value_V +
    t * (1 - t) ** 2 * m0 +
    t ** 2 * (3 - 2 * t) * b.value_V -
    t ** 2 * (1 - t) * m1;
  const whole = a.slope_V_per_mm === null || b.slope_V_per_mm === null;
  const error = (whole ? 1 : errorPart) * Math.abs(value_V - straight);
  return { value_V, uncertainty_V: Math.max(a.uncertainty_V, b.uncertainty_V) + error };
}
