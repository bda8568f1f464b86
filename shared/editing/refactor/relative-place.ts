/** Writes a place in relation to others where it has coordinates, and coordinates where it is relative. */
import type { Anchor, ProbeStatement, Side, Statement } from '../../block/tree.ts';
import type { Point } from '../../field/geometry/outline.ts';
import type { TextEdit } from '../../findings/finding.ts';
import { boxCentre, distance, dot, minus, quarter } from '../../setup/plane.ts';
import { nameGiven, referencesOf } from '../../setup/references.ts';
import type { Electrode } from '../../setup/setup.ts';
import type { Span } from '../../text/span.ts';
import { inTheirColumns } from '../moving/columns.ts';
import { newCoordinate, pairText } from '../moving/numbers.ts';
import type { Refactoring } from './refactoring.ts';
import { exact_mm, keepsMeaning } from './same-meaning.ts';
import type { Site } from './site.ts';

/** So many neighbours are offered. */
const mostNeighbours = 2;

export function places(site: Site): readonly Refactoring[] {
  const [statement] = site.statements;
  if (statement === undefined || site.statements.length > 1) return [];
  if (statement.kind === 'probe') return probePlaces(site, statement);
  const anchor = anchorOf(statement);
  const name = statement.kind === 'shape' || statement.kind === 'move' ? statement.name.text : null;
  const electrode = site.setup.electrodes.find((one) => one.name === name);
  if (anchor === null || electrode === undefined || electrode.pieces.length !== 1) return [];
  const offers =
    anchor.kind === 'at' && anchor.point.kind === 'coordinates'
      ? besides(site, anchor, electrode)
      : coordinatesFor(site, anchor, boxCentre(electrode.box));
  return offers.filter(({ edits }) => keepsMeaning(site, edits)).slice(0, mostNeighbours);
}

function anchorOf(statement: Statement): Anchor | null {
  if (statement.kind === 'move') return statement.to.kind === 'place' ? statement.to.place.anchor : null;
  if (statement.kind !== 'shape' || !('place' in statement)) return null;
  return statement.place.anchor;
}

function coordinatesFor(site: Site, { span }: Anchor, centre: Point): readonly Refactoring[] {
  const text = absolute(centre);
  return text === null ? [] : [offer(site, `at ${text}`, { span, text: `at ${text}` })];
}

/** Coordinates of few decimals; null for a point that has none. */
function absolute({ x, y }: Point): string | null {
  const exact = [x, y].every((mm) => Math.abs(newCoordinate(mm) - mm) < exact_mm);
  return exact ? pairText(x, y) : null;
}

function offer({ block }: Site, shown: string, edit: TextEdit): Refactoring {
  return { title: `Write ${shown}`, kind: 'rewrite', edits: inTheirColumns(block, [edit]) };
}

/** The nearest neighbours, each with a gap of few decimals and its middle level. */
function besides(site: Site, anchor: Anchor, electrode: Electrode): readonly Refactoring[] {
  const { setup, source } = site;
  const behind = followers(site.block.statements, electrode.name);
  const found = setup.electrodes.flatMap((other) =>
    behind.has(other.name) ? [] : (standing(electrode, other) ?? []),
  );
  const nearest = found.sort((a, b) => a.gap - b.gap).slice(0, 2 * mostNeighbours);
  return nearest.map(({ side, gap, of }) => {
    const text = `${newCoordinate(gap)} mm ${sideWords[side]} ${of}`;
    return offer(site, text, withComma(source, anchor.span, text));
  });
}

/** Names of an electrode and of all that are placed from it, at one remove or more. */
function followers(statements: readonly Statement[], name: string): ReadonlySet<string> {
  const found = new Set([name]);
  for (const of of found) {
    for (const statement of statements) {
      const given = nameGiven(statement)?.text;
      const counts = referencesOf(statement).some((reference) => reference.name.text === of);
      if (given !== undefined && counts) found.add(given);
    }
  }
  return found;
}

const sideWords: Readonly<Record<Side, string>> = {
  right: 'right of',
  left: 'left of',
  above: 'above',
  below: 'below',
};

interface Standing {
  readonly side: Side;
  readonly gap: number;
  readonly of: string;
}

function standing({ box }: Electrode, { box: other, name }: Electrode): Standing | null {
  const [here, there] = [boxCentre(box), boxCentre(other)];
  const level = Math.abs(here.y - there.y) < exact_mm;
  const upright = Math.abs(here.x - there.x) < exact_mm;
  const gaps: readonly (readonly [Side, number, boolean])[] = [
    ['right', box.x0 - other.x1, level],
    ['left', other.x0 - box.x1, level],
    ['above', box.y0 - other.y1, upright],
    ['below', other.y0 - box.y1, upright],
  ];
  const fits = gaps.find(
    ([, gap, inLine]) => inLine && gap > -exact_mm && Math.abs(newCoordinate(gap) - gap) < exact_mm,
  );
  return fits === undefined ? null : { side: fits[0], gap: fits[1], of: name };
}

/** `10 mm × 120 mm at …` needs a comma before another number. */
function withComma(source: string, span: Span, text: string): TextEdit {
  const before = source.slice(Math.max(0, span.from - 40), span.from);
  const space = /\s*$/u.exec(before)?.[0] ?? '';
  const afterNumber = /[\p{L}\d°]$/u.test(before.trimEnd()) && /\d[^,]*$/u.test(before.trimEnd());
  if (!afterNumber || space.length !== 1) return { span, text };
  return { span: { from: span.from - space.length, to: span.to }, text: `, ${text}` };
}

function probePlaces(site: Site, { where, name }: ProbeStatement): readonly Refactoring[] {
  const probe = site.setup.probes.find((one) => one.name === name.text);
  if (probe === undefined) return [];
  const at = absolute(probe.at);
  const texts = where.kind === 'coordinates' ? alongRows(site, probe.at) : at === null ? [] : [at];
  return texts
    .map((text) => offer(site, `at ${text}`, { span: where.span, text }))
    .filter(({ edits }) => keepsMeaning(site, edits))
    .slice(0, mostNeighbours);
}

/** `A 50 mm` for each row that the point lies on. */
function alongRows({ setup }: Site, at: Point): readonly string[] {
  return setup.rows.flatMap(({ name, start, end, direction }) => {
    const far = dot(minus(at, start), direction);
    const aside = Math.abs(dot(minus(at, start), quarter(direction)));
    const length = end === null ? Number.POSITIVE_INFINITY : distance(start, end);
    const neat = Math.abs(newCoordinate(far) - far) < exact_mm;
    const on = aside < exact_mm && far > -exact_mm && far < length + exact_mm;
    return neat && on ? [`${name} ${newCoordinate(far)} mm`] : [];
  });
}
