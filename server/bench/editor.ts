/**
 * The language server as an editor feels it, over its standard input and output: from a keystroke to its findings and to the solved
 * drawing on a sheet of 2,000 lines with 20 blocks, the start, and memory over many sheets and edits.
 */
import { performance } from 'node:perf_hooks';
import { decimalsOf, type LongSheet, longSheet } from './editor-sheet.ts';
import { calibrationKernel } from './peers.ts';
import { type Memory, type OpenText, ServerProcess } from './server-process.ts';
import { measure, printTable, type Timing, timing } from './table.ts';

const sheetLines = 2000;
const sheetBlocks = 20;
const keystrokes = 200;
const warmUp = 30;
const sheetsOpened = 200;
const edits = 10_000;

interface Latency {
  readonly what: string;
  readonly goal_ms: number | null;
  readonly times_ms: Timing;
}

interface Growth {
  readonly what: string;
  readonly half: Memory;
  readonly whole: Memory;
}

export async function benchEditor(json: boolean): Promise<void> {
  const calibration_ms = measure(calibrationKernel, 12);
  const latencies = [await starts(), ...(await typing())];
  const growths = [await manySheets(), await manyEdits()];
  const found = { node: process.version, calibration_ms, latencies, growths };
  if (json) console.log(JSON.stringify(found, null, 2));
  else report(found);
}

async function starts(): Promise<Latency> {
  const taken: number[] = [];
  for (let run = 0; run < 11; run++) {
    const started = performance.now();
    const server = await ServerProcess.start();
    taken.push(performance.now() - started);
    await server.stop();
  }
  return {
    what: 'start of the process to the answer to `initialize`',
    goal_ms: null,
    times_ms: timing(taken),
  };
}

/** Each keystroke waits for the answer before; setups typed are all new, so that each is solved. */
async function typing(): Promise<readonly Latency[]> {
  const server = await ServerProcess.start();
  const sheet = longSheet(sheetLines, sheetBlocks);
  const opened = performance.now();
  const text = server.open(sheet.text, 'long.md');
  await text.findings();
  const first = performance.now() - opened;
  const typist = new Typist(text, sheet);
  const run = async (what: string, goal_ms: number | null, keystroke: () => Promise<unknown>) => {
    const taken: number[] = [];
    for (let i = 0; i < warmUp + keystrokes; i++) {
      const started = performance.now();
      await keystroke();
      if (i >= warmUp) taken.push(performance.now() - started);
    }
    return { what, goal_ms, times_ms: timing(taken) };
  };
  const latencies: Latency[] = [
    { what: 'opened to findings, 20 fields to solve', goal_ms: null, times_ms: timing([first]) },
    await run('keystroke in prose to findings', 50, () => {
      typist.prose();
      return text.findings();
    }),
    await run('keystroke in a block to findings', 50, () => {
      typist.block();
      return text.findings();
    }),
    await run('keystroke in a block to the solved drawing', 100, () => text.drawing(typist.block())),
  ];
  await server.stop();
  return latencies;
}

/** Types in one place after the other, the same on every run. */
class Typist {
  private readonly text: OpenText;
  private readonly sheet: LongSheet;
  /** Setups typed so far; the first were in the text. */
  private setups: number;
  private letters = 0;

  constructor(text: OpenText, sheet: LongSheet) {
    this.text = text;
    this.sheet = sheet;
    this.setups = sheet.decimals.length;
  }

  /** Another place for an electrode; where it was typed. */
  block(): number {
    const { decimals } = this.sheet;
    // A stretch of typing in one block, then in another.
    const place = decimals[Math.floor(this.setups / 10) % decimals.length] ?? 0;
    this.text.edit(place, place + 3, decimalsOf(this.setups++));
    return place;
  }

  /** One letter for another, so that offsets stay. */
  prose(): void {
    const { prose } = this.sheet;
    const place = (prose[(Math.floor(this.letters / 10) * 37) % prose.length] ?? 1) - 1;
    this.text.edit(place, place + 1, 'aeiou'.charAt(this.letters++ % 5));
  }
}

async function manySheets(): Promise<Growth> {
  const server = await ServerProcess.start();
  let half: Memory | null = null;
  for (let i = 0; i < sheetsOpened; i++) {
    const sheet = longSheet(200, 2);
    const text = server.open(sheet.text, `sheet-${i}.md`);
    const typist = new Typist(text, sheet);
    await text.findings();
    await text.drawing(typist.block());
    text.close();
    if (i === sheetsOpened / 2 - 1) half = await server.memory();
  }
  const whole = await server.memory();
  await server.stop();
  return { what: `${sheetsOpened} sheets opened, solved, drawn and closed`, half: half ?? whole, whole };
}

/** Bursts of ten keystrokes, nine in prose or one in ten in a block, then the findings are waited for. */
async function manyEdits(): Promise<Growth> {
  const server = await ServerProcess.start();
  const sheet = longSheet(400, 4);
  const text = server.open(sheet.text, 'edited.md');
  const typist = new Typist(text, sheet);
  await text.findings();
  let half: Memory | null = null;
  for (let i = 0; i < edits; i++) {
    if (i % 10 === 5) typist.block();
    else typist.prose();
    if (i % 10 === 9) await text.findings();
    if (i === edits / 2 - 1) half = await server.memory();
  }
  const whole = await server.memory();
  await server.stop();
  return { what: `${edits} keystrokes`, half: half ?? whole, whole };
}

interface Found {
  readonly node: string;
  readonly calibration_ms: Timing;
  readonly latencies: readonly Latency[];
  readonly growths: readonly Growth[];
}

function report({ node, calibration_ms, latencies, growths }: Found): void {
  const kernel = calibration_ms.min;
  const both = (ms: number): string => `${ms.toFixed(1)} (${(ms / kernel).toFixed(1)} k)`;
  console.log(
    `Node ${node}; a sheet of ${sheetLines} lines with ${sheetBlocks} blocks; calibration kernel ${kernel.toFixed(1)} ms, the unit "k".\n`,
  );
  printTable([
    ['ms', 'middle', 'p95', 'goal for p95'],
    ...latencies.map(({ what, goal_ms, times_ms: { median, p95 } }) => [
      what,
      both(median),
      both(p95),
      goal_ms === null ? '' : `${goal_ms} ${p95 <= goal_ms ? 'reached' : 'missed'}`,
    ]),
  ]);
  console.log();
  const mega = (bytes: number | null): string => (bytes === null ? 'not told' : (bytes / 2 ** 20).toFixed(1));
  printTable([
    ['MiB, half-way / at the end', 'heap', 'heap of the solving thread', 'resident', 'growth of the heaps'],
    ...growths.map(({ what, half, whole }) => [
      what,
      `${mega(half.heap)} / ${mega(whole.heap)}`,
      `${mega(half.solver)} / ${mega(whole.solver)}`,
      `${mega(half.resident)} / ${mega(whole.resident)}`,
      `${(((whole.heap + whole.solver) / (half.heap + half.solver) - 1) * 100).toFixed(0)} %`,
    ]),
  ]);
}
