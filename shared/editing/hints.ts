/** Values shown inside the lines of a block: the reading behind each probe, current and resistance behind the supply. */
import type { Block, Statement } from '../block/tree.ts';
import type { Subject } from '../checks/rule.ts';
import { readingText } from '../drawing/reading-text.ts';
import type { SolvedSetup } from '../setup/readings.ts';
import type { Setup } from '../setup/setup.ts';
import type { Span } from '../text/span.ts';
import { totalsText } from './amounts.ts';
import { openingSpan } from './place.ts';

export interface Hint {
  readonly at: number;
  readonly text: string;
}

/** A line above a block that says what it comes to. */
export interface Lens {
  readonly span: Span;
  /** Of the setup. */
  readonly name: string;
  readonly text: string;
}

/** Of the blocks whose solutions are given. */
export function hintsOf({ sheet, setups, solutions }: Subject): readonly Hint[] {
  return sheet.blocks.flatMap(({ block }, number) => {
    const setup = setups[number];
    const solved = solutions.get(number);
    return setup === undefined || solved === undefined ? [] : blockHints(block, setup, solved);
  });
}

function blockHints(block: Block, setup: Setup, solved: SolvedSetup): readonly Hint[] {
  return block.statements.flatMap((statement) => {
    const text = hintText(statement, setup, solved);
    return text === null ? [] : [{ at: statement.span.to, text }];
  });
}

function hintText(statement: Statement, setup: Setup, solved: SolvedSetup): string | null {
  if (statement.kind === 'supply') return totalsText(solved);
  if (statement.kind !== 'probe' && statement.kind !== 'move') return null;
  const probe = solved.readings.probes.find(({ name }) => name === statement.name.text);
  return probe === undefined ? null : readingText(probe, setup);
}

/** One for each block; of one without a solution, why. */
export function lensesOf({ sheet, setups, solutions }: Subject): readonly Lens[] {
  return sheet.blocks.flatMap(({ block }, number) => {
    const setup = setups[number];
    if (setup === undefined) return [];
    const solved = solutions.get(number);
    const told = solved === undefined ? null : totalsText(solved);
    const text = told ?? (solved === undefined ? 'not solved' : 'solved; sheet resistance not given');
    return [{ span: openingSpan(block), name: setup.name, text }];
  });
}
