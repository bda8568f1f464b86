/** Where things of a setup stand, before and after an edit. */
import type { Point } from '../../field/geometry/outline.ts';
import { boxCentre, distance } from '../../setup/plane.ts';
import type { Electrode, Setup } from '../../setup/setup.ts';
import { isPointed } from '../../setup/shapes/table.ts';
import type { Handle } from './handles.ts';

/** Coordinates that were not written as numbers before are rounded to 0.01 mm. */
const rounding_mm = 0.008;
const same_mm = 1e-6;

/** True where the thing now stands `by` from where it stood. */
export function arrival(before: Setup, after: Setup, handle: Handle, by: Point): boolean {
  const [from, to] = [placeOf(before, handle), placeOf(after, handle)];
  if (from === null || to === null) return false;
  return distance({ x: from.x + by.x, y: from.y + by.y }, to) < rounding_mm;
}

/** Names of what else has moved: it stands in relation to the thing. */
export function companions(before: Setup, after: Setup, name: string): readonly string[] {
  const away = (from: Point | null, to: Point | null | undefined): boolean =>
    from !== null && to !== null && to !== undefined && distance(from, to) > same_mm;
  const metal = before.electrodes.filter((old) => {
    const found = after.electrodes.find((one) => one.name === old.name);
    return found !== undefined && away(anchorOf(old), anchorOf(found));
  });
  const probes = before.probes.filter((old) =>
    away(old.at, after.probes.find((one) => one.name === old.name)?.at),
  );
  const rows = before.rows.filter((old) => {
    const found = after.rows.find((one) => one.name === old.name);
    return away(old.start, found?.start) || away(old.end, found?.end);
  });
  const told = [
    ...[...metal, ...probes].map((one) => one.name),
    ...rows.map((row) => [row.name, `row ${row.name}`] as const),
  ];
  return told.flatMap((one) => {
    const [of, words] = typeof one === 'string' ? [one, one] : one;
    return of === name ? [] : [words];
  });
}

function placeOf(setup: Setup, { kind, name, id }: Handle): Point | null {
  if (kind === 'probe') return setup.probes.find((one) => one.name === name)?.at ?? null;
  if (kind === 'row-end') {
    const row = setup.rows.find((one) => one.name === name);
    return (id.endsWith('first end') ? row?.start : row?.end) ?? null;
  }
  const electrode = setup.electrodes.find((one) => one.name === name);
  return electrode === undefined ? null : anchorOf(electrode);
}

/** The tip of a spike or prong, whose base may change as it slides; otherwise the middle of the box. */
function anchorOf({ pieces, box }: Electrode): Point {
  const [first] = pieces;
  const tip = first !== undefined && isPointed(first.shape) ? first.geometry.outer.edges[0]?.from : undefined;
  return tip ?? boxCentre(box);
}
