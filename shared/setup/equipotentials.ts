/** The equipotentials to draw: a range, every step, a list, or six equal steps of the e.m.f. */
import type { EquipotentialsStatement, Value } from '../block/tree.ts';
import type { Report } from './report.ts';
import type { Electrode, Equipotentials, Supply } from './setup.ts';
import { shown } from './shown.ts';

const usualSteps = 6;
const mostLines = 200;

/** Lowest and highest potential that the metal can take. */
interface Range {
  readonly low: number;
  readonly high: number;
}

export function readEquipotentials(
  statement: EquipotentialsStatement | null,
  supply: Supply | null,
  electrodes: readonly Electrode[],
  report: Report,
): Equipotentials {
  const range = rangeOf(supply, electrodes);
  if (statement === null) {
    const { low, high } = supply === null ? range : { low: 0, high: supply.emf_V };
    const values = Array.from({ length: usualSteps - 1 }, (_, i) =>
      tidy(low + ((i + 1) * (high - low)) / usualSteps),
    );
    return { span: null, values_V: high > low ? values : [] };
  }
  const values = valuesOf(statement, range, report);
  if (range.high > range.low) checkInside(statement, values, range, report);
  return { span: statement.span, values_V: [...new Set(values)].sort((a, b) => a - b) };
}

function rangeOf(supply: Supply | null, electrodes: readonly Electrode[]): Range {
  const held = electrodes.flatMap(({ connection }) =>
    connection?.kind === 'held' ? [connection.potential_V] : [],
  );
  const ends = supply === null ? held : [0, supply.emf_V, ...held];
  return ends.length === 0 ? { low: 0, high: 0 } : { low: Math.min(...ends), high: Math.max(...ends) };
}

function valuesOf(statement: EquipotentialsStatement, range: Range, report: Report): readonly number[] {
  switch (statement.form) {
    case 'list':
      return statement.values.map(({ value }) => tidy(value));
    case 'every': {
      const first = (Math.floor(range.low / statement.step.value + 1e-9) + 1) * statement.step.value;
      return stepped(first, range.high - 1e-9 * Math.max(1, Math.abs(range.high)), statement.step, report);
    }
    case 'range': {
      const { first, last, step } = statement;
      const [low, high] = first.value <= last.value ? [first.value, last.value] : [last.value, first.value];
      const steps = (high - low) / step.value;
      if (Math.abs(steps - Math.round(steps)) > 1e-6) {
        report('equipotential-uneven', {
          span: step.span,
          message: `Steps of ${shown(step.value, 'potential')} from ${shown(low, 'potential')} do not meet ${shown(high, 'potential')}.`,
        });
      }
      return stepped(low, high + 1e-6 * step.value, step, report);
    }
  }
}

function stepped(first: number, last: number, step: Value, report: Report): readonly number[] {
  const count = Math.floor((last - first) / step.value) + 1;
  if (!(step.value > 0) || count > mostLines) {
    report('equipotential-many', {
      span: step.span,
      message: `That would be more than ${mostLines} equipotentials.`,
    });
    return [];
  }
  return Array.from({ length: Math.max(0, count) }, (_, i) => tidy(first + i * step.value));
}

/** Sums of steps without the last bits: 0.6000000000000001 V is 0.6 V. */
const tidy = (value: number): number => Number(value.toPrecision(12));

function checkInside(
  statement: EquipotentialsStatement,
  values: readonly number[],
  { low, high }: Range,
  report: Report,
): void {
  const outside = values.filter((value) => value < low || value > high);
  const [first] = outside;
  if (first === undefined) return;
  const at =
    statement.form === 'list' ? statement.values.find(({ value }) => tidy(value) === first) : undefined;
  report('equipotential-outside', {
    span: at?.span ?? statement.span,
    message: `${shown(first, 'potential')} lies outside the supply: potentials run from ${shown(low, 'potential')} to ${shown(high, 'potential')}.`,
  });
}
