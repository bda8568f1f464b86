/** A solved scalar: nodal values on every triangle, and on the layers of a fan when asked for. */
// Indices are bounded by construction throughout, hence `a[i]!`.
import type { Assembly, Lift } from './assemble.ts';
import type { Scalar, Space } from './discrete.ts';
import { FanLayers } from './fan-layers.ts';

export interface Values {
  readonly space: Space;
  readonly assembly: Assembly;
  /** Values of the unknowns. */
  readonly unknowns: Float64Array;
  /** Value on paper that no conductor touches, where the problem says nothing. */
  readonly elsewhere: number;
}

export function scalarOf(from: Values): Scalar {
  const { count } = from.space.reference;
  const { nodes, rimNodes, fans, lifts } = from.assembly;
  const triangles = nodes.length / count;
  const values = gather(from, nodes);
  for (const [e, list] of lifts) {
    if (e < triangles) addJumps(from, list, values.subarray(e * count, (e + 1) * count));
  }
  const layers: (FanLayers | undefined)[] = fans.map(() => undefined);
  const layersOf = (fan: number): FanLayers => {
    const rim = gather(from, rimNodes[fan]!);
    addJumps(from, lifts.get(triangles + fan) ?? [], rim);
    return new FanLayers(fans[fan]!, rim);
  };
  return {
    space: from.space,
    triangle: (t) => values.subarray(t * count, (t + 1) * count),
    fanLayer: (fan, layer) => {
      layers[fan] ??= layersOf(fan);
      return layers[fan].layer(layer);
    },
  };
}

function gather({ unknowns, elsewhere }: Values, nodes: Int32Array): Float64Array {
  const values = new Float64Array(nodes.length);
  for (let i = 0; i < nodes.length; i++) values[i] = nodes[i]! < 0 ? elsewhere : unknowns[nodes[i]!]!;
  return values;
}

function addJumps({ assembly, unknowns }: Values, lifts: readonly Lift[], into: Float64Array): void {
  for (const lift of lifts) {
    const jump = unknowns[assembly.unknownOfCut(lift.cut)]!;
    for (let i = 0; i < into.length; i++) into[i]! += jump * lift.values[i]!;
  }
}
