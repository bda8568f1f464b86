/** Four-terminal resistances: van der Pauw's theorem (A08) and reciprocity (A15), written as sheets with floating voltage contacts. */
import { describe, expect, it } from 'vitest';
import { solveBlock } from './solve.ts';

type Place = readonly [number, number];
interface Contacts {
  readonly places: Readonly<Record<string, Place>>;
  readonly radius_mm: number;
  readonly sheet: string;
}

/** R_ij,kl = (V_l − V_k) / I for I entering at i and leaving at j. */
function fourTerminal(
  { places, radius_mm, sheet }: Contacts,
  [i, j, k, l]: readonly [string, string, string, string],
): number {
  const role = (name: string): string => (name === i ? 'positive' : name === j ? 'negative' : 'floating');
  const lines = Object.entries(places).map(
    ([name, [x, y]]) => `disc ${name} radius ${radius_mm} mm at (${x}, ${y}) mm ${role(name)}`,
  );
  const { electrodes } = solveBlock(
    `paper 240 mm × 160 mm, ${sheet} per square\nsupply power-pack 1 V\n${lines.join('\n')}`,
  ).readings;
  const of = (name: string) => electrodes.find((each) => each.name === name);
  const potential = (name: string): number => of(name)?.potential_V ?? Number.NaN;
  return (potential(l) - potential(k)) / (of(i)?.current_A ?? Number.NaN);
}

/** L. J. van der Pauw, Philips Research Reports 13, 1 (1958): for point contacts on the edge, exp(−πR_AB,CD/Rs) + exp(−πR_BC,DA/Rs) = 1. */
describe('A08 van der Pauw', () => {
  const corners = { A: [0, 0], B: [240, 0], C: [240, 160], D: [0, 160] } as const;
  const edges = { A: [60, 0], B: [240, 50], C: [150, 160], D: [0, 100] } as const;
  // Discs of finite radius centred on the edge: finite elements, eight to nine digits.
  const rows = [
    ['corners', corners, 0.5, 0.6400275616, 0.0457564486],
    ['corners', corners, 2, 0.6400274904, 0.04575643049],
    ['corners', corners, 5, 0.6400247714, 0.04575573871],
    ['edge points', edges, 0.5, 0.4678027535, 0.08318685099],
    ['edge points', edges, 2, 0.4675262001, 0.08310421156],
    ['edge points', edges, 5, 0.465979121, 0.08264076293],
  ] as const;

  it.each(rows)('%s, discs of radius %#', (_, places, radius_mm, first, second) => {
    const contacts = { places, radius_mm, sheet: '1 Ω' };
    const found = [
      fourTerminal(contacts, ['A', 'B', 'D', 'C']),
      fourTerminal(contacts, ['B', 'C', 'A', 'D']),
    ].map(Math.abs);
    expect(Math.abs((found[0] ?? 0) - first)).toBeLessThan(1e-6);
    expect(Math.abs((found[1] ?? 0) - second)).toBeLessThan(1e-6);
  });

  it('small contacts in the corners satisfy the theorem', () => {
    const contacts = { places: corners, radius_mm: 0.5, sheet: '1 Ω' };
    const [first, second] = [
      fourTerminal(contacts, ['A', 'B', 'D', 'C']),
      fourTerminal(contacts, ['B', 'C', 'A', 'D']),
    ];
    const sum = Math.exp(-Math.PI * Math.abs(first ?? 0)) + Math.exp(-Math.PI * Math.abs(second ?? 0));
    expect(Math.abs(sum - 1)).toBeLessThan(1e-6);
  });
});

/** Reciprocity (van der Pauw 1958 uses it); the value has 11 digits by fundamental solutions. */
describe('A15 reciprocity', () => {
  const places = { a: [50, 50], b: [190, 40], c: [90, 125], d: [170, 110] } as const;
  const contacts = { places, radius_mm: 4, sheet: '2 kΩ' };
  const there = fourTerminal(contacts, ['a', 'b', 'd', 'c']);
  const back = fourTerminal(contacts, ['c', 'd', 'b', 'a']);

  it('gives the published four-terminal resistance', () => {
    expect(Math.abs(there / 705.824031045 - 1)).toBeLessThan(1e-6);
  });

  it('is the same with current and voltage contacts exchanged', () => {
    expect(Math.abs(there / back - 1)).toBeLessThan(1e-6);
  });
});
