/** Sheets whose numbers are those of the solution have no finding, whatever the setup, the form and the digits; wrong ones have. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import '../../seed.ts';
import { examineSheet } from '../../../shared/checks/examine.ts';
import { statedNumbers } from '../../../shared/checks/stated/index.ts';
import type { SolvedSetup } from '../../../shared/setup/readings.ts';
import { shownReading } from '../../../shared/setup/shown-reading.ts';
import { findingsOf } from './sheets.ts';

interface Bench {
  readonly block: string;
  /** Exact readings by name, what a probe or electrode shows. */
  readonly readings: readonly (readonly [string, number])[];
  /** Along A. */
  readonly row: readonly (readonly [number, number])[];
  readonly shown: (value_V: number) => string;
}

const bench = (lines: string): string => `\`\`\`electrodes\n${lines}\n\`\`\``;

const blocks = [
  bench(
    'paper 260 mm × 170 mm, 5 kΩ per square\nsupply cell 1.5 V\nmeter 10 MΩ, resolution 0.01 V\nbar N 10 mm × 60 mm at (70, 80) mm negative\nbar P 10 mm × 90 mm, 110 mm right of N positive\nring R diameter 40 mm, wall 5 mm at (110, 85) mm floating\nprobe M at centre of R\nprobe K at (160, 50) mm\nrow A from (75, 30) mm to (185, 30) mm every 11 mm',
  ),
  bench(
    'paper 200 mm × 200 mm, 20 kΩ per square\nsupply 2 cells 1.5 V, internal 1 Ω\nmeter 1 MΩ, resolution 0.001 V\nbar N 150 mm × 8 mm at (100, 40) mm negative\nbar P 150 mm × 8 mm, 70 mm above N positive\nclip P 500 Ω\nprobe K at (60, 60) mm\nprobe M at (100, 90) mm\nrow A from N to P every 10 mm',
  ),
  bench(
    'paper 290 mm × 200 mm\nsupply power-pack 6 V\nspike S base 20 mm, length 80 mm, tip at (145, 100) mm pointing left positive\nbar N 10 mm × 160 mm at (80, 100) mm negative\nprobe M at (130, 100) mm\nprobe K at (100, 150) mm\nrow A from S to N every 10 mm',
  ),
];

const benches = blocks.map((block): Bench => {
  const { setups, solutions } = examineSheet({ name: 'sheet.md', text: block }, { gap: 1e-6 });
  const [setup] = setups;
  const solved: SolvedSetup | undefined = solutions.get(0);
  if (setup === undefined || solved === undefined) throw new Error('not solved');
  const { probes, electrodes, rows } = solved.readings;
  return {
    block,
    readings: [...probes, ...electrodes].flatMap(({ name, reading_V }) =>
      reading_V === null ? [] : [[name, reading_V] as const],
    ),
    row: (rows[0]?.points ?? []).flatMap(({ distance_mm, reading_V }) =>
      reading_V === null ? [] : [[distance_mm, reading_V] as const],
    ),
    shown: (value_V) => shownReading(value_V, setup, 0),
  };
});

const atName: readonly ((name: string, value: string) => string)[] = [
  (name, value) => `${name} reads ${value} V.`,
  (name, value) => `The reading at ${name} is ${value} V.`,
  (name, value) => `At ${name} the meter shows ${value} V.`,
  (name, value) => `- at ${name}: ${value} V`,
  (name, value) => `Expect ${value} V at ${name}.`,
  (name, value) => `The potential of ${name} is about ${value} V.`,
  (name, value) => `${name}’s reading is (${value} ± 0.05) V.`,
  (name, value) => `*V*_${name} = ${value} V`,
];
const atPlace: readonly ((distance: string, value: string) => string)[] = [
  (distance, value) => `At ${distance} mm along A the reading is ${value} V.`,
  (distance, value) => `The potential ${distance} mm along row A is ${value} V.`,
  (distance, value) => `You should read ${value} V at ${distance} mm along A.`,
];

const someBench = fc.constantFrom(...benches);
/** Decimals to round to; null: as the sheet itself would print it. */
const digits = fc.constantFrom(null, 1, 2, 3, 4);

const written = ({ shown }: Bench, value: number, decimals: number | null): string =>
  (decimals === null ? shown(value) : value.toFixed(decimals)).replace('-', '\u2212');

const statements = someBench.chain((one) =>
  fc.record({
    one: fc.constant(one),
    decimals: digits,
    form: fc.constantFrom(...atName),
    named: fc.constantFrom(...one.readings),
    placed: fc.constantFrom(...one.row),
    place: fc.constantFrom(...atPlace),
  }),
);

test('right numbers are no findings', () => {
  fc.assert(
    fc.property(fc.array(statements, { minLength: 1, maxLength: 4 }), (all) => {
      for (const { one, decimals, form, named, placed, place } of all) {
        const text = [
          form(named[0], written(one, named[1], decimals)),
          place(String(placed[0]), written(one, placed[1], decimals)),
        ].join('\n\n');
        expect(
          findingsOf(statedNumbers, `${one.block}\n\n${text}\n`).map(({ message }) => `${text}: ${message}`),
        ).toEqual([]);
      }
    }),
    { numRuns: 120 },
  );
});

test('wrong numbers are, and the fix is the number as the sheet prints it', () => {
  fc.assert(
    fc.property(statements, fc.constantFrom(-0.4, -0.2, 0.2, 0.4), ({ one, form, named }, off) => {
      const text = form(named[0], written(one, named[1] + off, 3));
      const found = findingsOf(statedNumbers, `${one.block}\n\n${text}\n`);
      const rough = text.includes('about') && Math.abs(off) < 0.051 * Math.abs(named[1] + off);
      expect(found.map(({ code }) => code)).toEqual(rough ? [] : ['stated-reading']);
    }),
    { numRuns: 120 },
  );
});
