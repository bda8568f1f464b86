/** The prose of a sheet for all checks that read it: collected once a sheet. */
import type { Sheet } from '../../sheet/sheet.ts';
import type { Prose } from './runs.ts';
import { proseOf } from './runs.ts';

const known = new WeakMap<Sheet, Prose>();

export function proseIn(sheet: Sheet): Prose {
  const prose = known.get(sheet) ?? proseOf(sheet);
  known.set(sheet, prose);
  return prose;
}
