/** What the meter shows on a paper of known conductances, against Thévenin's theorem worked by hand. */
import { describe, expect, it } from 'vitest';
import { solveCircuit } from '../../shared/setup/bounds.ts';
import { circuitOf } from '../../shared/setup/circuit.ts';
import { meterReading, type Touch } from '../../shared/setup/loading.ts';
import type { Meter } from '../../shared/setup/setup.ts';
import { negative, paperOf, positive, setupOf } from './hand-made.ts';

const meter = (resistance_ohm: number, blackLead: string | null = null): Meter => ({
  span: { from: 0, to: 0 },
  resistance_ohm,
  resolution_V: null,
  range_V: null,
  tip_mm: 1,
  blackLead,
});

function shown(touch: (nodeOf: (name: string) => number | null) => Touch, with_: Meter, clip_ohm = 0) {
  const leads = [
    { name: 'N', connection: negative, clip_ohm },
    { name: 'P', connection: positive, clip_ohm },
  ];
  const setup = setupOf(leads, { emf_V: 1.5 });
  const circuit = circuitOf(setup);
  const found = solveCircuit(circuit, { upper_S: paperOf(2, [[0, 1, 2000]]), lower_S: null });
  const at = touch(circuit.nodeOf);
  const open =
    at.kind === 'metal'
      ? (found.state.node_V[at.node] ?? 0)
      : at.weights.reduce((sum, weight, k) => sum + weight * (found.state.conductor_V[k] ?? 0), 0);
  return meterReading(circuit, found.solved, found.state, with_, at, open);
}

describe('a tip on bare paper', () => {
  // Half-way between the electrodes; with both at 0 V the tip rises 4500 Ω × 1 A.
  const middle = (): Touch => ({ kind: 'paper', weights: Float64Array.of(0.5, 0.5), self_ohm: 4500 });

  it('with ideal leads the source resistance is that of the tip alone', () => {
    const { reading_V, source_ohm } = shown(middle, meter(1e6));
    expect(source_ohm).toBeCloseTo(4500, 9);
    expect(reading_V).toBeCloseTo((0.75 * 1e6) / 1.0045e6, 12);
  });

  it('clips add what the current of the meter meets in them', () => {
    // 1 A drawn at the tip comes half over each electrode. With clips of 500 Ω at N and P the two stand symmetrical: half of it
    // through each clip lowers both by 250 V, and so the tip.
    const { source_ohm } = shown(middle, meter(1e6), 500);
    expect(source_ohm).toBeCloseTo(4500 + 250, 9);
  });

  it('a black lead on P turns the sign', () => {
    const { reading_V, source_ohm } = shown(middle, meter(1e6, 'P'));
    expect(source_ohm).toBeCloseTo(4500, 9);
    expect(reading_V).toBeCloseTo((-0.75 * 1e6) / 1.0045e6, 12);
  });
});

describe('a tip on metal', () => {
  const onP = (nodeOf: (name: string) => number | null): Touch => ({
    kind: 'metal',
    node: nodeOf('P') ?? -1,
  });

  it('reads the metal itself on an ideal lead', () => {
    expect(shown(onP, meter(1e4))).toEqual({ reading_V: 1.5, source_ohm: 0 });
  });

  it('sees the clip beside the rest of the circuit', () => {
    // 500 Ω to the supply beside 2000 Ω + 500 Ω through the paper.
    const { reading_V, source_ohm } = shown(onP, meter(1e4), 500);
    const source = 1 / (1 / 500 + 1 / 2500);
    expect(source_ohm).toBeCloseTo(source, 9);
    expect(reading_V).toBeCloseTo((1.25 * 1e4) / (1e4 + source), 12);
  });
});
