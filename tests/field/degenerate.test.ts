/** Blocks at the limits of sense: each has a solution or a finding with a span, within bounded work, and none throws. */
import { describe, expect, it } from 'vitest';
import { parseBlock } from '../../shared/block/parse.ts';
import { resolveSetups } from '../../shared/setup/resolve.ts';
import { solveSetup } from '../../shared/setup/solve-setup.ts';
import { excerptOf } from '../excerpts.ts';

const bench = `paper 240 mm × 160 mm, 2 kΩ per square
supply power-pack 1.5 V
meter 10 MΩ, resolution 0.01 V, probe tip 1 mm
equipotentials 0.3 V to 1.2 V every 0.3 V
field-lines 12
`;
const bars = `${bench}bar N 6 mm × 120 mm at (30, 80) mm negative
bar P 6 mm × 120 mm at (210, 80) mm positive
`;

interface Outcome {
  readonly codes: readonly string[];
  readonly resistance_ohm: number | null;
  readonly unknowns: number;
}

function outcomeOf(text: string, gap = 1e-8): Outcome {
  const block = parseBlock(excerptOf(text));
  const [setup] = resolveSetups([block]);
  if (!setup) throw new Error('no setup');
  const asked = {
    gap,
    traces: true,
    samples: [
      { x: 120, y: 20 },
      { x: 3, y: 3 },
    ],
  };
  const { solved, findings } = solveSetup(setup, asked);
  const all = [...block.findings, ...setup.findings, ...findings];
  for (const { span } of all) {
    expect(span.from).toBeGreaterThanOrEqual(0);
    expect(span.to).toBeLessThanOrEqual(text.length);
  }
  const numbers = JSON.stringify(solved, (_, value) =>
    Number.isFinite(value ?? 0) || typeof value !== 'number' ? value : 'NaN',
  );
  expect(numbers).not.toContain('"NaN"');
  return {
    codes: all.map(({ code }) => code),
    resistance_ohm: solved?.readings.resistance_ohm ?? null,
    unknowns: solved?.work.unknowns ?? 0,
  };
}

describe('no solution, and a finding that says why', () => {
  it.each([
    ['electrodes that overlap', `${bars}bar Q 40 mm × 40 mm at (200, 80) mm negative`, 'short-circuit'],
    ['electrodes that touch', `${bars}bar Q 6 mm × 40 mm at (204, 80) mm negative`, 'short-circuit'],
    ['corners that touch', `${bars}bar Q 20 mm × 20 mm at (197, 150) mm negative`, 'short-circuit'],
    ['discs that touch', `${bars}disc Q radius 10 mm at (197, 80) mm negative`, 'short-circuit'],
    ['a gap of 0.04 mm', `${bars}bar Q 6 mm × 40 mm at (203.96, 80) mm negative`, 'short-circuit'],
    [
      'positive metal off the paper',
      `${bench}bar N 6 mm × 120 mm at (30, 80) mm negative\ndisc P radius 5 mm at (300, 80) mm positive`,
      'off-paper',
    ],
    [
      'one electrode over all the paper',
      `${bench}bar N 300 mm × 300 mm at centre negative\nbar P 6 mm × 120 mm at (210, 80) mm positive`,
      'short-circuit',
    ],
    ['a hole over all the paper', `${bars}hole bar 300 mm × 300 mm at centre`, 'off-paper'],
    ['a disc of radius zero', `${bars}disc Q radius 0 mm at centre floating`, 'number-positive'],
    ['paper of width zero', bars.replace('240 mm', '0 mm'), 'number-positive'],
    ['paper of a kilometre', bars.replace('240 mm', '1000 m'), 'paper-size'],
  ])('%s', (_, text, code) => {
    expect(outcomeOf(text).codes).toContain(code);
  });
});

/** Resistance of the bars alone, Ω: where what is added has no effect. */
const alone = outcomeOf(bars).resistance_ohm ?? Number.NaN;

describe('solved as if it were not there', () => {
  it.each([
    ['a slit along the paper’s edge', 'slit from (50, 0) mm to (160, 0) mm'],
    ['a slit along metal', 'slit from (33, 30) mm to (33, 120) mm'],
    ['a slit from metal along a line of the field', 'slit from (33, 80) mm to (100, 80) mm'],
    ['floating metal off the paper', 'disc Q radius 5 mm at (300, 80) mm floating'],
  ])('%s', (_, line) => {
    expect((outcomeOf(bars + line).resistance_ohm ?? 0) / alone).toBeCloseTo(1, 9);
  });
});

const range = (n: number): number[] => Array.from({ length: n }, (_, k) => k);
const circle = (n: number, radius: (k: number) => number): string =>
  range(n)
    .map((k) => {
      const angle = (2 * Math.PI * k) / n;
      const [x, y] = [120 + radius(k) * Math.cos(angle), 80 + radius(k) * Math.sin(angle)];
      return `(${x.toFixed(5)}, ${y.toFixed(5)})`;
    })
    .join(' ');

describe('solved, within bounded work', () => {
  it.each([
    ['a gap of 0.051 mm', `${bars}bar Q 6 mm × 40 mm at (203.949, 80) mm floating`, 60_000],
    [
      '5 µm of paper between a bar and the edge',
      `${bars}bar Q 6 mm × 40 mm at (120, 20.005) mm floating`,
      60_000,
    ],
    [
      'discs that touch',
      `${bars}disc Q radius 9 mm at (110, 80) mm floating\ndisc R radius 9 mm at (128, 80) mm floating`,
      60_000,
    ],
    ['a disc that touches the edge', `${bars}disc Q radius 10 mm at (120, 10) mm floating`, 60_000],
    ['a disc that touches a bar', `${bars}disc Q radius 10 mm at (43, 80) mm negative`, 60_000],
    [
      'a ring inscribed in the paper',
      `${bench}ring N diameter 160 mm, wall 5 mm at centre negative\ndisc P radius 5 mm at centre positive`,
      60_000,
    ],
    [
      'bars flush with the edge',
      `${bench}bar N 6 mm × 160 mm at (3, 80) mm negative\nbar P 6 mm × 160 mm at (237, 80) mm positive`,
      10_000,
    ],
    [
      'a slit through an electrode',
      `${bars}bar Q 20 mm × 20 mm at centre floating\nslit from (80, 80) mm to (160, 80) mm`,
      60_000,
    ],
    ['a hole over the edge', `${bars}hole disc radius 20 mm at (120, 0) mm`, 60_000],
    [
      'bars 0.002 mm thin',
      `${bench}bar N 0.002 mm × 120 mm at (30, 80) mm negative\nbar P 0.002 mm × 120 mm at (210, 80) mm positive`,
      60_000,
    ],
    [
      'pins of 0.01 mm on paper of 3 m',
      `paper 3000 mm × 3000 mm, 2 kΩ per square\nsupply power-pack 1.5 V\ndisc N radius 0.01 mm at (1000, 1500) mm negative\ndisc P radius 0.01 mm at (2000, 1500) mm positive`,
      60_000,
    ],
    [
      'nearly straight corners',
      `${bars}outline F ${range(60)
        .map((k) => `(${100 + k / 2}, ${(60 + 1e-5 * (k % 2)).toFixed(6)})`)
        .join(' ')} (130, 90) (100, 90) mm floating`,
      60_000,
    ],
    [
      'a star of 20 points',
      `${bars}outline F ${circle(40, (k) => (k % 2 === 0 ? 30 : 12))} mm floating`,
      100_000,
    ],
    [
      '60 slits that cross',
      `${bars}${range(60)
        .map(
          (k) =>
            `slit from (${50 + ((k * 37) % 140)}, ${10 + ((k * 53) % 140)}) mm to (${50 + ((k * 71) % 140)}, ${10 + ((k * 29) % 140)}) mm`,
        )
        .join('\n')}`,
      200_000,
    ],
    ['a polygon of 150 corners', `${bars}outline F ${circle(150, () => 30)} mm floating`, 200_000],
  ])('%s', (_, text, most) => {
    const { resistance_ohm, unknowns } = outcomeOf(text, 1e-5);
    expect(resistance_ohm).toBeGreaterThan(0);
    expect(unknowns).toBeLessThanOrEqual(most);
  });

  it('200 electrodes', () => {
    const discs = range(200).map((k) => {
      const terminal = k === 0 ? 'negative' : k === 199 ? 'positive' : 'floating';
      return `disc E${k} radius 4 mm at (${6 + 12 * (k % 20)}, ${8 + 16 * Math.floor(k / 20)}) mm ${terminal}`;
    });
    const { resistance_ohm, unknowns } = outcomeOf(bench + discs.join('\n'), 1e-4);
    expect(resistance_ohm).toBeGreaterThan(0);
    expect(unknowns).toBeLessThanOrEqual(200_000);
  }, 30_000);
});
