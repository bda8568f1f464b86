/** Readings at probes and rows beyond the meter's range, one finding a setup. */
import { finding } from '../../findings/finding.ts';
import { printQuantity } from '../../quantity/print.ts';
import { type Rule, solvedSetups } from '../rule.ts';

export const meterRange: Rule = (subject) =>
  solvedSetups(subject).flatMap(({ setup: { meter }, solution: { readings } }) => {
    const range = meter?.range_V ?? null;
    if (!meter || range === null) return [];
    const all = [...readings.probes, ...readings.rows.flatMap((row) => row.points)];
    const largest = Math.max(0, ...all.map(({ reading_V }) => Math.abs(reading_V ?? 0)));
    if (largest <= range) return [];
    return [
      finding('meter-range', {
        span: meter.span,
        message: `Readings reach ${printQuantity(largest, 'potential', { digits: 3 })}, beyond the range of ${printQuantity(range, 'potential')}.`,
        hints: ['Choose the next range of the meter.'],
      }),
    ];
  });
