/**
 * How far the meter pulls a reading down. The paper under the tip is a source with resistance R; the meter with R_m shows the open
 * voltage times R_m/(R_m + R), and so too little by the reading times R/R_m. One finding a setup, on its worst reading.
 */
import { finding } from '../../findings/finding.ts';
import { printNumber, printQuantity } from '../../quantity/print.ts';
import type { PointReading, SetupReadings } from '../../setup/readings.ts';
import { shownReading } from '../../setup/shown-reading.ts';
import { type Rule, solvedSetups } from '../rule.ts';
import { oncePerPlace } from './gathered.ts';

export const meterLoading: Rule = (subject) =>
  oncePerPlace(
    solvedSetups(subject).flatMap(({ setup, solution: { readings } }) => {
      const { meter, paper } = setup;
      const resolution = meter?.resolution_V ?? null;
      if (meter === null || resolution === null) return [];
      const worst = worstOf(readings, meter.resistance_ohm);
      if (worst === null || worst.loss_V <= resolution * (1 + 1e-9)) return [];
      const { where, reading_V, loss_V, uncertainty_V } = worst;
      const sheet = Math.max(...(paper?.resistance_ohm ?? [0]));
      const least = printQuantity(Number((200 * sheet).toPrecision(2)), 'resistance');
      const lost = printQuantity(loss_V, 'potential', { digits: 2 });
      return [
        finding('meter-loading', {
          span: meter.span,
          message: `The meter itself lowers what it reads: ${where} it shows ${shownReading(reading_V, setup, uncertainty_V)}\u00a0V, ${lost} too little, ${printNumber(loss_V / resolution, { digits: 2 })} times its resolution.`,
          hints: [`A meter of ${least} or more, 200 times the sheet resistance, keeps within 0.5 %.`],
        }),
      ];
    }),
  );

interface Loaded {
  readonly where: string;
  readonly reading_V: number;
  readonly loss_V: number;
  readonly uncertainty_V: number;
}

function worstOf({ probes, rows }: SetupReadings, meter_ohm: number): Loaded | null {
  const all = [
    ...probes.map((probe) => loaded(probe, `at ${probe.name}`, meter_ohm)),
    ...rows.flatMap(({ name, points }) =>
      points.map((point) =>
        loaded(
          point,
          `at ${printQuantity(Number(point.distance_mm.toPrecision(4)), 'length')} along ${name}`,
          meter_ohm,
        ),
      ),
    ),
  ].filter((one) => one !== null);
  return all.reduce<Loaded | null>(
    (worst, one) => (worst === null || one.loss_V > worst.loss_V ? one : worst),
    null,
  );
}

function loaded(
  { reading_V, source_resistance_ohm, uncertainty_V }: PointReading,
  where: string,
  meter_ohm: number,
): Loaded | null {
  if (reading_V === null || source_resistance_ohm === null) return null;
  const loss_V = (Math.abs(reading_V) * source_resistance_ohm) / meter_ohm;
  return { where, reading_V, loss_V, uncertainty_V: uncertainty_V ?? 0 };
}
