/** Solves a setup: field problem out, engine, circuit, and back to readings at probes, rows and electrodes, with lines to draw. */
import type { Field, FieldOutcome, FieldRest, FieldTrouble } from '../field/field.ts';
import type { Point } from '../field/geometry/outline.ts';
import { equipotentialLines } from '../field/sample/contours.ts';
import { fieldLines } from '../field/sample/streamlines.ts';
import { solvingField } from '../field/solve/solve-field.ts';
import { drained, type Stages } from '../field/solve/stages.ts';
import type { Finding } from '../findings/finding.ts';
import { fingerprint } from '../text/fingerprint.ts';
import { type CircuitState, type Conductances, paperResistance, solveCircuit } from './bounds.ts';
import { type Circuit, circuitOf } from './circuit.ts';
import { gapsRead } from './gaps.ts';
import { nothingAt, type PointReader, pointReader } from './points.ts';
import { sheetScale, unitProblemOf } from './problem.ts';
import type { ElectrodeReading, SetupReadings, SetupTraces, SolvedSetup } from './readings.ts';
import { rounded, roundedPair } from './rounding.ts';
import type { Setup } from './setup.ts';
import { troubleFinding } from './trouble.ts';

export interface Ask {
  /** Relative width of the conductance bounds to reach. */
  readonly gap: number;
  /** Equipotentials and field lines as well; or equipotentials alone, for findings that do not wait for the drawing. */
  readonly traces: boolean | 'equipotentials';
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
  return setup.solvable
    ? drained(readingStages(setup, drained(fieldStages(setup, ask)), ask))
    : { solved: null, trouble: null };
}

/** The field of a `solvable` setup, by stages, for a sheet resistance of 1 Ω where that is the same along x and y. */
export function fieldStages(setup: Setup, { gap }: Pick<Ask, 'gap'>): Stages<FieldOutcome, FieldRest> {
  return solvingField(unitProblemOf(setup), { gap, maxUnknowns: mostUnknowns });
}

/** Setups of one key have one field, whatever is joined to their electrodes and wherever they are read. */
export function fieldKey(setup: Setup, { gap }: Pick<Ask, 'gap'>): string {
  return fingerprint(JSON.stringify([unitProblemOf(setup), gap]));
}

/** What a setup's field comes to with its circuit, probes, rows and lines, by stages. */
export function* readingStages(setup: Setup, outcome: FieldOutcome, ask: Ask): Stages<Outcome> {
  return outcome.ok
    ? { solved: yield* solvedWith(setup, outcome.field, ask), trouble: null }
    : { solved: null, trouble: outcome.trouble };
}

/** What was solved with equipotentials alone, with the field lines as well: as if they had been asked for at once. */
export function* withFieldLines(setup: Setup, field: Field, solved: SolvedSetup): Stages<SolvedSetup> {
  const { state } = solveCircuit(circuitOf(setup), conductancesOf(setup, field));
  return { ...solved, traces: { ...solved.traces, ...(yield* fieldLinesOf(setup, field, state)) } };
}

/** Reads a setup's field at any place. */
export function fieldReader(setup: Setup, field: Field): PointReader {
  const circuit = circuitOf(setup);
  return pointReader(setup, field, circuit, solveCircuit(circuit, conductancesOf(setup, field)));
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
    ...drained(placesRead(setup, { read: nothingAt })),
  };
}

function conductancesOf(setup: Setup, { upper_S, lower_S, gap }: Field): Conductances {
  const scale = sheetScale(setup);
  const scaled = (values: Float64Array): Float64Array => values.map((value) => value / scale);
  return { upper_S: scaled(upper_S), lower_S: Number.isFinite(gap) ? scaled(lower_S) : null };
}

function* solvedWith(setup: Setup, field: Field, ask: Ask): Stages<SolvedSetup> {
  const conductances = conductancesOf(setup, field);
  const circuit = circuitOf(setup);
  const state = solveCircuit(circuit, conductances);
  const reader = pointReader(setup, field, circuit, state);
  yield;
  const places = yield* placesRead(setup, reader);
  const samples = yield* each(ask.samples, reader.read);
  const gaps = gapsRead(setup, reader);
  const readings = {
    ...totals(setup, conductances, state),
    electrodes: setup.electrodes.map((electrode) => ({
      ...electrodeReading(electrode, setup, circuit, state),
      reading_V: electrode.conductor === null ? null : reader.onConductor(electrode.conductor),
    })),
    ...places,
  };
  const equipotentials = ask.traces === false ? [] : yield* equipotentialsOf(setup, field, state.state);
  const traced = ask.traces === true ? yield* fieldLinesOf(setup, field, state.state) : noFieldLines;
  return {
    readings,
    traces: { equipotentials, ...traced },
    samples,
    gaps,
    work: { unknowns: field.unknowns, order: field.order, gap: field.gap },
  };
}

/** One after the other, with a rest before each. */
function* each<T, R>(list: readonly T[], made: (item: T) => R): Stages<readonly R[]> {
  const results: R[] = [];
  for (const item of list) {
    yield;
    results.push(made(item));
  }
  return results;
}

function* placesRead(
  setup: Setup,
  { read }: Pick<PointReader, 'read'>,
): Stages<Pick<SetupReadings, 'probes' | 'rows'>> {
  const probes = yield* each(setup.probes, ({ name, at }) => ({ name, ...read(at) }));
  const rows: SetupReadings['rows'][number][] = [];
  for (const { name, points } of setup.rows) {
    const found = yield* each(points, ({ distance_mm, at }) => ({
      distance_mm: rounded(distance_mm),
      ...read(at),
    }));
    rows.push({ name, points: found });
  }
  return { probes, rows };
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

type Potentials = CircuitState['state'];

function* equipotentialsOf(
  setup: Setup,
  field: Field,
  { conductor_V }: Potentials,
): Stages<SetupTraces['equipotentials']> {
  yield;
  const values = setup.equipotentials.values_V;
  const lines = equipotentialLines(field.primal.potential(conductor_V), values);
  return values.map((value_V, i) => ({ value_V, lines: lines[i] ?? [] }));
}

type FieldLines = Pick<SetupTraces, 'fieldLines' | 'lineCurrent_A'>;
const noFieldLines: FieldLines = { fieldLines: [], lineCurrent_A: null };

function* fieldLinesOf(setup: Setup, field: Field, { conductor_V }: Potentials): Stages<FieldLines> {
  yield;
  const asked = setup.fieldLines ?? usualFieldLines;
  const traced = asked > 0 ? fieldLines(field, conductor_V, asked) : null;
  const known = traced !== null && knowsResistance(setup);
  return {
    fieldLines: traced?.lines ?? [],
    lineCurrent_A: known ? rounded(traced.current / sheetScale(setup)) : null,
  };
}
