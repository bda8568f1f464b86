/** The one road through a sheet: read, give its setups their meaning, solve them, run the rules, and gather all findings. */
import type { Finding } from '../findings/finding.ts';
import type { KnownBlocks } from '../setup/known-blocks.ts';
import type { SolvedSetup } from '../setup/readings.ts';
import { resolveSetups } from '../setup/resolve.ts';
import type { Setup } from '../setup/setup.ts';
import { type Ask, type Outcome, outcomeOf } from '../setup/solve-setup.ts';
import { troubleFinding } from '../setup/trouble.ts';
import { applyAllowances } from '../sheet/allowances.ts';
import { type Binding, bindInserts, wantedSamples } from '../sheet/inserts/bind.ts';
import type { BoundInsert } from '../sheet/inserts/bound.ts';
import { isSheet, readSheet } from '../sheet/read-sheet.ts';
import type { Sheet } from '../sheet/sheet.ts';
import type { Source } from '../text/source.ts';
import { type Standards, usualStandards } from './rule.ts';
import { rules } from './rules/index.ts';
import { withSeverities } from './severities.ts';

/** A sheet that has its meaning but is not solved. */
export interface Draft {
  readonly sheet: Sheet;
  /** By number of the block. */
  readonly setups: readonly Setup[];
  readonly binding: Binding;
  readonly standards: Standards;
}

export interface Examination extends Standards {
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

/** Relative width of the bounds to reach, and which lines for the drawings. */
export type ExamineOptions = Pick<Ask, 'gap' | 'traces'>;

/** What all programs ask for, so that they say the same. */
const whole: ExamineOptions = { gap: 1e-8, traces: true };

export function examineSheet(source: Source, options: Partial<ExamineOptions & Standards> = {}): Examination {
  const draft = draftSheet(source, options);
  const { gap = whole.gap, traces = whole.traces } = options;
  return conclude(draft, (setup) => outcomeOf(setup, askOf(draft, setup, { gap, traces })));
}

/** `known`: blocks of earlier readings of the same text, which change nothing but how long it takes. */
export function draftSheet(source: Source, standards: Partial<Standards> = {}, known?: KnownBlocks): Draft {
  const { department = usualStandards.department, today = usualStandards.today } = standards;
  const sheet = readSheet(source, department.style.language ?? undefined, known);
  const blocks = sheet.blocks.map(({ block }) => block);
  const setups = resolveSetups(blocks, known);
  return { sheet, setups, binding: bindInserts(sheet, setups), standards: { department, today } };
}

/** What a sheet needs to know of the solution of one of its setups. */
export function askOf({ binding }: Draft, setup: Setup, options: ExamineOptions = whole): Ask {
  return { ...options, samples: wantedSamples(binding, setup) };
}

/** A draft with the outcome for each of its setups. */
export function conclude(draft: Draft, outcome: (setup: Setup) => Outcome): Examination {
  const { sheet, setups, binding, standards } = draft;
  const outcomes = setups.map((setup) => ({ setup, ...outcome(setup) }));
  const solutions = new Map(
    outcomes.flatMap(({ setup, solved }) => (solved === null ? [] : [[setup.block, solved] as const])),
  );
  const findings = [
    ...sheet.findings,
    ...sheet.blocks.flatMap(({ block }) => block.findings),
    ...setups.flatMap((setup) => setup.findings),
    ...binding.findings,
    ...outcomes.flatMap(({ setup, trouble }) => (trouble === null ? [] : [troubleFinding(setup, trouble)])),
    ...(isSheet(sheet) ? rules.flatMap((rule) => rule({ sheet, setups, solutions, ...standards })) : []),
  ];
  const left = withSeverities(applyAllowances(findings, sheet), standards.department);
  return {
    sheet,
    setups,
    bound: binding.bound,
    solutions,
    findings: inOrder(left),
    ...standards,
  };
}

const inOrder = (findings: readonly Finding[]): readonly Finding[] =>
  [...findings].sort((a, b) => a.span.from - b.span.from || a.span.to - b.span.to);
