/** What of a setup can be taken hold of and moved: electrodes, probes, ends of rows. */
import type { Block } from '../../block/tree.ts';
import type { Draft } from '../../checks/examine.ts';
import type { Outline, Point } from '../../field/geometry/outline.ts';
import { boxCentre } from '../../setup/plane.ts';
import type { Electrode, Setup } from '../../setup/setup.ts';
import type { Span } from '../../text/span.ts';
import { givenAs } from './given.ts';

export interface Handle {
  /** `electrode N`, `probe C`, `row A first end`, `row A last end`. */
  readonly id: string;
  readonly kind: 'electrode' | 'probe' | 'row-end';
  /** The electrode, probe or row. */
  readonly name: string;
  /** For people and screen readers: `bar N`, `probe C`, `first end of row A`. */
  readonly label: string;
  /** On the paper, mm; of an electrode the middle of the box around it. */
  readonly point: Point;
  /** Outlines of all pieces, hollows included, mm; empty for a point. */
  readonly outlines: readonly Outline[];
  /** The line that gives its place, which may stand in the block that this one is like. */
  readonly span: Span;
}

/** In the order in which things are drawn: electrodes, rows, probes on top. */
export function handlesOf(draft: Draft, block: number): readonly Handle[] {
  const setup = draft.setups[block];
  if (setup === undefined) return [];
  const blocks = draft.sheet.blocks.map((one) => one.block);
  const lineOf = (name: string, otherwise: Span): Span => lineSpan(blocks, block, name) ?? otherwise;
  return [
    ...setup.electrodes.map((electrode) => electrodeHandle(electrode, lineOf)),
    ...rowHandles(setup, lineOf),
    ...setup.probes.map(
      ({ name, at, span }): Handle => ({
        id: `probe ${name}`,
        kind: 'probe',
        name,
        label: `probe ${name}`,
        point: at,
        outlines: [],
        span: lineOf(name, span),
      }),
    ),
  ];
}

type LineOf = (name: string, otherwise: Span) => Span;

function electrodeHandle({ name, pieces, box, span }: Electrode, lineOf: LineOf): Handle {
  return {
    id: `electrode ${name}`,
    kind: 'electrode',
    name,
    label: `${pieces.length === 1 ? (pieces[0]?.shape.shape ?? 'electrode') : 'electrode'} ${name}`,
    point: boxCentre(box),
    outlines: pieces.flatMap(({ geometry }) => [geometry.outer, ...geometry.hollows]),
    span: lineOf(name, span),
  };
}

function rowHandles({ rows }: Setup, lineOf: LineOf): readonly Handle[] {
  return rows.flatMap(({ name, start, end, span }) => {
    const handle = (which: 'first' | 'last', point: Point): Handle => ({
      id: `row ${name} ${which} end`,
      kind: 'row-end',
      name,
      label: `${which} end of row ${name}`,
      point,
      outlines: [],
      span: lineOf(name, span),
    });
    return [handle('first', start), ...(end === null ? [] : [handle('last', end)])];
  });
}

function lineSpan(blocks: readonly Block[], number: number, name: string): Span | null {
  const given = givenAs(blocks, number, name);
  return given === null ? null : (given.move ?? given.lines[0]).span;
}
