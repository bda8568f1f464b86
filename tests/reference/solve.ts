/** Solves a block given as text, as the command line would, and insists that it was solved. */
import { parseBlock } from '../../shared/block/parse.ts';
import type { Point } from '../../shared/field/geometry/outline.ts';
import type { SolvedSetup } from '../../shared/setup/readings.ts';
import { resolveSetups } from '../../shared/setup/resolve.ts';
import { solveSetup } from '../../shared/setup/solve-setup.ts';
import { excerptOf } from '../excerpts.ts';

export function solveBlock(text: string, samples: readonly Point[] = []): SolvedSetup {
  const [setup] = resolveSetups([parseBlock(excerptOf(text))]);
  if (!setup) throw new Error('no setup');
  const { solved, findings } = solveSetup(setup, { gap: 1e-8, traces: false, samples });
  if (!solved) throw new Error([...setup.findings, ...findings].map(({ message }) => message).join('\n'));
  return solved;
}
