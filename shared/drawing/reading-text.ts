/** A reading as it stands in a drawing: the digits that the meter's resolution and the solution allow. */
import { printWithin } from '../quantity/print.ts';
import type { PointReading } from '../setup/readings.ts';

/** Decimals where the meter's resolution is not told: a millivolt. */
const USUAL_DECIMALS = 3;

export function readingText(reading: PointReading, resolution_V: number | null): string | null {
  const { reading_V, uncertainty_V } = reading;
  if (reading_V === null) return null;
  const half = uncertainty_V ?? 0;
  const decimals = resolution_V === null ? USUAL_DECIMALS : decimalsOfResolution(resolution_V);
  return printWithin([reading_V - half, reading_V + half], 'potential', { unit: 'V', decimals });
}

function decimalsOfResolution(resolution_V: number): number {
  for (let decimals = 0; decimals < 6; decimals++) {
    if (resolution_V * 10 ** decimals >= 0.999999) return decimals;
  }
  return 6;
}
