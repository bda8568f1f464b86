/** The scenes of the bench, as blocks. Paper 240 mm × 160 mm, 1 Ω per square, 1 V. */

export interface BenchScene {
  readonly name: string;
  readonly block: string;
  /** Orders to measure. */
  readonly orders: readonly number[];
}

const bench = (lines: string): string =>
  `paper 240 mm × 160 mm, 1 Ω per square\nsupply power-pack 1 V\n${lines}`;

export const scenes: readonly BenchScene[] = [
  {
    name: 'two bars',
    orders: [3, 4, 5, 6],
    block: bench(`
bar A 6 mm × 120 mm at (60, 80) mm negative
bar B 6 mm × 120 mm at (180, 80) mm positive`),
  },
  {
    name: 'spike and bar',
    orders: [4, 6],
    block: bench(`
spike A base 16 mm, length 100 mm, tip at (120, 80) mm pointing right negative
bar B 6 mm × 120 mm at (180, 80) mm positive`),
  },
  {
    name: 'floating ring',
    orders: [4, 6],
    block: bench(`
bar A 6 mm × 120 mm at (30, 80) mm negative
bar B 6 mm × 120 mm at (210, 80) mm positive
ring R diameter 60 mm, wall 5 mm at (120, 80) mm floating`),
  },
  {
    name: 'eight electrodes',
    orders: [3, 4, 5],
    block: bench(`
bar A 6 mm × 120 mm at (23, 80) mm negative
spike B base 16 mm, length 64 mm, tip at (150, 80) mm pointing left positive
disc C radius 14 mm at (80, 50) mm floating
disc D radius 9 mm at (80, 115) mm held at 0.5 V
bar E 20 mm × 6 mm at (120, 23) mm floating
bar F 20 mm × 6 mm at (120, 137) mm held at 1 V
outline G (180, 30) (200, 36) (190, 52) mm floating
bar H 30 mm × 3 mm at (185, 121.5) mm negative
slit from (105, 60) mm to (105, 105) mm
slit from (140, 40) mm to (165, 58) mm
hole disc diameter 12 mm at (50, 80) mm`),
  },
];
