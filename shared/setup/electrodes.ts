/** Electrodes: placed pieces, terminals and clips put together under their names. */
import type { ClipStatement, Statement } from '../block/tree.ts';
import type { Names } from './names.ts';
import { apartNotes } from './pieces.ts';
import type { Places } from './places.ts';
import { type Report, rewrite } from './report.ts';
import type { Electrode, Paper } from './setup.ts';
import type { Terminals } from './terminals.ts';

export interface ElectrodeTools {
  readonly names: Names;
  readonly places: Places;
  readonly terminals: Terminals;
  readonly paper: Paper | null;
  readonly report: Report;
}

/** Those that have a place, in the order written; conductors are numbered later. */
export function readElectrodes(
  statements: readonly Statement[],
  tools: ElectrodeTools,
): readonly Electrode[] {
  const { names, places, terminals, report } = tools;
  const clips = readClips(statements, tools);
  return [...names.electrodes].flatMap(([name, shapes]): readonly Electrode[] => {
    const placed = places.electrodes.get(name);
    const wiring = terminals.wiring.get(name);
    const [first] = shapes;
    if (placed === undefined || wiring === undefined || first === undefined) return [];
    const { pieces } = placed;
    apartNotes(name, pieces, report);
    return [
      {
        name,
        span: first.name.span,
        pieces: pieces.map(({ shape, geometry }) => ({ shape, span: shape.span, geometry })),
        box: placed.box,
        ...wiring,
        clip_ohm: clips.get(name) ?? 0,
        conductor: null,
      },
    ];
  });
}

function readClips(
  statements: readonly Statement[],
  { names, terminals, paper, report }: ElectrodeTools,
): ReadonlyMap<string, number> {
  const clips = new Map<string, number>();
  const lines = statements.filter((s): s is ClipStatement => s.kind === 'clip');
  for (const { name, resistance, span } of lines) {
    if (!names.electrode(name, 'A clip holds an electrode.')) continue;
    const partOf = terminals.wiring.get(name.text)?.partOf ?? null;
    if (partOf !== null) {
      report('clip-of-part', {
        span,
        message: `${name.text} stands on ${partOf}: the clip holds ${partOf}.`,
        fixes: [rewrite(name.span, partOf)],
      });
    } else if (clips.has(name.text)) {
      report('line-twice', { span, message: `A second clip on ${name.text}: the first stands.` });
    } else if (paper !== null && paper.resistance_ohm !== null) clips.set(name.text, resistance.value);
  }
  return clips;
}
