/** Prints a text for all its readers, with what the desk has solved already. */
import {
  type Audience,
  askOf,
  audiences,
  conclude,
  draftSheet,
  type Examination,
  type editing,
  type Outcome,
  type Print,
  printSheets,
  type Stages,
  withheldBecause,
} from '../../shared/index.ts';
import type { Desk } from './desk.ts';
import { problemFor } from './problem.ts';

export interface PrintTask {
  /** Of the text, for messages. */
  readonly name: string;
  readonly text: string;
}

export function* printed({ name, text }: PrintTask, desk: Desk): Stages<editing.PrintAnswer> {
  const draft = draftSheet({ name, text });
  const outcomes: Outcome[] = [];
  for (const setup of draft.setups) {
    yield;
    outcomes.push(yield* desk.wholeWithLines(problemFor(setup, askOf(draft, setup))));
  }
  yield;
  const examination = conclude(draft, ({ block }) => outcomes[block] ?? { solved: null, trouble: null });
  const prints = printSheets(examination, audiences);
  return { prints, withheld: withheld(examination, prints) };
}

/** One sentence for the readers who get no print. */
function withheld({ sheet, findings }: Examination, prints: readonly Print[]): readonly string[] {
  const missing = audiences.filter((reader: Audience) => prints.every(({ audience }) => audience !== reader));
  if (missing.length === 0) return [];
  return [`Not printed for ${missing.join(' and ')}: ${withheldBecause(sheet, findings, missing)}.`];
}
