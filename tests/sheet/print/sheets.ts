/** Sheets for the tests of printing: read, bound and given stand-in solutions, so that print is tested apart from the engine. */
import type { Audience } from '../../../shared/block/tree.ts';
import type { Finding } from '../../../shared/findings/finding.ts';
import type { PointReading, SolvedSetup } from '../../../shared/setup/readings.ts';
import { resolveSetups } from '../../../shared/setup/resolve.ts';
import type { Setup } from '../../../shared/setup/setup.ts';
import { usualDepartment } from '../../../shared/sheet/department/department.ts';
import { bindInserts, wantedSamples } from '../../../shared/sheet/inserts/bind.ts';
import { type PrintInput, printSheet } from '../../../shared/sheet/print/print-sheet.ts';
import type { Tier } from '../../../shared/sheet/print/view.ts';
import { readSheet } from '../../../shared/sheet/read-sheet.ts';

/** A field that no paper has: V rises along x by `slope` V for each mm. Every number of the stand-in depends on `slope`. */
export interface StandIn {
  readonly slope_V_per_mm: number;
}

export const usual: StandIn = { slope_V_per_mm: 0.01 };

export function inputOf(
  text: string,
  standIn: StandIn = usual,
  findings: readonly Finding[] = [],
): PrintInput {
  const sheet = readSheet({ name: 'sheet.md', text });
  const setups = resolveSetups(sheet.blocks.map(({ block }) => block));
  const binding = bindInserts(sheet, setups);
  const solutions = new Map(
    setups.map((setup) => [setup.block, solvedBy(setup, wantedSamples(binding, setup), standIn)] as const),
  );
  return { sheet, bound: binding.bound, setups, solutions, findings, department: usualDepartment };
}

/** The whole document for one reader. */
export function printed(text: string, audience: Audience, tier: Tier | null = null): string {
  const printout = printSheet(inputOf(text), audience, tier);
  if (printout === null) throw new Error(`${audience} get no print of this sheet`);
  return printout.html;
}

/** What stands between head and foot. */
export function bodyOf(document: string): string {
  return document.slice(document.indexOf('<main>') + 6, document.indexOf('</main>')).trim();
}

/** The text of a document as a reader sees it, without its drawings. */
export function textOf(document: string): string {
  return bodyOf(document)
    .replace(/<svg[\s\S]*?<\/svg>/g, '')
    .replace(/<[^>]*>/g, ' ')
    .replace(/[ \n]+/g, ' ')
    .trim();
}

function solvedBy(setup: Setup, samples: readonly { x: number; y: number }[], standIn: StandIn): SolvedSetup {
  const slope = standIn.slope_V_per_mm;
  const read = ({ x, y }: { x: number; y: number }): PointReading => ({
    x_mm: x,
    y_mm: y,
    potential_V: slope * x,
    reading_V: slope * x,
    strength_V_per_m: [-1000 * slope, 0],
    source_resistance_ohm: 1e6 * slope,
    uncertainty_V: 1e-9 * slope,
  });
  const resistance = 257e3 * slope;
  const current = 0.0585 * slope;
  const middle = (setup.paper?.height_mm ?? 0) / 2;
  const width = setup.paper?.width_mm ?? 0;
  return {
    readings: {
      name: setup.name,
      resistance_ohm: resistance,
      resistance_bounds_ohm: [resistance * 0.9999999, resistance * 1.0000001],
      current_A: current,
      current_bounds_A: [current * 0.9999999, current * 1.0000001],
      electrodes: setup.electrodes.map(({ name, box }) => ({
        name,
        potential_V: slope * box.x0,
        reading_V: slope * box.x0,
        current_A: current,
        current_bounds_A: null,
      })),
      probes: setup.probes.map(({ name, at }) => ({ name, ...read(at) })),
      rows: setup.rows.map(({ name, points }) => ({
        name,
        points: points.map(({ distance_mm, at }) => ({ distance_mm, ...read(at) })),
      })),
    },
    traces: {
      equipotentials: setup.equipotentials.values_V.map((value_V) => ({
        value_V,
        lines: [
          { points: Float64Array.of(value_V / slope, 5, value_V / slope, 2 * middle - 5), closed: false },
        ],
      })),
      fieldLines: [
        {
          points: Float64Array.of(width - 20, middle, 100 + 100 * slope, middle, 20, middle),
          closed: false,
          half: 1,
        },
      ],
      lineCurrent_A: current / 16,
    },
    samples: samples.map(read),
    gaps: [],
    work: { unknowns: 100, order: 4, gap: 1e-8 },
  };
}
