/** Readings at points: what the paper or the metal stands at, what the meter shows, and how sure that is. */
import type { Field } from '../field/field.ts';
import type { Point } from '../field/geometry/outline.ts';
import { pointResponse } from '../field/sample/point-response.ts';
import { type Sample, sampler } from '../field/sample/sampler.ts';
import type { CircuitState } from './bounds.ts';
import type { Circuit } from './circuit.ts';
import { meterReading, type Touch } from './loading.ts';
import { metalAt, unreadable } from './metal.ts';
import { sheetScale } from './problem.ts';
import type { PointReading } from './readings.ts';
import { rounded, roundedPosition } from './rounding.ts';
import type { Setup } from './setup.ts';

export type BareReading = {
  readonly [K in 'potential_V' | 'strength_V_per_m' | 'uncertainty_V']: NonNullable<PointReading[K]>;
};

export interface PointReader {
  read(at: Point): PointReading;
  /** What the meter shows on a conductor, V; null where nothing fixes its potential. */
  onConductor(conductor: number): number | null;
  /** What bare paper stands at, without a meter and so at little cost; null as for `strength`. */
  bare(at: Point): BareReading | null;
  /** The field on bare paper, V/m, at less cost than a reading; null elsewhere and where nothing fixes the potential. */
  strength(at: Point): readonly [number, number] | null;
}

/**
 * An estimate, not a bound: on the scenes measured, the worst error of a potential was 0.02 to 0.05 of the root of the relative
 * width of the bounds, times the range of potentials (common practice, no source).
 */
const errorPerRootGap = 0.05;
/** Where no bounds are known. */
const assumedGap = 1e-4;
const rounding = 1e-12;
/** Potential sampled and potential by reciprocity differ by error; beside metal a broad tip moves the second one further. */
const mostApart = 4;

/** The field is that of the setup's unit problem. */
export function pointReader(
  setup: Setup,
  field: Field,
  circuit: Circuit,
  circuitState: CircuitState,
): PointReader {
  const paper = paperReader(setup, field, circuit, circuitState);
  const metal = metalReader(setup, circuit, circuitState);
  return {
    read(at) {
      if (unreadable(setup, at) !== null) return nothingAt(at);
      const conductor = metalAt(setup, at)?.conductor ?? null;
      return conductor === null ? paper.read(at) : metal(at, conductor);
    },
    onConductor: (conductor) => metal({ x: 0, y: 0 }, conductor).reading_V,
    bare: paper.bare,
    strength: paper.strength,
  };
}

type Shown = Pick<PointReading, 'reading_V' | 'source_resistance_ohm'>;

/** Without a meter the reading is the potential. */
function shows(
  { meter }: Setup,
  circuit: Circuit,
  { solved, state }: CircuitState,
): (touch: Touch, open_V: number) => Shown {
  return (touch, open_V) => {
    if (meter === null) return { reading_V: rounded(open_V), source_resistance_ohm: null };
    const { reading_V, source_ohm } = meterReading(circuit, solved, state, meter, touch, open_V);
    return { reading_V: rounded(reading_V), source_resistance_ohm: rounded(source_ohm) };
  };
}

function metalReader(
  setup: Setup,
  circuit: Circuit,
  circuitState: CircuitState,
): (at: Point, conductor: number) => PointReading {
  const { solved, state, conductorSpread_V } = circuitState;
  const shown = shows(setup, circuit, circuitState);
  return (at, conductor) => {
    const node = circuit.network.nodeOf[conductor];
    if (node === undefined || solved.adrift[node] === true) return nothingAt(at);
    const value = state.node_V[node] ?? 0;
    return {
      ...positionOf(at),
      potential_V: rounded(value),
      ...shown({ kind: 'metal', node }, value),
      strength_V_per_m: [0, 0],
      uncertainty_V: rounded(conductorSpread_V[conductor] ?? 0),
    };
  };
}

function paperReader(
  setup: Setup,
  field: Field,
  circuit: Circuit,
  circuitState: CircuitState,
): Pick<PointReader, 'read' | 'bare' | 'strength'> {
  const { conductor_V } = circuitState.state;
  const potential = sampler(field.primal.potential(conductor_V));
  const adrift = adriftAt(field, circuitState);
  const shown = shows(setup, circuit, circuitState);
  const uncertainty = uncertaintyOf(field, circuitState);
  const scale = sheetScale(setup);
  const read = (at: Point): PointReading => {
    const sample = potential.at(at.x, at.y);
    if (sample === null || adrift(at)) return nothingAt(at);
    const response = setup.meter === null ? null : pointResponse(field, at.x, at.y, setup.meter.tip_mm / 2);
    const open_V = response?.potentialOf(conductor_V) ?? sample.value;
    const [x, y] = strengthOf(sample);
    return {
      ...positionOf(at),
      potential_V: rounded(sample.value),
      ...(response === null
        ? { reading_V: rounded(sample.value), source_resistance_ohm: null }
        : shown({ kind: 'paper', weights: response.weights, self_ohm: scale * response.self_ohm }, open_V)),
      strength_V_per_m: [rounded(x), rounded(y)],
      uncertainty_V: rounded(uncertainty(Math.abs(open_V - sample.value))),
    };
  };
  return {
    read,
    bare(at) {
      const sample = potential.at(at.x, at.y);
      if (sample === null || adrift(at)) return null;
      const [x, y] = strengthOf(sample);
      return {
        potential_V: rounded(sample.value),
        strength_V_per_m: [rounded(x), rounded(y)],
        uncertainty_V: rounded(uncertainty(0)),
      };
    },
    strength(at) {
      const sample = potential.at(at.x, at.y);
      return sample === null || adrift(at) ? null : strengthOf(sample);
    },
  };
}

/** −grad V, from V/mm to V/m. */
const strengthOf = ({ gradient: [gx, gy] }: Sample): readonly [number, number] => [-1000 * gx, -1000 * gy];

/** Of a potential on paper, given how far that found by reciprocity lies from the one sampled. */
function uncertaintyOf(
  field: Field,
  { state, conductorSpread_V }: CircuitState,
): (apart_V: number) => number {
  const range_V = Math.max(...state.conductor_V) - Math.min(...state.conductor_V);
  const gap = Number.isFinite(field.gap) ? Math.max(0, field.gap) : assumedGap;
  const ofField = (errorPerRootGap * Math.sqrt(gap) + rounding) * range_V;
  const ofMetal = Math.max(0, ...conductorSpread_V);
  return (apart_V) => Math.max(ofField, Math.min(apart_V, mostApart * ofField)) + ofMetal;
}

/** True at points whose potential depends on metal that nothing ties down. */
function adriftAt(field: Field, { solved }: CircuitState): (at: Point) => boolean {
  const loose = solved.network.nodeOf.map((node) => solved.adrift[node] === true);
  if (!loose.includes(true)) return () => false;
  const share = sampler(field.primal.potential(Float64Array.from(loose, (is) => (is ? 1 : 0))));
  return ({ x, y }) => Math.abs(share.at(x, y)?.value ?? 0) > 1e-9;
}

const positionOf = ({ x, y }: Point): Pick<PointReading, 'x_mm' | 'y_mm'> => ({
  x_mm: roundedPosition(x),
  y_mm: roundedPosition(y),
});

/** A place where nothing can be read. */
export const nothingAt = (at: Point): PointReading => ({
  ...positionOf(at),
  potential_V: null,
  reading_V: null,
  strength_V_per_m: null,
  source_resistance_ohm: null,
  uncertainty_V: null,
});
