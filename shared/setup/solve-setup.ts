/** Solves a setup: field problem out, engine, circuit, and back to readings at probes, rows and electrodes, with lines to draw. */
import type { Field, FieldOutcome, FieldTrouble } from '../field/field.ts';
import type { Point } from '../field/geometry/outline.ts';
import { equipotentialLines } from '../field/sample/contours.ts';
import { fieldLines } from '../field/sample/streamlines.ts';
import { solveField } from '../field/solve/solve-field.ts';
import type { Finding } from '../findings/finding.ts';
import { type CircuitState, type Conductances, paperResistance, solveCircuit } from './bounds.ts';
import { type Circuit, circuitOf } from './circuit.ts';
import { nothingAt, type PointReader, pointReader } from './points.ts';
import { problemOf } from './problem.ts';
import type { ElectrodeReading, SetupReadings, SetupTraces, SolvedSetup } from './readings.ts';
import { rounded, roundedPair } from './rounding.ts';
import type { Setup } from './setup.ts';
import { troubleFinding } from './trouble.ts';

export interface Ask {
  /** Relative width of the conductance bounds to reach. */
  readonly gap: number;
  /** Equipotentials and field lines as well. */
  readonly traces: boolean;
  /** Further places to read. */
  readonly samples: readonly Point[];
}

/** No mesh grows beyond this many unknowns. */
const mostUnknowns = 200_000;

/** Field lines where the block does not say how many. */
const usualFieldLines = 16;

/** What solving came to, without any place in the text: it holds for every setup of the same meaning. Both null where it is not `solvable`. */
export interface Outcome {
  readonly solved: SolvedSetup | null;
  readonly trouble: FieldTrouble | null;
}

export function outcomeOf(setup: Setup, ask: Ask): Outcome {
  if (!setup.solvable) return { solved: null, trouble: null };
  const outcome: FieldOutcome = solveField(problemOf(setup), { gap: ask.gap, maxUnknowns: mostUnknowns });
  return outcome.ok
    ? { solved: solvedWith(setup, outcome.field, ask), trouble: null }
    : { solved: null, trouble: outcome.trouble };
}

/** `solved` is null for a setup that is not `solvable` and where the engine finds no solution, which is then a finding. */
export function solveSetup(
  setup: Setup,
  ask: Ask,
): { solved: SolvedSetup | null; findings: readonly Finding[] } {
  const { solved, trouble } = outcomeOf(setup, ask);
  return { solved, findings: trouble === null ? [] : [troubleFinding(setup, trouble)] };
}

/** The entry of a setup without a solution: every value is null. */
export function unsolvedReadings(setup: Setup): SetupReadings {
  return {
    name: setup.name,
    resistance_ohm: null,
    resistance_bounds_ohm: null,
    current_A: null,
    current_bounds_A: null,
    electrodes: setup.electrodes.map(({ name }) => ({
      name,
      potential_V: null,
      reading_V: null,
      current_A: null,
      current_bounds_A: null,
    })),
    ...placesRead(setup, { read: nothingAt }),
  };
}

function solvedWith(setup: Setup, field: Field, ask: Ask): SolvedSetup {
  const conductances: Conductances = {
    upper_S: field.upper_S,
    lower_S: Number.isFinite(field.gap) ? field.lower_S : null,
  };
  const circuit = circuitOf(setup);
  const state = solveCircuit(circuit, conductances);
  const reader = pointReader(setup, field, circuit, state);
  return {
    readings: {
      ...totals(setup, conductances, state),
      electrodes: setup.electrodes.map((electrode) => ({
        ...electrodeReading(electrode, setup, circuit, state),
        reading_V: electrode.conductor === null ? null : reader.onConductor(electrode.conductor),
      })),
      ...placesRead(setup, reader),
    },
    traces: ask.traces
      ? tracesOf(setup, field, state)
      : { equipotentials: [], fieldLines: [], lineCurrent_A: null },
    samples: ask.samples.map(reader.read),
    work: { unknowns: field.unknowns, order: field.order, gap: field.gap },
  };
}

function placesRead(
  setup: Setup,
  { read }: Pick<PointReader, 'read'>,
): Pick<SetupReadings, 'probes' | 'rows'> {
  return {
    probes: setup.probes.map(({ name, at }) => ({ name, ...read(at) })),
    rows: setup.rows.map(({ name, points }) => ({
      name,
      points: points.map(({ distance_mm, at }) => ({ distance_mm: rounded(distance_mm), ...read(at) })),
    })),
  };
}

const knowsResistance = (setup: Setup): boolean => setup.paper?.resistance_ohm != null;

/** Currents and resistances are those of a stand-in where no sheet resistance is given, and are then not told. */
function totals(
  setup: Setup,
  conductances: Conductances,
  { supply_A, supplyBounds_A }: CircuitState,
): Omit<SetupReadings, 'electrodes' | 'probes' | 'rows'> {
  const { name } = setup;
  if (!knowsResistance(setup)) {
    const untold = {
      resistance_ohm: null,
      resistance_bounds_ohm: null,
      current_A: null,
      current_bounds_A: null,
    };
    return { name, ...untold };
  }
  const resistance = paperResistance(setup, conductances);
  return {
    name,
    resistance_ohm: resistance === null ? null : rounded(resistance.value_ohm),
    resistance_bounds_ohm: roundedPair(resistance?.bounds_ohm ?? null),
    current_A: supply_A === null ? null : rounded(supply_A),
    current_bounds_A: roundedPair(supplyBounds_A),
  };
}

/** Touching electrodes are one conductor: each tells the current of the whole. */
function electrodeReading(
  { name, conductor }: Setup['electrodes'][number],
  setup: Setup,
  circuit: Circuit,
  { state, solved, conductorBounds_A }: CircuitState,
): Omit<ElectrodeReading, 'reading_V'> {
  const node = circuit.nodeOf(name);
  const known = node !== null && solved.adrift[node] !== true && conductor !== null;
  const current =
    conductor === null || !knowsResistance(setup) ? null : beyondNoise(state.conductor_A, conductor);
  return {
    name,
    potential_V: known ? rounded(state.node_V[node] ?? 0) : null,
    current_A: current === null ? null : rounded(current),
    current_bounds_A:
      current === null || conductor === null ? null : roundedPair(conductorBounds_A[conductor] ?? null),
  };
}

/** The current of a floating conductor is a sum of large parts that leaves their rounding: it is zero. */
function beyondNoise(currents: Float64Array, conductor: number): number | null {
  const value = currents[conductor];
  if (value === undefined) return null;
  const largest = currents.reduce((most, current) => Math.max(most, Math.abs(current)), 0);
  return Math.abs(value) > 1e-13 * largest ? value : 0;
}

function tracesOf(setup: Setup, field: Field, { state }: CircuitState): SetupTraces {
  const values = setup.equipotentials.values_V;
  const lines = equipotentialLines(field.primal.potential(state.conductor_V), values);
  const asked = setup.fieldLines ?? usualFieldLines;
  const traced = asked > 0 ? fieldLines(field, state.conductor_V, asked) : null;
  return {
    equipotentials: values.map((value_V, i) => ({ value_V, lines: lines[i] ?? [] })),
    fieldLines: traced?.lines ?? [],
    lineCurrent_A: traced !== null && knowsResistance(setup) ? rounded(traced.current) : null,
  };
}
