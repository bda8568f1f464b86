/** The reading slip: what the meter shows at a place of the paper, how strong the field is there and where it points, in words. */

import { point } from '../../drawing/describe.ts';
import { readingText } from '../../drawing/reading-text.ts';
import type { Point } from '../../field/geometry/outline.ts';
import { atan2, hypot } from '../../field/maths.ts';
import { metalAt, unreadable } from '../../setup/metal.ts';
import type { PointReader } from '../../setup/points.ts';
import type { PointReading } from '../../setup/readings.ts';
import type { Setup } from '../../setup/setup.ts';
import { slopeAmount } from '../../sheet/print/values.ts';
import { amountText } from '../amounts.ts';
import type { Slip } from '../messages.ts';
import { leadsTo } from './toward.ts';

/** `field` is null where the setup is not solved. `at` in mm on the paper. */
export function slipAt(setup: Setup, field: PointReader | null, at: Point): Slip {
  const place = point(at);
  const trouble = setup.paper === null ? 'beside the paper' : unreadable(setup, at);
  if (trouble !== null) return said(`${place} lies ${trouble}: there is nothing to read`);
  const metal = metalAt(setup, at);
  const where = metal === null ? place : `${place}, on ${metal.name}`;
  if (field === null) return said(`not solved: no reading at ${where}`);
  const reading = field.read(at);
  const shown = readingText(reading, setup);
  if (shown === null) return said(`nothing fixes the potential at ${where}`);
  if (metal !== null) return said(`${shown} at ${where}: no field in metal`);
  const strength = strengthOf(reading, setup);
  if (strength === null) return said(`${shown} at ${where}; no field`);
  const { text, direction_deg } = strength;
  const toward = leadsTo(field, setup, at);
  return {
    text: `${shown} at ${where}; ${text} ${toward === null ? inWords(direction_deg) : `toward ${toward}`}`,
    direction_deg,
  };
}

const said = (text: string): Slip => ({ text, direction_deg: null });

interface Strength {
  readonly text: string;
  readonly direction_deg: number;
}

/** Null where the field is too weak to print a digit of it: its direction is then that of rounding. */
function strengthOf({ strength_V_per_m }: PointReading, setup: Setup): Strength | null {
  if (strength_V_per_m === null) return null;
  const [x, y] = strength_V_per_m;
  const amount = slopeAmount(hypot(x, y), setup);
  if (amount.number === '0') return null;
  const direction_deg = Math.round((atan2(y, x) * 1800) / Math.PI) / 10 + 0;
  return { text: amountText(amount), direction_deg };
}

/** Anticlockwise from x, in eighths of a turn: for a line that ends at no metal. */
const eighths = [
  'to the right',
  'up and to the right',
  'up',
  'up and to the left',
  'to the left',
  'down and to the left',
  'down',
  'down and to the right',
] as const;

const inWords = (direction_deg: number): string =>
  eighths[((Math.round(direction_deg / 45) % 8) + 8) % 8] ?? eighths[0];
