/** Where on the paper a phrase points to. Nothing where the setup has no such place. */
import { insideOutline } from '../../field/geometry/measure.ts';
import type { Point } from '../../field/geometry/outline.ts';
import { gapsOf } from '../../setup/gaps.ts';
import { metalAt } from '../../setup/metal.ts';
import { boxCentre, distance, minus, plus, times } from '../../setup/plane.ts';
import type { Electrode, Piece, Row, Setup } from '../../setup/setup.ts';
import type { Place } from './skeleton.ts';

/** Positions nearer than this are one, mm. */
export const same_mm = 0.01;

/** A point of the paper, or the name of an electrode. Several where it is not said which. */
export function pointsOf(place: Place, setup: Setup): readonly (Point | string)[] {
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

export function inRow({ start, end, direction, points }: Row, d: number): readonly Point[] {
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
