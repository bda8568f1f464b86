/** A reading in words, `0.75 V`: with the digits that the sheet itself prints. */
import type { PointReading } from '../setup/readings.ts';
import type { Setup } from '../setup/setup.ts';
import { shownReading } from '../setup/shown-reading.ts';

export function readingText({ reading_V, uncertainty_V }: PointReading, setup: Setup): string | null {
  return reading_V === null ? null : `${shownReading(reading_V, setup, uncertainty_V ?? 0)}\u00a0V`;
}
