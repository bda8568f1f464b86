/** Decimal arithmetic on what is written: scaling by powers of ten without a rounding of its own. */

/** The double nearest to digits × 10^exponent: 57 and −3 give exactly 0.057. */
export function scaled(digits: string, exponent: number): number {
  return Number(`${digits}e${exponent}`);
}

/** The shortest decimal that stands for `value`, moved by `exponent` places: 0.000585 and 3 give exactly 0.585. */
export function shifted(value: number, exponent: number): number {
  const [digits, power] = value.toExponential().split('e');
  if (digits === undefined || power === undefined) return value;
  return Number(`${digits}e${Number(power) + exponent}`);
}
