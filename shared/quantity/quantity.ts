/** Quantities: a number with a unit, kept in one working unit per dimension. */

/** Working units: mm, V, Ω, A, Ω mm² (contact resistance), degree, V/m, min; a pure number has none. */
export type Dimension =
  | 'length'
  | 'potential'
  | 'resistance'
  | 'current'
  | 'contact'
  | 'angle'
  | 'strength'
  | 'time'
  | 'number';

export const workingUnit: Readonly<Record<Dimension, string>> = {
  length: 'mm',
  potential: 'V',
  resistance: 'Ω',
  current: 'A',
  contact: 'Ω mm²',
  angle: '°',
  strength: 'V/m',
  time: 'min',
  number: '',
};

export interface Quantity {
  /** In the working unit of the dimension, correctly rounded from the digits as written. */
  readonly value: number;
  readonly dimension: Dimension;
}
