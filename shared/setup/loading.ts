/**
 * What the meter shows. The red lead's tip is one more terminal of the paper: it stands at Σ u_k p_k − s i when it draws i, and
 * puts −u_k i into conductor k. The whole circuit seen from tip and black lead is a source V₀ with a resistance R (Thévenin), and
 * the meter with resistance R_m shows V₀ R_m / (R_m + R).
 */
import type { Circuit } from './circuit.ts';
import type { NetworkState, SolvableNetwork } from './network.ts';
import type { Meter } from './setup.ts';

/** Where the red lead touches. */
export type Touch =
  /** Bare paper: potential there for 1 V on each conductor, and the rise of the tip for 1 A with all conductors at 0 V. */
  | { readonly kind: 'paper'; readonly weights: Float64Array; readonly self_ohm: number }
  | { readonly kind: 'metal'; readonly node: number };

export interface Shown {
  readonly reading_V: number;
  readonly source_ohm: number;
}

/** `open_V` is the potential at the touch without the meter. */
export function meterReading(
  circuit: Circuit,
  solved: SolvableNetwork,
  state: NetworkState,
  meter: Meter,
  touch: Touch,
  open_V: number,
): Shown {
  const black = (meter.blackLead === null ? null : circuit.nodeOf(meter.blackLead)) ?? circuit.zero;
  const source_ohm = sourceResistance(solved, touch, black);
  const across = open_V - (state.node_V[black] ?? 0);
  return { reading_V: (across * meter.resistance_ohm) / (meter.resistance_ohm + source_ohm), source_ohm };
}

/** Fall of the tip against the black lead when 1 A is drawn at the tip and put back at the black lead, all sources at rest. */
function sourceResistance(solved: SolvableNetwork, touch: Touch, black: number): number {
  const { nodes, nodeOf } = solved.network;
  const into_A = new Float64Array(nodes);
  if (touch.kind === 'metal') into_A[touch.node] = -1;
  else for (const [k, n] of nodeOf.entries()) into_A[n] = (into_A[n] ?? 0) - (touch.weights[k] ?? 0);
  into_A[black] = (into_A[black] ?? 0) + 1;
  const { node_V, conductor_V } = solved.solve({ sources: 0, into_A });
  const at = node_V[black] ?? 0;
  if (touch.kind === 'metal') return at - (node_V[touch.node] ?? 0);
  let tip = -touch.self_ohm;
  for (const [k, weight] of touch.weights.entries()) tip += weight * (conductor_V[k] ?? 0);
  return at - tip;
}
