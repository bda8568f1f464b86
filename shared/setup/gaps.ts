/** Gaps between metal of different terminals, and what the paper stands at along the line between their facing edges. */
import { outlineBounds } from '../field/geometry/measure.ts';
import type { Point } from '../field/geometry/outline.ts';
import { type End, lineBetween } from './between.ts';
import { metalAt } from './metal.ts';
import { onItself, outermost } from './places.ts';
import {
  boxAround,
  boxCentre,
  crossings,
  curvesOfPieces,
  distance,
  minus,
  plus,
  times,
  unitVector,
} from './plane.ts';
import type { PointReader } from './points.ts';
import type { GapPoint, GapReading } from './readings.ts';
import { rounded, roundedPosition } from './rounding.ts';
import type { Electrode, Setup } from './setup.ts';
import { isPointed } from './shapes/table.ts';

export interface Gap {
  readonly from: string;
  readonly to: string;
  /** On the edges of the two. */
  readonly start: Point;
  readonly end: Point;
}

/** A setup with more electrodes than give so many gaps has no gap that a text would speak of. */
const mostGaps = 6;
const steps = 40;

/** Between each two electrodes that the circuit holds at different potentials, the lower terminal first; none where they are many. */
export function gapsOf({ electrodes }: Pick<Setup, 'electrodes'>): readonly Gap[] {
  const held = electrodes.filter(
    ({ connection, conductor }) => levelOf(connection) !== null && conductor !== null,
  );
  const pairs = held.flatMap((a, i) => held.slice(i + 1).flatMap((b) => ordered(a, b) ?? []));
  if (pairs.length > mostGaps) return [];
  return pairs.flatMap(({ low, high }) => {
    const line = lineBetween(endOf(low), endOf(high)) ?? concentricLine(low, high);
    return line === null ? [] : [{ from: low.name, to: high.name, start: line.from, end: line.to }];
  });
}

/** No reading has a meter's load: hundreds of places cost less than one reading with it. */
export function gapsRead(setup: Setup, { bare }: Pick<PointReader, 'bare'>): readonly GapReading[] {
  return gapsOf(setup).map(({ from, to, start, end }) => {
    const length = distance(start, end);
    const points = Array.from({ length: steps - 1 }, (_, i): GapPoint => {
      const part = (i + 1) / steps;
      const at = plus(start, times(minus(end, start), part));
      const found = metalAt(setup, at) === null ? bare(at) : null;
      return {
        distance_mm: rounded(part * length),
        x_mm: roundedPosition(at.x),
        y_mm: roundedPosition(at.y),
        potential_V: found?.potential_V ?? null,
        strength_V_per_m: found?.strength_V_per_m ?? null,
        uncertainty_V: found?.uncertainty_V ?? null,
      };
    });
    return { from, to, length_mm: rounded(length), points };
  });
}

/** Rises with the potential; positive metal counts as above any that is held. Null where the circuit holds nothing. */
function levelOf(connection: Electrode['connection']): number | null {
  switch (connection?.kind) {
    case 'negative':
      return 0;
    case 'positive':
      return Number.MAX_VALUE;
    case 'held':
      return connection.potential_V;
    default:
      return null;
  }
}

function ordered(a: Electrode, b: Electrode): { readonly low: Electrode; readonly high: Electrode } | null {
  const [levelA, levelB] = [levelOf(a.connection) ?? 0, levelOf(b.connection) ?? 0];
  if (levelA === levelB || a.conductor === b.conductor) return null;
  return levelA < levelB ? { low: a, high: b } : { low: b, high: a };
}

/** As the end of a row: the tip of a spike or prong, otherwise the metal without what stands on it. */
function endOf({ pieces }: Electrode): End {
  const [first] = pieces;
  if (first !== undefined && isPointed(first.shape)) {
    return { centre: outermost(first.geometry, unitVector(first.shape.pointing.angle_deg)), metal: null };
  }
  const own = pieces.filter(({ shape }) => !onItself(shape)).map(({ geometry }) => geometry);
  return { centre: boxCentre(boxAround(own.map(({ outer }) => outlineBounds(outer)))), metal: own };
}

/** Of two with one centre: to the right, from the outside of the one to where the other begins. */
function concentricLine(a: Electrode, b: Electrode): { readonly from: Point; readonly to: Point } | null {
  const right = { x: 1, y: 0 };
  const ends = [a, b].map((electrode) => {
    const { centre, metal } = endOf(electrode);
    return {
      centre,
      out: metal === null ? [] : crossings(curvesOfPieces(metal), centre, right).filter((t) => t > 0),
    };
  });
  const [first, second] = ends;
  if (first === undefined || second === undefined || distance(first.centre, second.centre) > 1e-6)
    return null;
  const at = (t: number): Point => plus(first.centre, times(right, t));
  const [reachA, reachB] = [Math.max(...first.out), Math.max(...second.out)];
  // The inner one's outside faces the first edge of the other that lies beyond it.
  const inner = Math.min(reachA, reachB);
  const beyond = (reachA < reachB ? second : first).out.find((t) => t > inner);
  if (beyond === undefined || !Number.isFinite(inner)) return null;
  return reachA < reachB ? { from: at(inner), to: at(beyond) } : { from: at(beyond), to: at(inner) };
}
