/** What touches what: conductors made of touching electrodes, short circuits, metal beside the paper, paper without metal. */
import type { Outline, Point, Segment } from '../field/geometry/outline.ts';
import { type Survey, surveyProblem } from '../field/geometry/survey.ts';
import type { Fix } from '../findings/finding.ts';
import type { Span } from '../text/span.ts';
import { clippedMetal, uprightClearOf } from './clipped.ts';
import type { Report } from './report.ts';
import type { Connection, Electrode, Hole, Supply } from './setup.ts';
import { isPointed } from './shapes/table.ts';
import { shown } from './shown.ts';

export interface Connected {
  /** With conductor numbers. */
  readonly electrodes: readonly Electrode[];
  readonly conductors: number;
  readonly shorted: boolean;
}

/** The paper with what is cut out of it. */
export interface Sheet {
  readonly paper: Outline;
  readonly paperSpan: Span;
  readonly holes: readonly Hole[];
  readonly slits: readonly Segment[];
}

export function connectElectrodes(
  electrodes: readonly Electrode[],
  sheet: Sheet,
  supply: Supply | null,
  report: Report,
): Connected {
  const survey = surveyProblem({
    paper: sheet.paper,
    holes: sheet.holes.map(({ outline }) => outline),
    slits: sheet.slits,
    sheet_ohm: [1, 1],
    conductors: electrodes.map(({ pieces }) => pieces.map(({ geometry }) => geometry)),
  });
  const live = electrodes.map((electrode, i) => {
    const onPaper = clippedMetal(electrode, survey.conductors[i], report);
    return onPaper && electrode.connection !== null;
  });
  const touching = survey.contacts.filter(({ a, b }) => live[a] === true && live[b] === true);
  const potential = electrodes.map(({ connection }) => potentialOf(connection, supply));
  const shorted = shortCircuits(electrodes, touching, potential, report);
  if (!shorted) touchNotes(electrodes, touching, report);
  if (electrodes.length > 0) islandNotes(survey, sheet.paperSpan, report);
  const numbers = numberConductors(live, touching);
  return {
    electrodes: electrodes.map((electrode, i) => ({ ...electrode, conductor: numbers[i] ?? null })),
    conductors: new Set(numbers.filter((n) => n !== null)).size,
    shorted,
  };
}

type Contact = Survey['contacts'][number];

/** The potential that a terminal fixes; null where it floats. Terminals at one potential do not short each other. */
function potentialOf(connection: Connection | null, supply: Supply | null): number | null {
  switch (connection?.kind) {
    case 'positive':
      return supply?.emf_V ?? Number.POSITIVE_INFINITY;
    case 'negative':
      return 0;
    case 'held':
      return connection.potential_V;
    default:
      return null;
  }
}

/** Touching electrodes share a number; numbers rise in the order of the electrodes. */
function numberConductors(
  live: readonly boolean[],
  touching: readonly Contact[],
): readonly (number | null)[] {
  const group = groups(live.length, touching);
  const numbers = new Map<number, number>();
  return live.map((alive, i) => {
    if (!alive) return null;
    const root = group(i);
    const known = numbers.get(root) ?? numbers.size;
    numbers.set(root, known);
    return known;
  });
}

/** The least member of each one's group of touching electrodes. */
function groups(count: number, touching: readonly Contact[]): (i: number) => number {
  const parent = Array.from({ length: count }, (_, i) => i);
  const root = (i: number): number => {
    let at = i;
    for (let next = parent[at]; next !== undefined && next !== at; next = parent[at]) at = next;
    return at;
  };
  for (const { a, b } of touching) {
    const [low, high] = [Math.min(root(a), root(b)), Math.max(root(a), root(b))];
    parent[high] = low;
  }
  return root;
}

/** One error for each pair of different fixed potentials that meet, directly or over floating metal. */
function shortCircuits(
  electrodes: readonly Electrode[],
  touching: readonly Contact[],
  potential: readonly (number | null)[],
  report: Report,
): boolean {
  const group = groups(electrodes.length, touching);
  let shorted = false;
  for (const first of electrodes.keys()) {
    const low = potential[first] ?? null;
    if (low === null) continue;
    for (let second = first + 1; second < electrodes.length; second++) {
      const high = potential[second] ?? null;
      if (high === null || high === low || group(first) !== group(second)) continue;
      const direct = touching.find(
        ({ a, b }) => (a === first && b === second) || (a === second && b === first),
      );
      const already = shorted && direct === undefined;
      shorted = true;
      if (!already) shortCircuit(electrodes, first, second, direct ?? null, group, report);
    }
  }
  return shorted;
}

function shortCircuit(
  electrodes: readonly Electrode[],
  first: number,
  second: number,
  direct: Contact | null,
  group: (i: number) => number,
  report: Report,
): void {
  const [a, b] = [electrodes[first], electrodes[second]];
  if (a === undefined || b === undefined) return;
  const over = electrodes.filter((_, i) => group(i) === group(first) && i !== first && i !== second);
  const how =
    direct === null
      ? `touch over ${over.map(({ name }) => name).join(' and ')}`
      : direct.gap_mm > 0
        ? `come within ${shown(direct.gap_mm, 'length')}`
        : 'touch';
  const upright = (electrode: Electrode, other: Electrode): readonly Fix[] =>
    electrode.pieces.flatMap((piece) => uprightClearOf(piece, other));
  const between = over.flatMap(({ pieces }) =>
    pieces
      .filter((piece) => uprightClearOf(piece, a).length > 0)
      .flatMap((piece) => uprightClearOf(piece, b)),
  );
  const fixes = direct === null ? between : [...upright(b, a), ...upright(a, b)];
  report('short-circuit', {
    span: b.span,
    message: `${a.name} (${say(a.connection)}) and ${b.name} (${say(b.connection)}) ${how}${direct === null ? '' : place(direct.at)}: a short circuit.`,
    hints: ['Move them apart; nothing of this setup is solved before.'],
    fixes,
    related: [{ span: a.span, message: `${a.name} stands here.` }],
  });
}

const place = ({ x, y }: Point): string => ` at (${Math.round(x * 10) / 10}, ${Math.round(y * 10) / 10}) mm`;

function say(connection: Connection | null): string {
  if (connection === null) return 'no terminal';
  return connection.kind === 'held'
    ? `held at ${shown(connection.potential_V, 'potential')}`
    : connection.kind;
}

function touchNotes(electrodes: readonly Electrode[], touching: readonly Contact[], report: Report): void {
  for (const { a, b, gap_mm } of touching) {
    const [first, second] = [electrodes[a], electrodes[b]];
    if (first === undefined || second === undefined || standsOn(first, second) || standsOn(second, first))
      continue;
    const near = gap_mm > 0 ? `come within ${shown(gap_mm, 'length')} of each other` : 'touch';
    report('metal-touches', {
      span: second.span,
      message: `${first.name} and ${second.name} ${near}: they count as one conductor.`,
      related: [{ span: first.span, message: `${first.name} stands here.` }],
    });
  }
}

const standsOn = (electrode: Electrode, base: Electrode): boolean =>
  electrode.pieces.some(
    ({ shape }) => isPointed(shape) && shape.tip.kind === 'on' && shape.tip.of.text === base.name,
  );

function islandNotes(survey: Survey, span: Span, report: Report): void {
  for (const { at, area_mm2 } of survey.islands) {
    report('paper-island', {
      span,
      message: `The piece of paper around${place(at).replace(' at', '')}, ${shown(area_mm2 / 100, 'number')} cm², touches no electrode: nothing can be read there.`,
    });
  }
}
