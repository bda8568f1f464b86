/** A setup to be solved, and what is asked of its solution. */
import { type Ask, editing, fingerprint, type Setup } from '../../shared/index.ts';

export interface Problem {
  /** Problems of one key have one outcome and one drawing, wherever they stand in a text. */
  readonly key: string;
  readonly setup: Setup;
  readonly ask: Ask;
}

/** Field lines are added where something is drawn: findings do not wait for them. */
export function problemFor(setup: Setup, asked: Ask): Problem {
  const ask: Ask = { ...asked, traces: 'equipotentials' };
  return { key: `${editing.meaningKey(setup)} ${fingerprint(JSON.stringify(ask))}`, setup, ask };
}
