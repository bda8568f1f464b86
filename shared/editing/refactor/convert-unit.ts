/** Writes a quantity in the next larger or smaller unit of its kind, where that takes no rounding. */
import type { Coordinates, Statement, Value } from '../../block/tree.ts';
import type { TextEdit } from '../../findings/finding.ts';
import { shifted } from '../../quantity/decimal.ts';
import type { Dimension } from '../../quantity/quantity.ts';
import { unitAfter } from '../../quantity/read.ts';
import { type Unit, unitOf } from '../../quantity/units.ts';
import type { Span } from '../../text/span.ts';
import { valuesIn } from '../hover-line.ts';
import { inTheirColumns } from '../moving/columns.ts';
import { plainDigits, writtenNumber } from '../moving/numbers.ts';
import { editedText } from '../moving/supposed.ts';
import { meets } from '../place.ts';
import { nodesIn } from '../spans.ts';
import type { Refactoring } from './refactoring.ts';
import type { Site } from './site.ts';

/** Units a practical sheet may be written in, rising; `mΩ` is not among them, it is too near to `MΩ`. */
const ladders: Readonly<Partial<Record<Dimension, readonly string[]>>> = {
  length: ['mm', 'cm', 'm'],
  potential: ['mV', 'V', 'kV'],
  resistance: ['Ω', 'kΩ', 'MΩ'],
  current: ['µA', 'mA', 'A'],
};

/** Numbers outside are no easier to read than those that stand there. */
const smallest = 0.01;
const largest = 10_000;

export function unitConversions({ source, span, block, statements }: Site): readonly Refactoring[] {
  const group = statements
    .flatMap((statement) => groupsOf(source, valuesIn(statement), pairsIn(statement)))
    .find((one) => meets(one.span, span));
  if (group === undefined) return [];
  const ladder = ladders[group.unit.dimension] ?? [];
  const step = ladder.indexOf(group.unit.symbol);
  const neighbours = step < 0 ? [] : [ladder[step - 1], ladder[step + 1]];
  return neighbours.flatMap((symbol) => {
    const unit = symbol === undefined ? null : unitOf(symbol);
    if (unit === null) return [];
    const edits = converted(group, unit);
    if (edits === null) return [];
    return [
      {
        title: `Write ${shownIn(source, group, edits, unit)}`,
        kind: 'rewrite',
        edits: inTheirColumns(block, edits),
      },
    ];
  });
}

/** Numbers that share one unit. */
interface Group {
  readonly numbers: readonly { readonly span: Span; readonly digits: string }[];
  readonly unit: Unit;
  readonly unitSpan: Span;
  /** From the first number to the unit. */
  readonly span: Span;
}

function groupsOf(source: string, values: readonly Value[], pairs: readonly Coordinates[]): readonly Group[] {
  const groups: { numbers: Group['numbers'][number][]; unit: Unit; unitSpan: Span }[] = [];
  const ordered = [...values].sort((a, b) => b.span.from - a.span.from);
  // From the last to the first: a number without a unit shares the one that follows behind its pair or size.
  for (const value of ordered) {
    const written = writtenNumber(source, value);
    if (written === null) continue;
    const { digitsSpan, digits, exponent } = written;
    const pair = pairs.find((one) => one.y === value);
    const behind = exponent !== null ? digitsSpan.to : pair === undefined ? null : closingOf(source, pair);
    const after = behind === null ? null : unitIn(source, behind);
    if (after !== null) groups.push({ numbers: [], ...after });
    groups.at(-1)?.numbers.unshift({ span: digitsSpan, digits });
  }
  return groups.flatMap((group) => {
    const [first] = group.numbers;
    return first === undefined ? [] : [{ ...group, span: { from: first.span.from, to: group.unitSpan.to } }];
  });
}

/** The unit on the rest of the line. */
function unitIn(source: string, at: number): { readonly unit: Unit; readonly unitSpan: Span } | null {
  const [line = ''] = /^[^\r\n]{0,60}/u.exec(source.slice(at, at + 60)) ?? [];
  const found = unitAfter(line, 0);
  if (found === null) return null;
  return { unit: found.unit, unitSpan: { from: at + found.span.from, to: at + found.span.to } };
}

const closingOf = (source: string, { span }: Coordinates): number =>
  span.from + source.slice(span.from, span.to).lastIndexOf(')') + 1;

/** Null where a number would be rounded, or be hard to read. */
function converted({ numbers, unit, unitSpan }: Group, to: Unit): readonly TextEdit[] | null {
  const places = unit.exponent - to.exponent;
  const values = numbers.map(({ digits }) => shifted(Number(digits), places));
  const greatest = Math.max(...values.map(Math.abs));
  if (greatest !== 0 && (greatest < smallest || greatest > largest)) return null;
  const edits = numbers.map(({ span, digits }, i): TextEdit => {
    const decimals = (digits.split('.')[1] ?? '').length;
    return { span, text: plainDigits(values[i] ?? 0, decimals === 0 ? 0 : Math.max(0, decimals - places)) };
  });
  const exact = edits.every(({ text }, i) => shifted(Number(text), -places) === Number(numbers[i]?.digits));
  return exact ? [...edits, { span: unitSpan, text: to.symbol }] : null;
}

/** The quantity or the pair as it would read; of many numbers the unit alone. */
function shownIn(source: string, group: Group, edits: readonly TextEdit[], unit: Unit): string {
  if (group.numbers.length > 2) return `all in ${unit.symbol}`;
  const open = source.slice(0, group.span.from).match(/\(\s*$/u)?.[0].length ?? 0;
  const from = group.span.from - (group.numbers.length === 2 ? open : 0);
  const local = edits.map((edit) => ({
    span: { from: edit.span.from - from, to: edit.span.to - from },
    text: edit.text,
  }));
  return editedText(source.slice(from, group.span.to), local);
}

const pairsIn = (statement: Statement): readonly Coordinates[] =>
  nodesIn(statement).filter((node): node is Coordinates => 'kind' in node && node.kind === 'coordinates');
