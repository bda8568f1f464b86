/** Rules over tables: headings with units, units in cells, decimals down a column. */
import type { Finding } from '../../findings/finding.ts';
import type { HouseStyle } from '../../sheet/department/style.ts';
import { type Heading, headingOf } from './headings.ts';
import { found, rewrite, type TableRule } from './rule.ts';
import { type Change, fix, type ProseTable, type Run } from './run.ts';
import { type Value, valuesIn } from './values.ts';

interface Headed {
  readonly run: Run;
  readonly heading: Heading;
  readonly column: number;
}

function headed({ head }: ProseTable): readonly Headed[] {
  return head.flatMap((run, column) => {
    const heading = headingOf(run.text);
    return heading === null ? [] : [{ run, heading, column }];
  });
}

/** House style, said once for a table; American schools mostly write brackets, where the department has not said. */
export const headingBrackets: TableRule = (table, { american, style }) => {
  if (style.headings === null ? american : style.headings === 'brackets') return [];
  const wrong = headed(table).filter(({ heading }) => heading.form === 'brackets');
  const changes = wrong.map(({ run, heading }) => {
    const unit = /[/ ]/u.test(heading.written) ? `(${heading.written})` : heading.written;
    return { run, from: heading.quantityTo, to: heading.unitTo, text: ` / ${unit}` };
  });
  return once('heading-brackets', wrong, changes, style.headings);
};

/** Only where the house style has brackets. */
export const headingSolidus: TableRule = (table, { style }) => {
  if (style.headings !== 'brackets') return [];
  const wrong = headed(table).filter(({ heading }) => /^solid/u.test(heading.form));
  const changes = wrong.map(({ run, heading }) => ({
    run,
    from: heading.quantityTo,
    to: heading.unitTo,
    text: ` (${heading.written})`,
  }));
  return once('heading-solidus', wrong, changes, style.headings);
};

/** Usual words for a quantity, with its letter. */
const letters: readonly (readonly [RegExp, string])[] = [
  [/^(?:voltage|potential|p\.d\.)$/iu, 'potential V'],
  [/^distance$/iu, 'distance x'],
  [/^current$/iu, 'current I'],
];

export const headingWords: TableRule = (table, { style }) => {
  const wrong = headed(table).filter(({ heading }) => heading.form === 'words');
  const changes = wrong.map(({ run, heading }) => {
    const quantity = letters.find(([pattern]) => pattern.test(heading.quantity))?.[1] ?? heading.quantity;
    const unit = heading.written.includes('/') ? `(${heading.written})` : heading.written;
    const from = heading.quantityTo - heading.quantity.length;
    const text = style.headings === 'brackets' ? `${quantity} (${heading.written})` : `${quantity} / ${unit}`;
    return { run, from, to: heading.unitTo, text };
  });
  return once('heading-words', wrong, changes, style.headings);
};

function once(
  code: 'heading-brackets' | 'heading-solidus' | 'heading-words',
  wrong: readonly Headed[],
  changes: readonly Change[],
  style: HouseStyle['headings'],
): readonly Finding[] {
  const [first] = wrong;
  const [change] = changes;
  if (first === undefined || change === undefined) return [];
  const menu = first.run.text.slice(0, change.from).trimStart() + change.text;
  const fixes = fix(`Write ${menu}${changes.length > 1 ? ' and so on' : ''}`, changes, style !== null);
  const place = { run: first.run, from: change.from, to: first.heading.unitTo };
  const rule =
    style === null ? 'A heading is a quantity divided by its unit' : 'The house style of headings is';
  const colon = style === null ? ':' : '';
  const severity = style === null ? {} : ({ severity: 'warning' } as const);
  return [found(code, place, { message: `${rule}${colon} ${menu}.`, fixes, ...severity })];
}

/** A house style with brackets has its own word on them. */
export const headingSolidi: TableRule = (table, { style }) =>
  headed(table)
    .filter(({ heading }) => heading.form === 'solidi' && style.headings !== 'brackets')
    .map(({ run, heading }) => {
      const unit = `(${heading.written})`;
      const menu = `${heading.quantity} / ${unit}`;
      const place = { run, from: heading.unitFrom, to: heading.unitTo };
      return found('heading-solidi', place, {
        message: `Two solidi can be read in two ways; brackets tell: ${menu}.`,
        fixes: rewrite(place, unit, menu, true),
      });
    });

interface Cell {
  readonly run: Run;
  readonly value: Value;
}

/** The cells of a column that hold one number, with or without a unit, and nothing else. */
function column({ rows }: ProseTable, index: number): readonly Cell[] {
  return rows.flatMap((row) => {
    const run = row[index];
    if (run === undefined) return [];
    const values = valuesIn(run.text);
    const [value] = values;
    if (value === undefined || values.length > 1) return [];
    const rest = run.text.slice(0, value.from) + run.text.slice(value.to);
    return /^\s*[-\u2212]?\s*$/u.test(rest) ? [{ run, value }] : [];
  });
}

/** A finding a column: all its cells are mended in one go. */
export const unitInCell: TableRule = (table) =>
  headed(table).flatMap(({ heading, column: index }) => {
    const cells = column(table, index).filter(
      ({ value }) => value.unit !== null && value.unit.slips.length === 0,
    );
    const [first] = cells;
    if (first === undefined || first.value.unit === null) return [];
    const { run, value } = first;
    const same = cells.filter((cell) => cell.value.unit?.symbol === heading.unit.symbol);
    const other = cells.find((cell) => cell.value.unit?.symbol !== heading.unit.symbol);
    const changes = same.map((cell) => ({
      run: cell.run,
      from: cell.value.number.to,
      to: cell.value.to,
      text: '',
    }));
    const bare = run.text.slice(value.from, value.number.to);
    if (other === undefined) {
      return [
        found(
          'unit-in-cell',
          { run, from: value.from, to: value.to },
          {
            message: `The heading has the unit ${heading.written}, the cells are bare numbers: ${bare}.`,
            fixes: fix(`Write ${bare}${changes.length > 1 ? ' and so on' : ''}`, changes, false),
          },
        ),
      ];
    }
    const written = other.run.text.slice(other.value.from, other.value.to);
    return [
      found(
        'unit-in-cell',
        { run: other.run, from: other.value.from, to: other.value.to },
        {
          message: `${written} stands in a column whose heading says ${heading.written}.`,
        },
      ),
    ];
  });

/** Numbers of a column under a unit have one number of decimals; a plain 0 is exact. */
export const columnDecimals: TableRule = (table) =>
  headed(table).flatMap(({ column: index }) => {
    const cells = column(table, index).filter(
      ({ value: { number } }) => number.comma === null && number.power === null && number.digits !== '0',
    );
    const decimals = cells.map(({ value }) => value.number.decimals).sort((a, b) => a - b);
    const least = decimals[0];
    const wanted = usual(decimals);
    const first = cells.find(({ value }) => value.number.decimals !== wanted);
    if (least === undefined || wanted === undefined || first === undefined || cells.length < 3) return [];
    const changes = cells.map(({ run, value: { number } }) => ({
      run,
      from: number.from,
      to: number.to,
      text: Number(number.digits).toFixed(wanted),
    }));
    const needed = changes.filter(({ run, from, to, text }) => run.text.slice(from, to) !== text);
    const menu = Number(first.value.number.digits).toFixed(wanted);
    return [
      found(
        'column-decimals',
        { run: first.run, from: first.value.number.from, to: first.value.number.to },
        {
          message: `The numbers of a column have equally many decimals, here ${wanted}: ${menu}.`,
          fixes: fix(`Write ${menu}${needed.length > 1 ? ' and so on' : ''}`, needed, false),
        },
      ),
    ];
  });

/** The number of decimals that most have; of several such numbers the one nearest the middle. */
function usual(sorted: readonly number[]): number | undefined {
  const middle = sorted[Math.floor(sorted.length / 2)] ?? 0;
  let best: number | undefined;
  let most = 0;
  for (const candidate of new Set(sorted)) {
    const count = sorted.filter((one) => one === candidate).length;
    const nearer = best === undefined || Math.abs(candidate - middle) < Math.abs(best - middle);
    if (count > most || (count === most && nearer)) {
      best = candidate;
      most = count;
    }
  }
  return best;
}
