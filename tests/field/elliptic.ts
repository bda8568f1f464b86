/** Elliptic integrals and functions for exact resistances; modulus k throughout. */

/** K(k) by the arithmetic-geometric mean, Abramowitz & Stegun 17.6.3. */
export function completeK(k: number): number {
  let [a, b] = [1, Math.sqrt((1 - k) * (1 + k))];
  for (let step = 0; step < 40; step++) [a, b] = [(a + b) / 2, Math.sqrt(a * b)];
  return Math.PI / (2 * a);
}

/** K'(k) = K(√(1 - k²)). */
export function complementaryK(k: number): number {
  return completeK(Math.sqrt((1 - k) * (1 + k)));
}

/** sn(u, k) by descending arithmetic-geometric means, Abramowitz & Stegun 16.4. */
export function sn(u: number, k: number): number {
  const a = [1];
  const c = [k];
  let b = Math.sqrt((1 - k) * (1 + k));
  while (Math.abs(c[c.length - 1] ?? 0) > 1e-16 && a.length < 20) {
    const last = a[a.length - 1] ?? 1;
    a.push((last + b) / 2);
    c.push((last - b) / 2);
    b = Math.sqrt(last * b);
  }
  let angle = 2 ** (a.length - 1) * (a[a.length - 1] ?? 1) * u;
  for (let n = a.length - 1; n > 0; n--) {
    angle = (angle + Math.asin(((c[n] ?? 0) / (a[n] ?? 1)) * Math.sin(angle))) / 2;
  }
  return Math.sin(angle);
}

/**
 * Resistance in squares of a sheet, `length` between the two edges that carry metal and `width` along them, metal of length `contact`
 * centred on both: K'(k)/(2 K(k)) = length/width, m = k sn²(K(k) contact/width, k), R = K'(m)/(2 K(m)). Schwarz-Christoffel map of
 * the rectangle; common in the literature of thin-film resistors (from memory: P. M. Hall, Thin Solid Films 1 (1967/68) 277).
 */
export function partialContactsSquares(length: number, width: number, contact: number): number {
  let [low, high] = [1e-12, 1 - 1e-15];
  for (let step = 0; step < 200; step++) {
    const k = Math.sqrt(low * high) > 0.3 ? (low + high) / 2 : Math.sqrt(low * high);
    if (complementaryK(k) / (2 * completeK(k)) > length / width) low = k;
    else high = k;
  }
  const k = (low + high) / 2;
  const m = k * sn((contact / width) * completeK(k), k) ** 2;
  return complementaryK(m) / (2 * completeK(m));
}
