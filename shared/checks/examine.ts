/** The one road through a sheet: read, give its setups their meaning, solve them, run the rules, and gather all findings. */
import type { Finding } from '../findings/finding.ts';
import type { SolvedSetup } from '../setup/readings.ts';
import { resolveSetups } from '../setup/resolve.ts';
import type { Setup } from '../setup/setup.ts';
import { solveSetup } from '../setup/solve-setup.ts';
import { applyAllowances } from '../sheet/allowances.ts';
import { bindInserts, wantedSamples } from '../sheet/inserts/bind.ts';
import type { BoundInsert } from '../sheet/inserts/bound.ts';
import { readSheet } from '../sheet/read-sheet.ts';
import type { Sheet } from '../sheet/sheet.ts';
import type { Source } from '../text/source.ts';
import { rules } from './rules/index.ts';

export interface Examination {
  readonly sheet: Sheet;
  /** By number of the block. */
  readonly setups: readonly Setup[];
  /** By number of the insert. */
  readonly bound: readonly BoundInsert[];
  /** By number of the block; a setup that could not be solved is missing. */
  readonly solutions: ReadonlyMap<number, SolvedSetup>;
  /** In order of place. */
  readonly findings: readonly Finding[];
}

export interface ExamineOptions {
  /** Relative width of the bounds to reach. */
  readonly gap: number;
  /** Lines for the drawings as well. */
  readonly traces: boolean;
}

/** What the command line asks for. */
const whole: ExamineOptions = { gap: 1e-8, traces: true };

export function examineSheet(source: Source, { gap, traces }: ExamineOptions = whole): Examination {
  const sheet = readSheet(source);
  const setups = resolveSetups(sheet.blocks.map(({ block }) => block));
  const binding = bindInserts(sheet, setups);
  const outcomes = setups.map((setup) =>
    solveSetup(setup, { gap, traces, samples: wantedSamples(binding, setup) }),
  );
  const solutions = new Map(
    setups.flatMap(({ block }, index) => {
      const solved = outcomes[index]?.solved;
      return solved ? [[block, solved] as const] : [];
    }),
  );
  const findings = [
    ...sheet.findings,
    ...sheet.blocks.flatMap(({ block }) => block.findings),
    ...setups.flatMap((setup) => setup.findings),
    ...binding.findings,
    ...outcomes.flatMap((outcome) => outcome.findings),
    ...rules.flatMap((rule) => rule({ sheet, setups, solutions })),
  ];
  const allowed = applyAllowances(findings, sheet);
  return { sheet, setups, bound: binding.bound, solutions, findings: inOrder(allowed) };
}

const inOrder = (findings: readonly Finding[]): readonly Finding[] =>
  [...findings].sort((a, b) => a.span.from - b.span.from || a.span.to - b.span.to);
