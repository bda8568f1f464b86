/** What the solution has at the places that a text names. Null, or nothing, where the place is not certain. */
import type { Point } from '../../field/geometry/outline.ts';
import { hypot } from '../../field/maths.ts';
import { gapsOf } from '../../setup/gaps.ts';
import { metalAt } from '../../setup/metal.ts';
import { distance, dot, minus, plus, times } from '../../setup/plane.ts';
import type { GapReading, PointReading, SolvedSetup } from '../../setup/readings.ts';
import type { Row, Setup } from '../../setup/setup.ts';
import { along, type CurvePoint } from './curve.ts';
import type { Place } from './skeleton.ts';
import { inRow, pointsOf, same_mm } from './whereabouts.ts';

export interface Solution {
  readonly setup: Setup;
  readonly solution: SolvedSetup;
}

/** A potential at a place: what the meter shows and what the paper stands at without it may both be meant. */
export interface PotentialAt {
  readonly values_V: readonly number[];
  readonly uncertainty_V: number;
}

/** Null where the setup has no such place, or more than one that could be meant. */
export function potentialAt(place: Place, solved: Solution): PotentialAt | null {
  const points = pointsOf(place, solved.setup);
  const found = points.map((at) => (typeof at === 'string' ? onElectrode(at, solved) : atPoint(at, solved)));
  const [first] = found;
  if (first === undefined || first === null) return null;
  return found.every((other) => other !== null && alike(first, other)) ? first : null;
}

const alike = (a: PotentialAt, b: PotentialAt): boolean =>
  a.values_V.every(
    (value, i) => Math.abs(value - (b.values_V[i] ?? value)) <= a.uncertainty_V + b.uncertainty_V + 1e-4,
  );

/** The field at a probe or point, V/m; null on metal and where it is not known. */
export function strengthAt(place: Place, { setup, solution }: Solution): number | null {
  const [at, second] = pointsOf(place, setup);
  if (at === undefined || typeof at === 'string' || second !== undefined) return null;
  const found = readingsOf(solution).find(({ x_mm, y_mm }) => distance({ x: x_mm, y: y_mm }, at) < same_mm);
  if (found === undefined || found.strength_V_per_m === null || metalAt(setup, at) !== null) return null;
  return hypot(...found.strength_V_per_m);
}

const readingsOf = ({ readings, samples }: SolvedSetup): readonly PointReading[] => [
  ...readings.probes,
  ...samples,
  ...readings.rows.flatMap(({ points }) => points),
];

function onElectrode(name: string, { setup, solution }: Solution): PotentialAt | null {
  const found = solution.readings.electrodes.find((electrode) => electrode.name === name);
  if (found === undefined || found.potential_V === null) return null;
  return {
    values_V: [found.reading_V ?? found.potential_V, found.potential_V],
    uncertainty_V: 1e-6 * emfOf(setup),
  };
}

export const emfOf = ({ supply }: Setup): number => Math.abs(supply?.emf_V ?? 1);

/** Where something is read, that; else on metal, that; else between the places that are read. */
function atPoint(at: Point, solved: Solution): PotentialAt | null {
  const { setup, solution } = solved;
  const read = readingsOf(solution).find(({ x_mm, y_mm }) => distance({ x: x_mm, y: y_mm }, at) < same_mm);
  if (read?.potential_V != null) {
    return {
      values_V: [read.reading_V ?? read.potential_V, read.potential_V],
      uncertainty_V: read.uncertainty_V ?? 0,
    };
  }
  const metal = metalAt(setup, at);
  if (metal !== null) return onElectrode(metal.name, solved);
  return acrossGap(at, solved) ?? alongRow(at, solved);
}

function acrossGap(at: Point, { setup, solution }: Solution): PotentialAt | null {
  for (const [i, { start, end }] of gapsOf(setup).entries()) {
    const d = placeOn(start, end, at);
    const gap = solution.gaps[i];
    if (d === null || gap === undefined) continue;
    const found = along(gapCurve(gap, { setup, solution }), d);
    if (found === null) continue;
    const meter_V = loadingOf(setup) * Math.abs(found.value_V);
    return {
      values_V: againstBlack(found.value_V, { setup, solution }),
      uncertainty_V: found.uncertainty_V + meter_V,
    };
  }
  return null;
}

/** Largest part of a reading that the meter takes away in the open paper: the tip's resistance is about that of two squares at most (common practice, no source). */
function loadingOf({ meter, paper }: Setup): number {
  return meter === null || paper?.resistance_ohm == null
    ? 0
    : (2 * Math.max(...paper.resistance_ohm)) / meter.resistance_ohm;
}

function againstBlack(value_V: number, { setup, solution }: Solution): readonly number[] {
  const black =
    solution.readings.electrodes.find(({ name }) => name === setup.meter?.blackLead)?.potential_V ?? 0;
  return [value_V - black, value_V];
}

/** With the metal at its ends. */
function gapCurve(
  { from, to, length_mm, points }: GapReading,
  { solution }: Solution,
): readonly CurvePoint[] {
  const metal = (name: string): number | null =>
    solution.readings.electrodes.find((electrode) => electrode.name === name)?.potential_V ?? null;
  const [first, last] = [points[0], points.at(-1)];
  if (first === undefined || last === undefined) return [];
  const direction = times(
    minus({ x: last.x_mm, y: last.y_mm }, { x: first.x_mm, y: first.y_mm }),
    1 / distance({ x: last.x_mm, y: last.y_mm }, { x: first.x_mm, y: first.y_mm }),
  );
  const ends = (distance_mm: number, name: string): CurvePoint => ({
    distance_mm,
    value_V: metal(name),
    slope_V_per_mm: null,
    uncertainty_V: 0,
  });
  return [
    ends(0, from),
    ...points.map(({ distance_mm, potential_V, strength_V_per_m, uncertainty_V }) => ({
      distance_mm,
      value_V: potential_V,
      slope_V_per_mm: strength_V_per_m === null ? null : slopeAlong(strength_V_per_m, direction),
      uncertainty_V: uncertainty_V ?? 0,
    })),
    ends(length_mm, to),
  ];
}

/** dV/ds = −E·u, V/mm. */
const slopeAlong = ([x, y]: readonly [number, number], u: Point): number => -dot({ x, y }, u) / 1000;

function alongRow(at: Point, { setup, solution }: Solution): PotentialAt | null {
  for (const [i, row] of setup.rows.entries()) {
    const d = placeOn(row.start, plus(row.start, times(row.direction, 1e4)), at);
    const points = solution.readings.rows[i]?.points ?? [];
    if (d === null) continue;
    const curves = (['reading_V', 'potential_V'] as const).map((key) =>
      points.map(
        (point): CurvePoint => ({
          distance_mm: point.distance_mm,
          value_V: point[key],
          slope_V_per_mm: slopeOf(point, row, setup),
          uncertainty_V: point.uncertainty_V ?? 0,
        }),
      ),
    );
    const found = curves.flatMap((curve) => along(curve, d) ?? []);
    if (found.length < 2) continue;
    return {
      values_V: found.map(({ value_V }) => value_V),
      uncertainty_V: Math.max(...found.map(({ uncertainty_V }) => uncertainty_V)),
    };
  }
  return null;
}

/** Metal has no slope of its own: beside it there is one. */
function slopeOf(point: PointReading, { direction }: Row, setup: Setup): number | null {
  if (point.strength_V_per_m === null || metalAt(setup, { x: point.x_mm, y: point.y_mm }) !== null)
    return null;
  return slopeAlong(point.strength_V_per_m, direction);
}

/** Distance along the line from `start` to `end` of a point on it. */
function placeOn(start: Point, end: Point, at: Point): number | null {
  const length = distance(start, end);
  if (length === 0) return null;
  const u = times(minus(end, start), 1 / length);
  const d = dot(minus(at, start), u);
  const off = distance(at, plus(start, times(u, d)));
  return off > same_mm || d < -same_mm || d > length + same_mm ? null : d;
}

/** Potential at a distance along a row, for tables. */
export function potentialInRow(row: Row, distance_mm: number, solved: Solution): PotentialAt | null {
  const [at] = inRow(row, distance_mm);
  return at === undefined ? null : atPoint(at, solved);
}
