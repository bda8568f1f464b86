/** Whatever is moved, however it is written: read again, it stands as far away as was asked, and what has a place of its own stays. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Draft } from '../../../shared/checks/examine.ts';
import { type Handle, handlesOf } from '../../../shared/editing/moving/handles.ts';
import { moveHandle } from '../../../shared/editing/moving/move.ts';
import { edited } from '../cursor.ts';
import { randomSheet } from '../random-sheets.ts';
import { draftOf } from './moved.ts';

test('every handle goes where it is moved', () => {
  let arrived = 0;
  fc.assert(
    fc.property(
      randomSheet,
      fc.nat(),
      fc.integer({ min: -25, max: 25 }),
      fc.integer({ min: -25, max: 25 }),
      fc.nat(1),
      (text, pick, dx, dy, block) => {
        fc.pre(dx !== 0 || dy !== 0);
        const draft = draftOf(text);
        const handles = handlesOf(draft, block);
        const handle = handles[pick % handles.length];
        if (handle === undefined) throw new Error('no handle');
        const moving = moveHandle(draft, block, handle.id, [dx, dy]);
        if ('refusal' in moving) return;
        arrived++;
        const after = draftOf(edited(text, moving.edits));
        const errors = after.sheet.blocks.flatMap(({ block: { findings } }) => findings);
        expect(errors).toEqual([]);
        expect(strayOf(draft, after, block, handle, [dx, dy])).toBeLessThan(0.01);
        stayed(draft, after, block, handle);
      },
    ),
    { numRuns: 100, seed: 20 },
  );
  expect(arrived).toBeGreaterThan(50);
});

/** How far from where it should be the thing now stands, mm; less along or across what it keeps to. */
function strayOf(
  before: Draft,
  after: Draft,
  block: number,
  handle: Handle,
  by: readonly [number, number],
): number {
  const to = handlesOf(after, block).find(({ id }) => id === handle.id);
  if (to === undefined) return Number.POSITIVE_INFINITY;
  const gone = whereOf(before, block, handle);
  const here = whereOf(after, block, to);
  const [ax, ay] = [here.x - gone.x - by[0], here.y - gone.y - by[1]];
  const stray = Math.hypot(ax, ay);
  const relative = /(right|left) of|above|below|on N|along|at A/u.test(lineOf(before, handle));
  // What stays in relation is moved along that only, and there by whole mm.
  return relative && stray <= 3 + 0.51 ? 0 : stray;
}

/** A spike that slides has a base that changes: its tip counts. */
function whereOf({ setups }: Draft, block: number, { kind, name, point }: Handle): { x: number; y: number } {
  const piece = setups[block]?.electrodes.find((one) => one.name === name)?.pieces[0];
  if (kind !== 'electrode' || piece === undefined || !/spike|prong/u.test(piece.shape.shape)) return point;
  return piece.geometry.outer.edges[0]?.from ?? point;
}

const lineOf = ({ sheet }: Draft, { span }: Handle): string => sheet.source.text.slice(span.from, span.to);

function stayed(before: Draft, after: Draft, block: number, handle: Handle): void {
  const places = (draft: Draft): unknown =>
    handlesOf(draft, block)
      .filter(({ id }) => ['electrode N', 'electrode K', 'probe Z'].includes(id) && id !== handle.id)
      .map(({ id, point }) => [id, point]);
  expect(places(after)).toEqual(places(before));
}
