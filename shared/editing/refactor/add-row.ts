/** Adds a row of readings between two electrodes. */
import type { RowStatement, Shape } from '../../block/tree.ts';
import { type End, lineBetween } from '../../setup/between.ts';
import { boxCentre, distance } from '../../setup/plane.ts';
import type { Electrode, Setup } from '../../setup/setup.ts';
import { isPointed } from '../../setup/shapes/table.ts';
import { lastOf } from '../moving/given.ts';
import { freeLetter, namesTaken } from '../moving/letters.ts';
import { addedLine } from '../moving/new-line.ts';
import { supposedSetup } from '../moving/supposed.ts';
import type { Refactoring } from './refactoring.ts';
import { sameSetup } from './same-meaning.ts';
import type { Site } from './site.ts';

export function rowBetween(site: Site): readonly Refactoring[] {
  const pair = pairAt(site);
  if (pair === null) return [];
  const [from, to] = pair;
  if (hasRow(site, from.name, to.name)) return [];
  const line = lineBetween(endOf(from), endOf(to));
  if (line === null) return [];
  const name = freeLetter(site.setup.rows.at(-1)?.name ?? null, namesTaken(site.draft, site.number));
  const body = `from ${from.name} to ${to.name} ${stepsFor(distance(line.from, line.to))}`;
  const behind =
    lastOf(site.block.statements, ({ kind }) => kind === 'row') ??
    lastOf(site.block.statements, ({ kind }) => kind === 'shape');
  const bench = { block: site.block, models: [] };
  const edits = [addedLine(bench, behind, { word: 'row', name, body })];
  return addsOnly(site, name, supposedSetup(site.draft, site.number, edits))
    ? [{ title: `Add row ${name} ${body}`, kind: 'rewrite', edits }]
    : [];
}

/** Two electrodes that are selected; one and the first on the other terminal; on the opening line the first on each. The negative one first. */
function pairAt({ setup, statements, onHead }: Site): readonly [Electrode, Electrode] | null {
  const shapes = statements.filter((statement): statement is Shape => statement.kind === 'shape');
  if (!onHead && shapes.length === 0) return null;
  const names = [...new Set(shapes.map(({ name }) => name.text))].slice(0, 2);
  const chosen = names.flatMap((name) => setup.electrodes.find((one) => one.name === name) ?? []);
  const [first, second] = chosen;
  if (first !== undefined && second !== undefined) return inOrder(first, second);
  const of = (kind: string): Electrode | undefined =>
    setup.electrodes.find(({ connection, partOf }) => connection?.kind === kind && partOf === null);
  if (first === undefined) return together(of('negative'), of('positive'));
  const kind = first.connection?.kind;
  if (kind === 'negative') return together(first, of('positive'));
  return kind === 'positive' ? together(of('negative'), first) : null;
}

function together(
  a: Electrode | undefined,
  b: Electrode | undefined,
): readonly [Electrode, Electrode] | null {
  return a === undefined || b === undefined || a === b ? null : [a, b];
}

const inOrder = (a: Electrode, b: Electrode): readonly [Electrode, Electrode] =>
  b.connection?.kind === 'negative' && a.connection?.kind !== 'negative' ? [b, a] : [a, b];

function hasRow({ block }: Site, a: string, b: string): boolean {
  const named = (end: RowStatement['start'] | RowStatement['end']): string | null =>
    end.kind === 'electrode' ? end.name.text : null;
  return block.statements.some((statement) => {
    if (statement.kind !== 'row') return false;
    const ends = [named(statement.start), named(statement.end)];
    return ends.includes(a) && ends.includes(b);
  });
}

function endOf({ pieces, box }: Electrode): End {
  const metal = pieces.filter(({ shape }) => !isPointed(shape)).map(({ geometry }) => geometry);
  return { centre: boxCentre(box), metal: metal.length === 0 ? null : metal };
}

/** So many readings are taken in a lesson, common practice, no source. */
const fewest = 4;
const most = 25;

/** The first handy step that divides the row; otherwise ten equal ones. */
function stepsFor(length_mm: number): string {
  const step = [10, 5, 20, 4, 2, 8, 12, 15, 25, 1].find((mm) => {
    const count = length_mm / mm;
    return count >= fewest && count <= most && Math.abs(count - Math.round(count)) < 1e-6;
  });
  return step === undefined ? 'in 10 steps' : `every ${step} mm`;
}

/** The setup has the row, no finding more, and is otherwise the same. */
function addsOnly({ setup }: Site, name: string, after: Setup | null): boolean {
  if (after === null || after.findings.length > setup.findings.length) return false;
  const rows = after.rows.filter((row) => row.name !== name);
  return rows.length === after.rows.length - 1 && sameSetup(setup, { ...after, rows });
}
