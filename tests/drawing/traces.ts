/** Hand-made solutions: the ideal field between long bars, and the radial one. No engine, so that kept drawings test the drawing alone. */
import type { TracedLine } from '../../shared/field/sample/traced-line.ts';
import type { SetupReadings, SolvedSetup } from '../../shared/setup/readings.ts';
import type { Setup } from '../../shared/setup/setup.ts';

type FieldLine = SolvedSetup['traces']['fieldLines'][number];

/** Between inner edges at x = 65 mm (0 V) and x = 165 mm (1.5 V): V = 1.5 V · (x − 65 mm) / 100 mm. */
export function betweenBars(setup: Setup): SolvedSetup {
  const potential = (x: number): number => (1.5 * (x - 65)) / 100;
  const equipotentials = setup.equipotentials.values_V.map((value_V) => {
    const x = 65 + (value_V / 1.5) * 100;
    return { value_V, lines: [traced([x, 0, x, 160], false)] };
  });
  const fieldLines = [30, 40, 50, 60, 70, 80, 90, 100, 110, 120, 130].map(
    (y): FieldLine => ({
      ...traced([165, y, 140, y, 115, y, 90, y, 65, y], false),
      half: 2,
    }),
  );
  return solution(setup, potential, { equipotentials, fieldLines, lineCurrent_A: 5e-5 });
}

/** Disc of radius 10 mm at 3 V in a ring of inner radius 80 mm at 0 V, centre (120, 100) mm: V = 3 V · ln(80 mm / r) / ln 8. */
export function coaxialField(setup: Setup): SolvedSetup {
  const radiusAt = (value_V: number): number => 80 / Math.exp((value_V / 3) * Math.log(8));
  const equipotentials = setup.equipotentials.values_V.map((value_V) => ({
    value_V,
    lines: [traced(round(radiusAt(value_V)), true)],
  }));
  const fieldLines = Array.from({ length: 12 }, (_, i): FieldLine => {
    const angle = ((i + 0.5) * Math.PI) / 6;
    const along = [10, radiusAt(1.5), 80].flatMap((r) => [
      120 + r * Math.cos(angle),
      100 + r * Math.sin(angle),
    ]);
    return { ...traced(along, false), half: 1 };
  });
  const potential = (x: number, y: number): number =>
    (3 * Math.log(80 / Math.sqrt((x - 120) ** 2 + (y - 100) ** 2))) / Math.log(8);
  return solution(setup, potential, { equipotentials, fieldLines, lineCurrent_A: null });
}

function round(r: number): number[] {
  return Array.from({ length: 360 }, (_, i) => (i * Math.PI) / 180).flatMap((angle) => [
    120 + r * Math.cos(angle),
    100 + r * Math.sin(angle),
  ]);
}

const traced = (points: readonly number[], closed: boolean): TracedLine => ({
  points: Float64Array.from(points),
  closed,
});

function solution(
  setup: Setup,
  potential: (x: number, y: number) => number,
  traces: SolvedSetup['traces'],
): SolvedSetup {
  const probes: SetupReadings['probes'] = setup.probes.map(({ name, at }) => ({
    name,
    x_mm: at.x,
    y_mm: at.y,
    potential_V: potential(at.x, at.y),
    reading_V: potential(at.x, at.y),
    strength_V_per_m: null,
    source_resistance_ohm: null,
    uncertainty_V: 1e-6,
  }));
  return {
    readings: {
      name: setup.name,
      resistance_ohm: null,
      resistance_bounds_ohm: null,
      current_A: null,
      current_bounds_A: null,
      electrodes: [],
      probes,
      rows: [],
    },
    traces,
    samples: [],
    gaps: [],
    work: { unknowns: 0, order: 0, gap: 0 },
  };
}
