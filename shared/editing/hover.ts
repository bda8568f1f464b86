/** What an editor tells about the place under the pointer. */
import type { Draft } from '../checks/examine.ts';
import type { SolvedSetup } from '../setup/readings.ts';
import type { Setup } from '../setup/setup.ts';
import type { BoundInsert } from '../sheet/inserts/bound.ts';
import { solvedValue } from '../sheet/print/solved-values.ts';
import type { Span } from '../text/span.ts';
import { amountText, totalsText } from './amounts.ts';
import { headHelp } from './completion/insert.ts';
import { lineHover } from './hover-line.ts';
import { namedHelp } from './hover-named.ts';
import { textHover } from './hover-text.ts';
import { type Occurrence, occurrenceAt, occurrencesOf } from './occurrences.ts';
import { blockPlace, holds, openingSpan } from './place.ts';

export interface Hover {
  readonly span: Span;
  /** Markdown. */
  readonly text: string;
  /** Number of the block whose drawing belongs below. */
  readonly drawing: number | null;
}

export type Solutions = ReadonlyMap<number, SolvedSetup>;

/** `solutions` may be empty: what only they know is then left out. */
export function hoverAt(draft: Draft, solutions: Solutions, offset: number): Hover | null {
  const place = blockPlace(draft.sheet, offset);
  if (place === null) return insertHover(draft, solutions, offset) ?? textHover(draft.sheet, offset);
  const setup = draft.setups[place.number];
  if (setup === undefined) return null;
  if (place.line === -1) {
    const text = setupText(setup, solutions.get(place.number));
    return { span: openingSpan(place.block), text, drawing: place.number };
  }
  return namedHover(draft, solutions, offset, setup) ?? lineHover(place, offset);
}

/** The block whose solution a hover here tells of; null where it tells of none. */
export function hoverNeeds(draft: Draft, offset: number): number | null {
  const place = blockPlace(draft.sheet, offset);
  const tells = place === null || place.line === -1 || namedAt(draft, offset) !== null;
  return tells ? blockMeant(draft, offset) : null;
}

/** The block that the offset stands in, or whose setup the insert there speaks of. */
export function blockMeant({ sheet, binding }: Draft, offset: number): number | null {
  const place = blockPlace(sheet, offset);
  if (place !== null) return place.number;
  const target = boundAt(binding.bound, offset)?.target ?? null;
  return target !== null && 'setup' in target ? target.setup.block : null;
}

function setupText({ name }: Setup, solved: SolvedSetup | undefined): string {
  const told = solved === undefined ? null : totalsText(solved);
  return `**${name}**${told === null ? '' : `: ${told}`}`;
}

const boundAt = (bound: readonly BoundInsert[], offset: number): BoundInsert | null =>
  bound.find(({ insert }) => holds(insert.span, offset)) ?? null;

function insertHover(draft: Draft, solutions: Solutions, offset: number): Hover | null {
  const bound = boundAt(draft.binding.bound, offset);
  if (bound === null || bound.target === null) return null;
  const { insert, target } = bound;
  if (target.kind === 'drawing') {
    const { block } = target.setup;
    return { span: insert.span, text: setupText(target.setup, solutions.get(block)), drawing: block };
  }
  const value = solvedValue(target, solutions);
  if (value === null) return headHover(bound);
  const text = 'unit' in value ? amountText(value) : value.map(amountText).join(' to ');
  return { span: insert.span, text: `\`${insert.written}\` is **${text}**`, drawing: null };
}

/** What an insert makes that has no value of its own, or none yet. */
function headHover({ insert }: BoundInsert): Hover | null {
  const head = Object.keys(headHelp).find((word) => insert.written.slice(2).trimStart().startsWith(word));
  const help = head === undefined ? undefined : headHelp[head];
  if (help === undefined) return null;
  return { span: insert.span, text: `**${head}**: ${help[0]}`, drawing: null };
}

const namedAt = (draft: Draft, offset: number): Occurrence | null => {
  const found = occurrenceAt(occurrencesOf(draft), offset);
  return found?.thing.kind === 'named' ? found : null;
};

function namedHover(draft: Draft, solutions: Solutions, offset: number, setup: Setup): Hover | null {
  const found = namedAt(draft, offset);
  if (found === null) return null;
  const text = namedHelp(found.thing.name, setup, solutions.get(setup.block) ?? null);
  return text === null ? null : { span: found.span, text, drawing: null };
}
