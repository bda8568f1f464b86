/**
 * Published and closed-form cases written as blocks, as a teacher would write them. Values in Ω, V, A, V/m; places in mm. Where a
 * value comes from a numerical method its own uncertainty is given as `within`; the rest are closed forms.
 */

export interface Expected {
  readonly resistance_ohm?: number;
  /** Potential against the supply's negative terminal, at (x, y). */
  readonly potentials_V?: readonly (readonly [number, number, number])[];
  /** Strength at (x, y): x and y component. */
  readonly strengths_V_per_m?: readonly (readonly [number, number, number, number])[];
  readonly currents_A?: Readonly<Record<string, number>>;
  /** Relative uncertainty that the published numbers carry, where it is above that asked of the engine. */
  readonly within?: number;
}

export interface SheetCase {
  readonly id: string;
  readonly title: string;
  readonly source: string;
  readonly block: string;
  readonly expected: Expected;
}

const discs = (paper: string, radius: number, first: string, second: string): string => `
paper   ${paper}, 2 kΩ per square
supply  power-pack 1.5 V
disc    A  radius ${radius} mm at ${first}   positive
disc    B  radius ${radius} mm at ${second}  negative`;

const pairTable: readonly (readonly [number, number, number, number, number])[] = [
  // width, height of the paper; R; V at (-10, +20) from the middle of the pair; strength in the middle
  [120, 120, 1835.68757722, 0.906257796223, 21.358399614],
  [160, 120, 1814.959889276, 0.907005041115, 21.3797777532],
  [240, 160, 1714.348381891, 0.89959411656, 21.0044689829],
  [480, 320, 1612.893722918, 0.891942974469, 20.6059148023],
  [960, 640, 1586.410393888, 0.889962840009, 20.5004179848],
  [1920, 1280, 1579.712581881, 0.889463626603, 20.4736573772],
];

const overlap = (depth: number, resistance_ohm: number): SheetCase => ({
  id: 'A06',
  title: `partial contacts on opposite edges, ${depth} mm of metal on the paper`,
  source:
    'finite elements, two levels agreeing to 1e-10; tends to the Schwarz–Christoffel value (Hall, Thin Solid Films 1, 277, from memory)',
  block: `
paper   160 mm × 120 mm, 1 Ω per square
supply  power-pack 1 V
bar     A  ${5 + depth} mm × 40 mm at (${(depth - 5) / 2}, 60) mm  positive
bar     B  ${5 + depth} mm × 40 mm at (${160 - (depth - 5) / 2}, 60) mm  negative`,
  expected: { resistance_ohm },
});

const adjacent = (depth: number, resistance_ohm: number): SheetCase => ({
  id: 'A07',
  title: `halves of adjacent edges of a square, ${depth} mm of metal on the paper`,
  source:
    'finite elements, two levels agreeing to 2e-10; tends to √2 (modulus of a quadrilateral, Yrjölä, Univ. Helsinki 2007)',
  block: `
paper   100 mm × 100 mm, 1 Ω per square
supply  power-pack 1 V
outline A  (-5, 50) (${depth}, 50) (${depth}, 105) (-5, 105) mm  positive
outline B  (50, -5) (105, -5) (105, ${depth}) (50, ${depth}) mm  negative`,
  expected: { resistance_ohm },
});

const discInSquare = (ratio: number, squares: number): SheetCase => ({
  id: 'A10',
  title: `disc in a square frame, D/w = ${ratio}`,
  source:
    'Incropera & DeWitt, Table 4.1 case 6 (6th ed., p. 209); nine digits by finite elements, two levels',
  block: `
paper   220 mm × 220 mm, 1 Ω per square
supply  power-pack 1 V
disc    D  diameter ${200 * ratio} mm at centre  positive
box     F  220 mm × 220 mm, wall 10 mm at centre  negative`,
  expected: { resistance_ohm: 1 / squares },
});

const squareInSquare = (inner: number, squares: number): SheetCase => ({
  id: 'A10',
  title: `square of ${inner} mm in a square frame of 200 mm`,
  source:
    'exact by Bowman, Introduction to Elliptic Functions (1953), from memory, verified numerically; Incropera & DeWitt, Table 4.1 case 11 is its approximation',
  block: `
paper   220 mm × 220 mm, 1 Ω per square
supply  power-pack 1 V
bar     D  ${inner} mm × ${inner} mm at centre  positive
box     F  220 mm × 220 mm, wall 10 mm at centre  negative`,
  expected: { resistance_ohm: 1 / squares },
});

const uniform = (
  width: number,
  height: number,
  object: string,
  value_V: number,
  current_A: number,
): SheetCase => ({
  id: 'A20',
  title: `${object.includes('hole') ? 'hole' : 'floating disc'} in a uniform field, paper ${width} mm × ${height} mm`,
  source: 'dipole solution (Jackson; Smythe), from memory; bounded rows nine digits by finite elements',
  block: `
paper   ${width} mm × ${height} mm, 2 kΩ per square
supply  power-pack ${(0.01 * (width - 20)).toFixed(1)} V
bar     L  10 mm × ${height} mm at (5, ${height / 2}) mm  positive
bar     R  10 mm × ${height} mm at (${width - 5}, ${height / 2}) mm  negative
${object}`,
  expected: {
    potentials_V: [[width / 2 + 20, height / 2 + 10, value_V + 0.005 * (width - 20)]],
    currents_A: { L: current_A, R: -current_A },
  },
});

const slit = (depth: number, squares: number): SheetCase => ({
  id: 'A26',
  title: `slit of ${depth} mm across a strip`,
  source:
    'conformal map by Jacobi sn, derived; same as the thin iris in a parallel-plate guide (Marcuvitz, Waveguide Handbook, 1951, from memory)',
  block: `
paper   240 mm × 160 mm, 2 kΩ per square
supply  power-pack 1.5 V
bar     A  10 mm × 160 mm at (25, 80) mm   positive
bar     B  10 mm × 160 mm at (215, 80) mm  negative
slit    from (120, 0) mm to (120, ${depth}) mm`,
  expected: { resistance_ohm: 2000 * squares },
});

export const sheetCases: readonly SheetCase[] = [
  {
    id: 'A01',
    title: 'parallel full-width bars',
    source: 'definition of sheet resistance: R = Rs L / W (textbook)',
    block: `
paper   240 mm × 160 mm, 2 kΩ per square
supply  power-pack 1.5 V
bar     A  10 mm × 160 mm at (25, 80) mm   positive
bar     B  10 mm × 160 mm at (215, 80) mm  negative`,
    expected: {
      resistance_ohm: 2250,
      potentials_V: [
        [75, 33, 1.125],
        [10, 100, 1.5],
        [225, 5, 0],
      ],
      strengths_V_per_m: [[75, 33, 8.333333333333334, 0]],
      currents_A: { A: 0.0006666666666666666, B: -0.0006666666666666666 },
    },
  },
  {
    id: 'A02',
    title: 'disc and concentric ring',
    source: 'R = Rs ln(b/a) / 2π, V = V0 ln(b/r) / ln(b/a) (coaxial cable, textbook)',
    block: `
paper   240 mm × 240 mm, 1 kΩ per square
supply  power-pack 1.5 V
disc    A  radius 10 mm at centre  positive
ring    B  inside diameter 160 mm, wall 5 mm at centre  negative`,
    expected: {
      resistance_ohm: 330.9534002289774,
      potentials_V: [
        [150, 120, 0.7075187496394219],
        [100, 90, 0.574890070464727],
        [230, 10, 0],
      ],
      strengths_V_per_m: [[150, 120, 24.04491734814939, 0]],
      currents_A: { A: 0.004532360141827194 },
    },
  },
  {
    id: 'A03',
    title: 'eccentric disc in a ring',
    source: 'Incropera & DeWitt, Table 4.1 case 7 (6th ed., p. 209); potential by two image line currents',
    block: `
paper   240 mm × 240 mm, 1 kΩ per square
supply  power-pack 1.5 V
disc    A  radius 10 mm at (150, 120) mm  positive
ring    B  inside diameter 160 mm, wall 5 mm at centre  negative`,
    expected: {
      resistance_ohm: 306.3489625300331,
      potentials_V: [
        [120, 120, 0.75],
        [150, 160, 0.4385048890044102],
        [180, 120, 0.5159184853626726],
      ],
      strengths_V_per_m: [
        [120, 120, -21.7816107142255, 0],
        [150, 160, 3.865843277067199, 18.55604772992255],
        [180, 120, 31.68234285705527, 0],
      ],
    },
  },
  ...pairTable.map(
    ([width, height, resistance_ohm, value, strength]): SheetCase => ({
      id: 'A04',
      title: `two equal discs on paper ${width} mm × ${height} mm`,
      source:
        'exact rectangle Green function (Jacobi theta) with collocation, 11 digits; tends to Incropera & DeWitt, Table 4.1 case 4',
      block: discs(
        `${width} mm × ${height} mm`,
        5,
        `(${width / 2 - 30}, ${height / 2}) mm`,
        `(${width / 2 + 30}, ${height / 2}) mm`,
      ),
      expected: {
        resistance_ohm,
        potentials_V: [[width / 2 - 10, height / 2 + 20, value]],
        strengths_V_per_m: [[width / 2, height / 2, strength, 0]],
      },
    }),
  ),
  {
    id: 'A05',
    title: 'discs centred on the paper’s edge',
    source: 'method of images (Maxwell); bounded value by fundamental solutions, 1e-10',
    block: discs('240 mm × 160 mm', 5, '(90, 0) mm', '(150, 0) mm'),
    expected: { resistance_ohm: 3243.09423473 },
  },
  overlap(0.1, 1.765998756),
  overlap(0.5, 1.740158133),
  overlap(1, 1.713097984),
  overlap(5, 1.556680056),
  adjacent(0.1, 1.406220178),
  adjacent(1, 1.354135198),
  discInSquare(0.1, 2.641829201),
  discInSquare(0.25, 4.297501336),
  discInSquare(0.5, 8.172470848),
  discInSquare(0.8, 21.30624644),
  squareInSquare(160, 34.23491519877343),
  squareInSquare(100, 10.23409256936805),
  squareInSquare(50, 4.844419548422174),
  squareInSquare(20, 2.839777419052237),
  {
    id: 'A13',
    title: 'floating closed ring between bars',
    source:
      'V = V0/2 in the ring by symmetry, no field inside (uniqueness theorem, Jackson 1.9); R and the outer value nine digits by finite elements',
    block: `
paper   240 mm × 160 mm, 2 kΩ per square
supply  power-pack 1.5 V
bar     L  10 mm × 160 mm at (15, 80) mm   positive
bar     R  10 mm × 160 mm at (225, 80) mm  negative
ring    C  diameter 50 mm, wall 5 mm at (120, 80) mm  floating`,
    expected: {
      resistance_ohm: 2215.814725,
      potentials_V: [
        [120, 80, 0.75],
        [130, 90, 0.75],
        [60, 80, 1.14214782],
      ],
      currents_A: { C: 0 },
    },
  },
  {
    id: 'A15',
    title: 'reciprocity with four discs: a to b',
    source: 'van der Pauw 1958 (reciprocity); 11 digits by fundamental solutions',
    block: `
paper   240 mm × 160 mm, 2 kΩ per square
supply  power-pack 1 V
disc    a  radius 4 mm at (50, 50) mm    positive
disc    b  radius 4 mm at (190, 40) mm   negative
disc    c  radius 4 mm at (90, 125) mm   floating
disc    d  radius 4 mm at (170, 110) mm  floating`,
    expected: {},
  },
  {
    id: 'A16',
    title: 'three terminals, one held at 0.6 V',
    source: 'linearity; 11 digits by fundamental solutions',
    block: `
paper   240 mm × 160 mm, 2 kΩ per square
supply  power-pack 1.5 V
disc    a  radius 4 mm at (50, 50) mm   positive
disc    b  radius 4 mm at (190, 40) mm  negative
disc    c  radius 4 mm at (90, 125) mm  held at 0.6 V`,
    expected: {
      potentials_V: [
        [120, 80, 0.651996315851],
        [60, 120, 0.826260083752],
      ],
      currents_A: { a: 0.000585308364546, b: -0.00041104243488, c: -0.000174265929666 },
    },
  },
  {
    id: 'A17',
    title: 'mean value on a circle',
    source: 'Gauss mean-value theorem on the closed form of A03',
    block: `
paper   240 mm × 240 mm, 1 kΩ per square
supply  power-pack 1.5 V
disc    A  radius 10 mm at (150, 120) mm  positive
ring    B  inside diameter 160 mm, wall 5 mm at centre  negative`,
    expected: { potentials_V: [[100, 150, 0.3177652151980898]] },
  },
  {
    id: 'A19',
    title: 'fringe of two thin plates on a large paper',
    source:
      'Maxwell, Treatise, art. 202 (number from memory) in the limit; this bounded case by finite elements, about seven digits',
    block: `
paper   1600 mm × 1600 mm, 1 kΩ per square
supply  power-pack 1.5 V
bar     T  500 mm × 0.002 mm at (550, 820.001) mm  positive
bar     B  500 mm × 0.002 mm at (550, 779.999) mm  negative`,
    expected: {
      potentials_V: [[820, 830, 0.75 + 0.30902226]],
      strengths_V_per_m: [
        [760, 800, 0, -37.47412],
        [800, 800, 0, -29.282445],
        [820, 800, 0, -14.038227],
      ],
    },
  },
  uniform(240, 160, 'disc    D  radius 15 mm at centre  floating', -0.1112802949, 0.0008324994611),
  uniform(480, 320, 'disc    D  radius 15 mm at centre  floating', -0.1102650875, 0.001615403394),
  uniform(960, 640, 'disc    D  radius 15 mm at centre  floating', -0.1100602583, 0.003207523885),
  uniform(240, 160, 'hole    disc diameter 30 mm at centre', -0.2867220319, 0.0007682312965),
  uniform(480, 320, 'hole    disc diameter 30 mm at centre', -0.2893057419, 0.001584670246),
  uniform(960, 640, 'hole    disc diameter 30 mm at centre', -0.2898413887, 0.003192484342),
  {
    id: 'A21',
    title: 'paper with a grain, current along x',
    source: 'R = Rx L / W (textbook; van der Pauw, Philips Res. Rep. 16 (1961) 187, from memory)',
    block: `
paper   240 mm × 160 mm, 2 kΩ per square along x, 2.3 kΩ per square along y
supply  power-pack 1.5 V
bar     A  10 mm × 160 mm at (25, 80) mm   positive
bar     B  10 mm × 160 mm at (215, 80) mm  negative`,
    expected: { resistance_ohm: 2250 },
  },
  {
    id: 'A21',
    title: 'paper with a grain, current along y',
    source: 'R = Ry L / W (textbook; van der Pauw, Philips Res. Rep. 16 (1961) 187, from memory)',
    block: `
paper   240 mm × 160 mm, 2 kΩ per square along x, 2.3 kΩ per square along y
supply  power-pack 1.5 V
bar     A  240 mm × 10 mm at (120, 25) mm   positive
bar     B  240 mm × 10 mm at (120, 145) mm  negative`,
    expected: { resistance_ohm: 1054.1666666666667 },
  },
  ...(
    [
      [0.5, 4272.72373306],
      [1, 3831.21999645],
      [2, 3389.01930795],
      [5, 2799.21335831],
      [10, 2335.21802016],
    ] as const
  ).map(
    ([radius, resistance_ohm]): SheetCase => ({
      id: 'A24',
      title: `two discs of radius ${radius} mm anywhere`,
      source: 'images, double series summed by Jacobi theta functions; 11 digits by fundamental solutions',
      block: discs('240 mm × 160 mm', radius, '(60, 50) mm', '(190, 100) mm'),
      expected: { resistance_ohm },
    }),
  ),
  slit(40, 1.224136059359209),
  slit(80, 1.54790066001489),
  slit(120, 2.295090571710806),
  {
    id: 'A26',
    title: 'slot 1 mm wide and 80 mm deep across a strip',
    source: 'finite elements, eight to nine digits',
    block: `
paper   240 mm × 160 mm, 2 kΩ per square
supply  power-pack 1.5 V
bar     A  10 mm × 160 mm at (25, 80) mm   positive
bar     B  10 mm × 160 mm at (215, 80) mm  negative
hole    1 mm × 80 mm at (120, 40) mm`,
    expected: { resistance_ohm: 3120.553262 },
  },
  {
    id: 'A27',
    title: 'two unequal discs',
    source:
      'Incropera & DeWitt, Table 4.1 case 4 when unbounded; bounded value 11 digits by fundamental solutions',
    block: `
paper   240 mm × 160 mm, 2 kΩ per square
supply  power-pack 1.5 V
disc    A  radius 12 mm at (100, 80) mm  positive
disc    B  radius 5 mm at (140, 80) mm   negative`,
    expected: { resistance_ohm: 1059.27658012 },
  },
];
