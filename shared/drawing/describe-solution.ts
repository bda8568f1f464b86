/** What a solved drawing shows, in words: only what the numbers and the lines that are drawn say. */
import type { Point } from '../field/geometry/outline.ts';
import { hypot } from '../field/maths.ts';
import { printQuantity, printWithin } from '../quantity/print.ts';
import type { SolvedSetup } from '../setup/readings.ts';
import type { Setup } from '../setup/setup.ts';
import { listed, point } from './describe.ts';
import type { Look } from './page.ts';
import { readingText } from './reading-text.ts';
import { pagePoints, stations } from './traces.ts';
import { decimalsOf, millimetres, volts } from './values.ts';

export function describeSolution(setup: Setup, solved: SolvedSetup, look: Look): string {
  const drawn = (part: Look['parts'][number]): boolean => look.parts.includes(part);
  return [
    ...(drawn('values') ? [circuitWords(solved)] : []),
    ...(drawn('equipotentials') ? [lineWords(solved), crowding(solved)] : []),
    ...(drawn('field-lines') ? [fieldLineWords(solved)] : []),
    ...(drawn('values') && drawn('probes') ? [probeWords(setup, solved)] : []),
  ]
    .filter((sentence) => sentence !== '')
    .join(' ');
}

function circuitWords({ readings }: SolvedSetup): string {
  const resistance = readings.resistance_bounds_ohm;
  const current = readings.current_bounds_A;
  const r = resistance === null ? null : printWithin(resistance, 'resistance', { digits: 4 });
  const i = current === null ? null : printWithin(current, 'current', { digits: 3 });
  const said = [
    ...(r === null ? [] : [`Resistance ${r}`]),
    ...(i === null ? [] : [`current from the supply ${i}`]),
  ];
  return said.length === 0 ? '' : `${capitalised(said.join(', '))}.`;
}

function lineWords({ traces }: SolvedSetup): string {
  const found = traces.equipotentials.filter(({ lines }) => lines.length > 0).map(({ value_V }) => value_V);
  const decimals = decimalsOf(found);
  return found.length === 0
    ? ''
    : `Equipotentials at ${listed(found.map((value) => volts(value, decimals)))}.`;
}

function fieldLineWords({ traces }: SolvedSetup): string {
  const count = traces.fieldLines.length;
  if (count === 0) return '';
  const each =
    traces.lineCurrent_A === null
      ? ''
      : `, each for ${printQuantity(traces.lineCurrent_A, 'current', { digits: 2 })}`;
  return `${count} field lines from high to low potential${each}.`;
}

function probeWords(setup: Setup, { readings }: SolvedSetup): string {
  const said = readings.probes.flatMap((probe) => {
    const text = readingText(probe, setup);
    return text === null ? [] : [`${probe.name} ${text}`];
  });
  return said.length === 0 ? '' : `Readings: ${listed(said)}.`;
}

/** Where neighbouring equipotentials of equal step come closest and stay farthest, if the two differ clearly. */
function crowding({ traces }: SolvedSetup): string {
  const levels = traces.equipotentials.map(({ lines }) =>
    lines.flatMap((traced) => stations(pagePoints(traced, 1), 3).map(({ p }) => p)),
  );
  let closest: Spacing | null = null;
  let widest: Spacing | null = null;
  for (const [i, level] of levels.entries()) {
    const next = levels[i + 1] ?? [];
    for (const p of level) {
      const found = spacingFrom(p, next);
      if (found === null) continue;
      if (closest === null || found.gap < closest.gap) closest = found;
      if (widest === null || found.gap > widest.gap) widest = found;
    }
  }
  if (closest === null || widest === null) return '';
  if (widest.gap < 1.25 * closest.gap) return `They are about ${about(closest.gap)} apart everywhere.`;
  return `They are closest together, about ${about(closest.gap)}, near ${point(rounded(closest.at))} and farthest apart, about ${about(widest.gap)}, near ${point(rounded(widest.at))}.`;
}

interface Spacing {
  readonly gap: number;
  readonly at: Point;
}

function spacingFrom(p: Point, others: readonly Point[]): Spacing | null {
  let best: Spacing | null = null;
  for (const q of others) {
    const gap = hypot(q.x - p.x, q.y - p.y);
    if (best === null || gap < best.gap) best = { gap, at: { x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 } };
  }
  return best;
}

const about = (gap: number): string => millimetres(Math.max(1, Math.round(gap)));
const rounded = ({ x, y }: Point): Point => ({ x: Math.round(x / 5) * 5, y: Math.round(y / 5) * 5 });
const capitalised = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
