/** One place for the functions whose last bit may differ between engines: what the kernels take from `Math` beyond + - × ÷ √ comes by here. */

export const sin = Math.sin;
export const cos = Math.cos;
export const tan = Math.tan;
export const asin = Math.asin;
export const atan2 = Math.atan2;
export const log = Math.log;
export const exp = Math.exp;

/** Length of (x, y), by the root alone: correctly rounded steps give the same bits everywhere. */
export function hypot(x: number, y: number): number {
  return Math.sqrt(x * x + y * y);
}
