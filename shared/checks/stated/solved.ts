/** What the solution has at the places that a text names. Null, or nothing, where the place is not certain. */
import { insideOutline } from '../../field/geometry/measure.ts';
import type { Point } from '../../field/geometry/outline.ts';
import { hypot } from '../../field/maths.ts';
import { gapsOf } from '../../setup/gaps.ts';
import { metalAt } from '../../setup/metal.ts';
import { boxCentre, distance, dot, minus, plus, times } from '../../setup/plane.ts';
import type { GapReading, PointReading, SolvedSetup } from '../../setup/readings.ts';
import type { Electrode, Piece, Row, Setup } from '../../setup/setup.ts';
import { along, type CurvePoint } from './curve.ts';
import type { Place } from './skeleton.ts';

export interface Solution {
  readonly setup: Setup;
  readonly solution: SolvedSetup;
}

/** A potential at a place: what the meter shows and what the paper stands at without it may both be meant. */
export interface PotentialAt {
  readonly values_V: readonly number[];
  readonly uncertainty_V: number;
}

/** Positions nearer than this are one, mm. */
const same_mm = 0.01;

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

/** A point of the paper, or the name of an electrode. Several where it is not said which. */
function pointsOf(place: Place, setup: Setup): readonly (Point | string)[] {
  switch (place.kind) {
    case 'spot': {
      const probe = setup.probes.find(({ name }) => name === place.name);
      if (probe !== undefined) return [probe.at];
      return setup.electrodes.some(({ name }) => name === place.name) ? [place.name] : [];
    }
    case 'terminal':
    case 'shape':
      return electrodesOf(place, setup).map(({ name }) => name);
    case 'along': {
      const row = rowCalled(place.row, setup);
      return row === null ? [] : inRow(row, place.distance_mm);
    }
    case 'radius':
      return only(setup.rows.filter((row) => isRadial(row, setup))).flatMap((row) =>
        inRow(row, place.distance_mm - row.startRadius_mm),
      );
    case 'from':
      return fromElectrode(place, setup);
    case 'midway':
      return midway(place, setup);
    case 'middle of row': {
      const row = rowCalled(place.row, setup);
      return row?.end == null ? [] : inRow(row, distance(row.start, row.end) / 2);
    }
    case 'middle':
      return middle(place, setup);
    case 'centre':
      return electrodesOf(place.of, setup).map(({ box }) => boxCentre(box));
    case 'inside':
      return electrodesOf(place.of, setup).flatMap((electrode) =>
        setup.probes.filter(({ at }) => isInHollow(at, electrode)).map(({ at }) => at),
      );
  }
}

/** From the edge or the centre of round metal outward. */
function isRadial({ start, startRadius_mm }: Row, { electrodes }: Setup): boolean {
  return (
    startRadius_mm > 0 ||
    electrodes.some(({ box, pieces }) => pieces.every(isRound) && distance(boxCentre(box), start) < same_mm)
  );
}

const isRound = ({ shape }: Piece): boolean => shape.shape === 'disc' || shape.shape === 'ring';

const only = <T>(list: readonly T[]): readonly T[] => (list.length === 1 ? list : []);

/** The electrode that is meant; none where several could be. */
function electrodesOf(place: Place, { electrodes }: Setup): readonly Electrode[] {
  switch (place.kind) {
    case 'spot':
      return electrodes.filter(({ name }) => name === place.name);
    case 'terminal':
      return only(
        electrodes.filter(({ connection, partOf }) => connection?.kind === place.of && partOf === null),
      );
    case 'shape': {
      const wanted: Readonly<Record<string, string>> = { disk: 'disc', plate: 'bar' };
      const shape = wanted[place.of] ?? place.of;
      return only(electrodes.filter(({ pieces }) => pieces.some((piece) => piece.shape.shape === shape)));
    }
    default:
      return [];
  }
}

const rowCalled = (name: string, { rows }: Setup): Row | null =>
  rows.find((row) => row.name === name) ?? null;

function inRow({ start, end, direction, points }: Row, d: number): readonly Point[] {
  const length = end === null ? (points.at(-1)?.distance_mm ?? 0) : distance(start, end);
  return d < -same_mm || d > length + same_mm ? [] : [plus(start, times(direction, d))];
}

/** Along the row that begins or ends at the electrode, else across the gap beside it. */
function fromElectrode(
  { of, distance_mm, centre, row: name }: Place & { readonly kind: 'from' },
  setup: Setup,
): readonly Point[] {
  const [electrode] = electrodesOf(of, setup);
  if (electrode === undefined) {
    const probe = of.kind === 'spot' ? setup.probes.find((one) => one.name === of.name) : undefined;
    const row = name === null ? null : rowCalled(name, setup);
    if (probe === undefined || row === null || distance(row.start, probe.at) > same_mm) return [];
    return inRow(row, distance_mm);
  }
  const middle = boxCentre(electrode.box);
  const round = electrode.pieces.every(isRound);
  // "40 mm from the disc": from its edge or from its centre? Not said.
  if (round && !centre) return [];
  const lines = [
    ...setup.rows.map((row) => ({ row: row.name, ...lineOf(row) })),
    ...gapsOf(setup).map(({ start, end }) => ({ row: null, start, end })),
  ].filter((line) => name === null || line.row === name);
  return lines.flatMap(({ start, end }) => {
    const towards =
      end === null
        ? []
        : [
            { near: start, far: end },
            { near: end, far: start },
          ];
    return towards.flatMap(({ near, far }) => {
      const offset = beginsAt(near, far, electrode, middle);
      const length = distance(near, far);
      if (offset === null || (centre ? offset === 0 && distance(near, middle) > same_mm : false)) return [];
      const d = centre ? distance_mm - offset : distance_mm;
      if (d < -same_mm || d > length + same_mm) return [];
      return [plus(near, times(minus(far, near), d / length))];
    });
  });
}

function lineOf(row: Row): { readonly start: Point; readonly end: Point | null } {
  const last = row.points.at(-1)?.at ?? null;
  return { start: row.start, end: row.end ?? last };
}

/** How far from the electrode's centre a line begins that leaves its edge, tip or centre; null for another line. */
function beginsAt(near: Point, far: Point, electrode: Electrode, middle: Point): number | null {
  const onIt =
    metalAt({ electrodes: [{ ...electrode, conductor: electrode.conductor ?? 0 }] }, near) !== null;
  const ahead = plus(near, times(minus(far, near), 1e-3));
  const within =
    metalAt({ electrodes: [{ ...electrode, conductor: electrode.conductor ?? 0 }] }, ahead) !== null;
  if (distance(near, middle) <= same_mm) return 0;
  return onIt && !within ? distance(near, middle) : null;
}

function midway({ between }: Place & { readonly kind: 'midway' }, setup: Setup): readonly Point[] {
  const names = between?.map((of) => only(electrodesOf(of, setup))[0]?.name);
  const gaps = gapsOf(setup).filter(
    ({ from, to }) => names === undefined || (names.includes(from) && names.includes(to)),
  );
  return only(gaps).map(({ start, end }) => times(plus(start, end), 0.5));
}

/** Of the paper; without a word of what, only where a probe stands in the middle of something. */
function middle({ of }: Place & { readonly kind: 'middle' }, setup: Setup): readonly Point[] {
  const { paper, probes } = setup;
  if (paper === null) return [];
  const centre = { x: paper.width_mm / 2, y: paper.height_mm / 2 };
  if (of === 'paper') return [centre];
  const middles = [
    centre,
    ...gapsOf(setup).map(({ start, end }) => times(plus(start, end), 0.5)),
    ...setup.rows.flatMap(({ start, end }) => (end === null ? [] : [times(plus(start, end), 0.5)])),
    ...setup.electrodes
      .filter(({ pieces }) => pieces.some(({ geometry }) => geometry.hollows.length > 0))
      .map(({ box }) => boxCentre(box)),
  ];
  return probes
    .filter(({ at }) => middles.some((point) => distance(point, at) < same_mm))
    .map(({ at }) => at);
}

export function isInHollow(at: Point, { pieces }: Electrode): boolean {
  return pieces.some(({ geometry }) => geometry.hollows.some((hollow) => insideOutline(hollow, at)));
}

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
