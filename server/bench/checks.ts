/**
 * How good the checks are and what they cost: precision and recall of each group of findings over the corpus of marked sheets, and the
 * time that a long solved sheet takes.
 */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { conclude, draftSheet, outcomeOf, type Setup } from '../../shared/index.ts';
import { judgeFolder, precisionOf, readCorpus, recallOf, type Score, scoresOf } from './corpus.ts';
import { longSheet } from './editor-sheet.ts';
import { calibrationKernel } from './peers.ts';
import { measure, printTable, type Timing } from './table.ts';

const sheetLines = 2000;
const sheetBlocks = 20;
const ask = { gap: 1e-5, traces: 'equipotentials', samples: [] } as const;

interface Found {
  readonly sheets: number;
  readonly scores: readonly Score[];
  readonly calibration_ms: Timing;
  /** Reading apart: the rules alone, over a sheet whose setups are solved. */
  readonly first_ms: number;
  readonly again_ms: Timing;
}

/** `root`: where the repository stands; the corpus is no part of a package. */
export function benchChecks(json: boolean, root = process.cwd()): void {
  const corpus = join(root, 'tests', 'checks', 'corpus');
  if (!existsSync(corpus)) throw new Error(`${corpus} is not there: this bench runs in the repository`);
  const found = measured(corpus);
  if (json) console.log(JSON.stringify(found, null, 2));
  else report(found);
}

function measured(corpus: string): Found {
  // Before the corpus, which would warm the rules up.
  const times = timesOf(longSheet(sheetLines, sheetBlocks).text);
  const folders = readCorpus(corpus);
  const verdicts = folders.flatMap((folder) => judgeFolder(folder, (setup) => outcomeOf(setup, ask)));
  return {
    sheets: folders.reduce((sum, { sheets }) => sum + sheets.length, 0),
    scores: scoresOf(verdicts),
    ...times,
  };
}

function timesOf(text: string): Omit<Found, 'sheets' | 'scores'> {
  const draft = draftSheet({ name: 'long.md', text });
  const outcomes = draft.setups.map((setup) => outcomeOf(setup, ask));
  const outcome = ({ block }: Setup) => outcomes[block] ?? { solved: null, trouble: null };
  const first = measureOnce(() => conclude(draft, outcome));
  const again_ms = measure(() => conclude(draftSheet({ name: 'long.md', text }), outcome), 21);
  const reading = measure(() => draftSheet({ name: 'long.md', text }), 21);
  const less = (whole: number, part: number): number => Math.max(0, whole - part);
  return {
    calibration_ms: measure(calibrationKernel, 12),
    first_ms: first,
    again_ms: {
      min: less(again_ms.min, reading.min),
      median: less(again_ms.median, reading.median),
      p95: less(again_ms.p95, reading.p95),
    },
  };
}

function measureOnce(work: () => unknown): number {
  const started = performance.now();
  work();
  return performance.now() - started;
}

function report({ sheets, scores, calibration_ms, first_ms, again_ms }: Found): void {
  const kernel = calibration_ms.min;
  const both = (ms: number): string => `${ms.toFixed(1)} ms (${(ms / kernel).toFixed(1)} k)`;
  console.log(`${sheets} sheets; calibration kernel ${kernel.toFixed(1)} ms, the unit "k".\n`);
  printTable([
    ['findings', 'marked', 'found', 'unasked', 'notes unasked', 'precision', 'recall'],
    ...scores.map((score) => [
      score.group,
      String(score.marked),
      String(score.found),
      String(score.unasked),
      String(score.unaskedNotes),
      precisionOf(score).toFixed(3),
      recallOf(score).toFixed(3),
    ]),
  ]);
  console.log(
    `\nA solved sheet of ${sheetLines} lines with ${sheetBlocks} blocks: the first time ${both(first_ms)}, then ${both(again_ms.median)}; goal 50 ms.`,
  );
}
