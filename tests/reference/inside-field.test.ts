/** Published cases whose electrodes are edges without width, so that no sheet can say them: A06, A07, A11, A14, A18, and A15's matrix. */
import { describe, expect, it } from 'vitest';
import type { Domain } from '../../shared/field/problem.ts';
import { solveDomain } from '../../shared/field/solve/solve-field.ts';
import {
  adjacentHalves,
  disc,
  domainOfLoops,
  hole,
  partialContacts,
  polygon,
  rectangle,
} from '../field/scenes.ts';

interface Case {
  readonly id: string;
  readonly title: string;
  readonly source: string;
  readonly domain: Domain;
  /** R/Rs between conductors 0 and 1. */
  readonly squares: number;
  /** Relative uncertainty of the value, where it is above 1e-6. */
  readonly within?: number;
}

/** A06 with contacts and insulation exchanged: metal all round but for a gap of 40 mm in the middle of each short edge. */
const conjugate = domainOfLoops([
  polygon(
    [
      [0, 0],
      [160, 0],
      [160, 40],
      [160, 80],
      [160, 120],
      [0, 120],
      [0, 80],
      [0, 40],
    ],
    [0, 0, -1, 1, 1, 1, -1, 0],
  ),
]);

/** A strip of 40 mm along the bottom and up the right side of a sheet of 240 mm × 160 mm, metal across both ends. */
const bentStrip = domainOfLoops([
  polygon(
    [
      [0, 0],
      [240, 0],
      [240, 160],
      [200, 160],
      [200, 40],
      [0, 40],
    ],
    [-1, -1, 1, -1, -1, 0],
  ),
]);

/** Two contacts of 40 mm, 20 mm apart, in the middle of the bottom edge. */
function coplanarStrips(width: number, height: number): Domain {
  const middle = width / 2;
  return domainOfLoops([
    polygon(
      [
        [0, 0],
        [middle - 50, 0],
        [middle - 10, 0],
        [middle + 10, 0],
        [middle + 50, 0],
        [width, 0],
        [width, height],
        [0, height],
      ],
      [-1, 0, -1, 1, -1, -1, -1, -1],
    ),
  ]);
}

const contactTable: readonly (readonly [number, number])[] = [
  [10, 2.629323777131854],
  [20, 2.193550403927158],
  [40, 1.774439864790817],
  [60, 1.553895739444814],
  [80, 1.42488707717134],
  [100, 1.355402500759452],
  [119, 1.333387876421519],
];

const cases: readonly Case[] = [
  ...contactTable.map(
    ([contact, squares]): Case => ({
      id: 'A06',
      title: `contacts of ${contact} mm on opposite edges of 120 mm`,
      source: 'Schwarz–Christoffel map (Hall, Thin Solid Films 1, 277, from memory), exact',
      domain: partialContacts(160, 120, contact),
      squares,
    }),
  ),
  {
    id: 'A07',
    title: 'outer halves of adjacent edges of a square',
    source: '√2: modulus of a quadrilateral (Yrjölä, Univ. Helsinki 2007), exact',
    domain: adjacentHalves,
    squares: Math.SQRT2,
  },
  {
    id: 'A11',
    title: 'right-angled corner of a strip of 40 mm: 5 + 3 squares and 0.5587',
    source:
      '1 − (2/π) ln 2 (Hall, Thin Solid Films 1, 277, from memory); arms of three widths add less than 1e-8',
    domain: bentStrip,
    squares: 5 + 3 + 1 - (2 / Math.PI) * Math.LN2,
  },
  {
    id: 'A14',
    title: 'A06 with contacts and insulation exchanged',
    source: 'R R* = Rs² (Hakula, Rasila, Vuorinen, ETNA 48 (2018) 462)',
    domain: conjugate,
    squares: 1 / 1.774439864790817,
  },
  ...(
    [
      [200, 100, 1.12285085],
      [400, 200, 1.07054831],
      [800, 400, 1.05688074],
      [3200, 1600, 1.05255011],
    ] as const
  ).map(
    ([width, height, squares]): Case => ({
      id: 'A18',
      title: `coplanar strips on the edge of a sheet of ${width} mm × ${height} mm`,
      source:
        'eight digits by finite elements; tends to 2K(k)/K(k′), k = g/(g + 2w) (Smythe; Gupta et al., from memory)',
      domain: coplanarStrips(width, height),
      squares,
    }),
  ),
];

describe.each(cases)('$id $title', ({ domain, squares, within = 0 }) => {
  const outcome = solveDomain(domain, { gap: 1e-8, maxUnknowns: 400_000 });
  const field = outcome.ok ? outcome.field : null;

  it('is solved to the gap asked for', () => {
    expect(field?.gap).toBeLessThanOrEqual(1e-8);
  });

  it(`R/Rs = ${squares}`, () => {
    const middle = ((field?.upper_S[0] ?? Number.NaN) + (field?.lower_S[0] ?? Number.NaN)) / 2;
    expect(Math.abs(1 / middle / squares - 1)).toBeLessThan(Math.max(1e-6, within));
  });
});

const exact = cases.filter(({ id }) => ['A06', 'A07', 'A14'].includes(id));

describe.each(exact)('bounds of $id $title', ({ domain, squares }) => {
  it('contain the closed form', () => {
    const outcome = solveDomain(domain, { gap: 1e-6, maxUnknowns: 400_000 });
    if (!outcome.ok) throw new Error(outcome.trouble.kind);
    expect(outcome.field.upper_S[0]).toBeGreaterThanOrEqual(1 / squares);
    expect(outcome.field.lower_S[0]).toBeLessThanOrEqual(1 / squares);
  });
});

/** Conductance matrix of four discs, S: 11 digits by fundamental solutions (reciprocity: van der Pauw 1958). */
describe('A15 conductance matrix', () => {
  const places = [
    [50, 50],
    [190, 40],
    [90, 125],
    [170, 110],
  ] as const;
  const published = [
    [0.000546484588083, -0.000128751349831, -0.000308287749803, -0.00010944548845],
    [-0.000128751349831, 0.000577361127929, -0.000109052793996, -0.000339556984102],
    [-0.000308287749803, -0.000109052793996, 0.00067381056125, -0.000256470017452],
    [-0.00010944548845, -0.000339556984102, -0.000256470017452, 0.000705472490004],
  ];
  const outcome = solveDomain(
    domainOfLoops(
      [rectangle([0, 0], [240, 160], -1), ...places.map((place, k) => hole(disc(place, 4, k)))],
      [2000, 2000],
    ),
    { gap: 1e-8, maxUnknowns: 400_000 },
  );
  const entries = published.flatMap((row, i) => row.map((value, j) => ({ i, j, value })));

  it.each(entries)('G[$i][$j] = $value S', ({ i, j, value }) => {
    const found = outcome.ok ? (outcome.field.upper_S[4 * i + j] ?? Number.NaN) : Number.NaN;
    expect(Math.abs(found / value - 1)).toBeLessThan(1e-6);
  });
});
