/**
 * Tables of expected readings: a column of distances beside columns of potentials, or names of probes beside potentials. Only tables that
 * say what is to be expected, or that staff alone see: others hold what somebody has measured.
 */
import type { Finding } from '../../findings/finding.ts';
import { unitOf } from '../../quantity/units.ts';
import type { Row, Setup } from '../../setup/setup.ts';
import { type Heading, headingOf } from '../prose/headings.ts';
import { proseIn } from '../prose/known.ts';
import type { ProseTable, Run } from '../prose/run.ts';
import type { Rule, Subject } from '../rule.ts';
import { agrees, differing, type Known } from './compare.ts';
import { type Quantity, quantitiesIn } from './quantities.ts';
import { knownPotential } from './readings.ts';
import { setupsMeant } from './scope.ts';
import { sectionsOf } from './sections.ts';
import { potentialAt, potentialInRow, type Solution } from './solved.ts';
import { namesOf, solutionsOf } from './subject.ts';

const expected =
  /\b(?:expect\w*|should|calculated|computed|solved|solution|answers?|model|theory|theoretical|correct|worked out)\b/iu;
const measured =
  /\b(?:pupils?|students?|groups?|class|measured|trial|repeat|samples?|example|examples|data|specimen|imaginary|last year|fresh|if|suppose|reversed|swapped|wrong|mistake|without|real|yours?|typical)\b/iu;

interface TablePlace {
  readonly table: ProseTable;
  /** Heading of the section and the paragraph before the table, for what they say about it. */
  readonly heading: string;
  readonly before: string;
  readonly at: number;
  readonly setups: readonly Setup[];
}

interface Column {
  readonly index: number;
  readonly heading: Heading;
}

export const statedTables: Rule = (subject) =>
  tablesIn(subject).flatMap((place) => {
    const said = `${place.heading} ${place.before} ${place.table.head.map(({ text }) => text).join(' ')}`;
    if (measured.test(said) || !(expected.test(said) || isForStaff(subject, place.at))) return [];
    const solved = solutionsOf(subject, place.setups);
    return solved === null ? [] : [...rowTable(place, said, solved), ...probeTable(place, subject, solved)];
  });

function tablesIn(subject: Subject): readonly TablePlace[] {
  const { sheet } = subject;
  return proseIn(sheet).tables.flatMap((table) => {
    const [first] = table.head;
    if (first === undefined) return [];
    const at = first.at(0);
    const section = sectionsOf(sheet)
      .filter(({ from }) => from <= at)
      .at(-1);
    const before = section?.runs.filter((run) => run.kind !== 'cell' && run.at(0) < at).at(-1)?.text ?? '';
    const heading = section?.heading ?? '';
    const setups = section === undefined ? subject.setups : setupsMeant(subject, section, at, before);
    return [{ table, heading, before, at, setups }];
  });
}

/** Pupils do not see it, so that it is no room for their readings. */
function isForStaff({ sheet }: Subject, at: number): boolean {
  if (sheet.front.audience === 'teachers' || sheet.front.audience === 'technicians') return true;
  return sheet.passages.some(
    ({ kind, span }) => /^(?:teachers|technicians|answer)$/u.test(kind) && span.from <= at && at < span.to,
  );
}

function columns({ table }: TablePlace): readonly Column[] {
  return table.head.flatMap(({ text }, index) => {
    const heading = headingOf(text);
    return heading === null ? [] : [{ index, heading }];
  });
}

const isPotential = ({ heading: { unit, quantity } }: Column): boolean =>
  unit.measure === 'potential' && !/difference|drop|change|Δ|error|uncert|±|V₀|emf|e\.m\.f/iu.test(quantity);
const isDistance = ({ heading: { unit, quantity } }: Column): boolean =>
  unit.measure === 'length' &&
  /^(?:distance\b.*|x|d|r|s|position\b.*|place|along\b.*|from\b.*|radius\b.*|\*?[xdrs]\*?)$/iu.test(
    quantity.trim(),
  );

function rowTable(place: TablePlace, said: string, solved: readonly Solution[]): readonly Finding[] {
  const all = columns(place);
  const distances = all.filter(isDistance);
  const [distance] = distances;
  if (distance === undefined || distances.length > 1) return [];
  const places_mm = place.table.rows.map((row) => cellOf(row[distance.index], distance.heading)?.low ?? null);
  return all.filter(isPotential).flatMap((column) => {
    const rows = solved.map((one) =>
      rowFor(said, column.heading.quantity, distance.heading.quantity, places_mm, one),
    );
    const [first] = rows;
    if (first === undefined || rows.some((row) => row === null)) return [];
    return place.table.rows.flatMap((cells, i): readonly Finding[] => {
      const cell = cells[column.index];
      const stated = cellOf(cell, column.heading);
      const at = places_mm[i];
      if (stated === null || cell === undefined || at == null) return [];
      const known = solved.map((one, j) => inRow(rows[j] ?? null, at, one));
      return judged(stated, cell, known);
    });
  });
}

interface Counted {
  readonly row: Row;
  /** What a distance of zero in the table is along the row, and the way it counts. */
  readonly from_mm: number;
  readonly way: 1 | -1;
}

/** The row that the table names, or the only one; all its distances lie in it. */
function rowFor(
  said: string,
  column: string,
  distance: string,
  places_mm: readonly (number | null)[],
  { setup }: Solution,
): Counted | null {
  const named = (text: string): readonly Row[] =>
    setup.rows.filter(({ name }) =>
      new RegExp(
        `(?:row|line|along|on|readings|V)[ (_]*${escaped(name)}(?![\\p{L}\\p{N}])|^\\s*${escaped(name)}\\s*$`,
        'u',
      ).test(text),
    );
  const candidates = [named(column), named(said), setup.rows].find(({ length }) => length > 0) ?? [];
  const [row] = candidates;
  if (row === undefined || candidates.length > 1) return null;
  const length =
    row.end === null
      ? (row.points.at(-1)?.distance_mm ?? 0)
      : (row.end.x - row.start.x) * row.direction.x + (row.end.y - row.start.y) * row.direction.y;
  const radial = /^\*?r\*?$|radius|centre|center/iu.test(distance.trim());
  const from = /from (?:the )?(?:\p{Ll}+ )*(\p{Lu}[\p{L}\p{N}-]*)/u.exec(distance)?.[1];
  const counted = countedFrom(row, length, radial ? 'radius' : (from ?? null), setup);
  const inside = (d: number): boolean => d >= -0.01 && d <= length + 0.01;
  const known = places_mm.filter((d) => d !== null);
  if (counted === null || known.length < 2) return null;
  return known.every((d) => inside(counted.from_mm + counted.way * d)) ? counted : null;
}

const escaped = (name: string): string => name.replace(/[^\p{L}\p{N}]/gu, '\\$&');

function countedFrom(
  row: Row,
  length: number,
  from: string | null,
  { electrodes }: Solution['setup'],
): Counted | null {
  if (from === 'radius') return { row, from_mm: -row.startRadius_mm, way: 1 };
  if (from === null) return { row, from_mm: 0, way: 1 };
  const box = electrodes.find(({ name }) => name === from)?.box;
  if (box === undefined) return null;
  const gap = ({ x, y }: Row['start']): number => Math.max(box.x0 - x, x - box.x1, box.y0 - y, y - box.y1, 0);
  if (gap(row.start) < 0.01) return { row, from_mm: 0, way: 1 };
  return row.end !== null && gap(row.end) < 0.01 ? { row, from_mm: length, way: -1 } : null;
}

function inRow(counted: Counted | null, at_mm: number, solved: Solution): Known | null {
  if (counted === null) return null;
  const found = potentialInRow(counted.row, counted.from_mm + counted.way * at_mm, solved);
  return found === null ? null : knownPotential(found, solved);
}

/** First column: names of probes or electrodes. */
function probeTable(place: TablePlace, subject: Subject, solved: readonly Solution[]): readonly Finding[] {
  const { spots } = namesOf(subject);
  return columns(place)
    .filter(isPotential)
    .flatMap((column) =>
      place.table.rows.flatMap((cells): readonly Finding[] => {
        const name = /^\s*(?:(?:at|probe|point|electrode|place) )*(\p{L}[\p{L}\p{N}-]*)\s*$/u.exec(
          cells[0]?.text ?? '',
        )?.[1];
        const cell = cells[column.index];
        const stated = cellOf(cell, column.heading);
        if (
          name === undefined ||
          !spots.has(name) ||
          stated === null ||
          cell === undefined ||
          column.index === 0
        )
          return [];
        const known = solved.map((one) => {
          const found = potentialAt({ kind: 'spot', name }, one);
          return found === null ? null : knownPotential(found, one);
        });
        return judged(stated, cell, known);
      }),
    );
}

function judged(stated: Quantity, run: Run, known: readonly (Known | null)[]): readonly Finding[] {
  const [first] = known;
  if (first === undefined || first === null) return [];
  if (
    known.some(
      (one) =>
        one === null ||
        agrees(stated, one) ||
        Math.abs((one.values[0] ?? 0) - (first.values[0] ?? 0)) > stated.half,
    )
  )
    return [];
  const sentence = { run, from: 0, text: run.text };
  return [
    differing({
      code: 'stated-table',
      sentence,
      quantity: stated,
      known: first,
      subject: 'The reading there is',
    }),
  ];
}

/** The only quantity of a cell; a bare number has the unit of its heading. */
function cellOf(run: Run | undefined, heading: Heading): Quantity | null {
  if (run === undefined) return null;
  const list = quantitiesIn(run.text);
  const [found] = list;
  if (found === undefined || list.length > 1 || found.form !== 'value' || found.number === null) return null;
  const rest = run.text.slice(0, found.from) + run.text.slice(found.to);
  if (rest.trim() !== '') return null;
  if (found.symbol !== '') return found.measure === heading.unit.measure ? found : null;
  const unit = unitOf(heading.unit.symbol);
  if (unit === null || found.number.power !== null) return null;
  const factor = Number(`1e${unit.exponent}`) * unit.times;
  const scaled = {
    low: found.low * factor,
    high: found.high * factor,
    half: found.half * factor,
    plus: found.plus * factor,
  };
  return { ...found, ...scaled, factor, measure: heading.unit.measure, symbol: heading.unit.symbol };
}
