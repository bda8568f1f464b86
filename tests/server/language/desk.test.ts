/** What the solving thread keeps between its tasks, by counts of the field problems it begins; with real fields. */
import { describe, expect, it, test } from 'vitest';
import { Desk } from '../../../server/language/desk.ts';
import { Solutions } from '../../../server/language/solutions.ts';
import { Solver } from '../../../server/language/solver.ts';
import { drained } from '../../../shared/field/solve/stages.ts';
import { outcomeOf } from '../../../shared/index.ts';
import { only, problems, settled, startOwn, twoSolvable } from './threads.ts';

const bars = (change: (text: string) => string = (text) => text) => only(problems(change(twoSolvable)));
const replaced = (old: string, by: string) => (text: string) => {
  if (!text.includes(old)) throw new Error(`no ${old}`);
  return text.replace(old, by);
};

describe('a field is used again after an edit of', () => {
  const desk = new Desk();
  drained(desk.soon(bars()));
  it.each([
    ['the supply', 'cell 1.5 V', '2 cells 1.5 V'],
    ['the internal resistance', 'internal 0.5 Ω', 'internal 0.8 Ω'],
    ['the meter', '10 MΩ', '1 MΩ'],
    ['the clips', 'probe   M', 'clip P 20 Ω\nprobe   M'],
    ['the sheet resistance', '5 kΩ per square', '1.8 kΩ per square'],
    ['a probe', '(115, 80)', '(120, 70)'],
    ['the equipotentials', 'probe   M', 'equipotentials 0.3 V, 0.9 V\nprobe   M'],
  ])('%s, and the outcome is that of a fresh solve', (_, old, by) => {
    const edited = bars(replaced(old, by));
    const { outcome } = drained(desk.soon(edited));
    expect(outcome.solved).not.toBe(null);
    expect(outcome).toEqual(outcomeOf(edited.setup, edited.ask));
    const { outcome: drawn } = drained(desk.soonWithLines(edited));
    expect(drawn).toEqual(outcomeOf(edited.setup, { ...edited.ask, traces: true }));
    expect(drawn.solved?.traces.fieldLines.length).toBeGreaterThan(0);
    expect(desk.begun).toBe(1);
  });

  test('and solved anew after an edit of the metal, or where the sheet resistance has two values', () => {
    drained(desk.soon(bars(replaced('100 mm right', '101 mm right'))));
    expect(desk.begun).toBe(2);
    drained(desk.soon(bars(replaced('5 kΩ per square', '5 kΩ per square along x, 6 kΩ per square along y'))));
    expect(desk.begun).toBe(3);
  });
});

describe('the desk', () => {
  it('lets go of what no text needs', () => {
    const desk = new Desk();
    const [first, second] = [bars(), bars(replaced('100 mm right', '101 mm right'))];
    drained(desk.soon(first));
    drained(desk.soon(second));
    expect(desk.counts).toMatchObject({ fields: 2, outcomes: 2 });
    desk.keep([second.key]);
    expect(desk.counts).toMatchObject({ fields: 1, outcomes: 1 });
    desk.keep([]);
    expect(desk.counts).toEqual({ fields: 0, outcomes: 0, bytes: 0 });
  });

  it('holds no more bytes than it may', () => {
    const one = new Desk();
    drained(one.soon(bars()));
    // The working memory of a solve counts as one field more.
    const most = 3.2 * one.counts.bytes;
    const desk = new Desk(undefined, most);
    for (let x = 100; x < 106; x++) drained(desk.soon(bars(replaced('100 mm right', `${x} mm right`))));
    expect(desk.counts.fields).toBe(2);
    expect(desk.counts.bytes).toBeLessThan(2 * most);
  });

  it('goes on where a stopped solve was left', () => {
    const desk = new Desk();
    const stages = desk.soon(bars());
    for (let i = 0; i < 3; i++) stages.next();
    const { outcome } = drained(desk.soon(bars()));
    expect(desk.begun).toBe(1);
    expect(outcome).toEqual(outcomeOf(bars().setup, bars().ask));
  });

  it('shows a large setup rough, and refines it to what a fresh solve gives', () => {
    const desk = new Desk(1000);
    const first = drained(desk.soon(bars()));
    expect(first.rough).toBe(true);
    expect(first.outcome.solved?.work.gap).toBeGreaterThan(1e-8);
    expect(drained(desk.whole(bars()))).toEqual(outcomeOf(bars().setup, bars().ask));
    expect(drained(desk.soon(bars())).rough).toBe(false);
    expect(desk.begun).toBe(1);
  });

  it('reads a kept field at any place as a probe there would', () => {
    const desk = new Desk();
    const { outcome } = drained(desk.soon(bars()));
    const reader = drained(desk.reader(bars()));
    const [probe] = outcome.solved?.readings.probes ?? [];
    expect({ name: 'M', ...reader?.read({ x: 115, y: 80 }) }).toEqual(probe);
    expect(drained(desk.reader(bars()))).toBe(reader);
    expect(desk.begun).toBe(1);
  });
});

test('bursts of edits end in what a fresh solve gives, also where each setup counts as large', async () => {
  const desk = new Desk(1000);
  const solutions = new Solutions(new Solver(startOwn(desk)));
  const versions = [100, 101, 102, 103, 104].map((x) =>
    problems(twoSolvable.replace('100 mm right', `${x} mm right`)),
  );
  for (const version of versions) {
    solutions.need('a', version);
    for (let i = 0; i < 4; i++) await settled();
  }
  const last = versions.at(-1) ?? [];
  for (const problem of last) {
    expect(await solutions.whole(problem)).toEqual(outcomeOf(problem.setup, problem.ask));
  }
  solutions.release('a');
  for (let i = 0; i < 4; i++) await settled();
  expect(desk.counts).toEqual({ fields: 0, outcomes: 0, bytes: 0 });
  expect(solutions.counts).toEqual({ kept: 0, bytes: 0, texts: 0 });
});
