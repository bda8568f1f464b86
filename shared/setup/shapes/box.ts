/** A box: a hollow rectangle; with an opening, a gap in the middle of one wall. */
import type { BoxShape, Opening } from '../../block/tree.ts';
import type { Outline, Point } from '../../field/geometry/outline.ts';
import { polygon, rectangle, turnedBy, unitVector } from '../plane.ts';
import type { Report } from '../report.ts';
import { type Form, solid, turnedForm } from './form.ts';

export function boxForm(shape: BoxShape, report: Report): Form | null {
  const width = shape.size.width.value;
  const height = shape.size.height.value;
  const wall = shape.wall.value;
  if (2 * wall >= Math.min(width, height)) {
    return report('ring-sizes', {
      span: shape.wall.span,
      message: `Walls of ${wall} mm fill a box of ${width} mm × ${height} mm. A bar?`,
    });
  }
  const closed = rectangle(width, height);
  const turned = shape.place.turned?.value ?? 0;
  if (shape.opening === null) {
    const hollow = rectangle(width - 2 * wall, height - 2 * wall);
    return turnedForm({ outer: closed, hollows: [hollow] }, closed, turned);
  }
  const open = openBox(shape, shape.opening, report);
  return open === null ? null : turnedForm(solid(open), closed, turned);
}

function openBox(shape: BoxShape, opening: Opening, report: Report): Outline | null {
  const angle = ((opening.facing.angle_deg % 360) + 360) % 360;
  if (angle % 90 !== 0) {
    return report('opening-direction', {
      span: opening.facing.span,
      message: 'The opening of a box faces left, right, up or down; `turned` turns the whole box.',
    });
  }
  const upright = angle % 180 !== 0;
  const along = (upright ? shape.size.height.value : shape.size.width.value) / 2;
  const across = (upright ? shape.size.width.value : shape.size.height.value) / 2;
  const wall = shape.wall.value;
  const half = opening.width.value / 2;
  if (half > across - wall) {
    return report('opening-too-wide', {
      span: opening.width.span,
      message: `An opening of ${2 * half} mm is wider than the hollow of ${2 * (across - wall)} mm.`,
    });
  }
  const u = unitVector(angle);
  return polygon(openCorners(along, across, wall, half).map((p) => turnedBy(u, p)));
}

/** Seen with the opening to the right: from its upper lip round the outside to the lower lip, and back inside. */
function openCorners(along: number, across: number, wall: number, half: number): readonly Point[] {
  const [x, y] = [along - wall, across - wall];
  const outside: readonly Point[] = [
    { x: along, y: half },
    { x: along, y: across },
    { x: -along, y: across },
    { x: -along, y: -across },
    { x: along, y: -across },
    { x: along, y: -half },
  ];
  const back: readonly Point[] = [
    { x: -x, y: -y },
    { x: -x, y },
  ];
  // An opening as wide as the hollow leaves nothing of its wall inside.
  if (half === y) return [...outside, ...back];
  return [...outside, { x, y: -half }, { x, y: -y }, ...back, { x, y }, { x, y: half }];
}
