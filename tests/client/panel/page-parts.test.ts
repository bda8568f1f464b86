/** The parts of the panel's page that need no page: coordinates, one question at a time, keys, and what is carried. */
import { describe, expect, test } from 'vitest';
import {
  burst_ms,
  type Carrying,
  carry,
  type Deed,
  type Event,
  isAtRest,
  nothing,
} from '../../../client/panel/page/carrying.ts';
import {
  held,
  holds,
  inView,
  onPaper,
  viewTransform,
  whole,
} from '../../../client/panel/page/coordinates.ts';
import { intentOf } from '../../../client/panel/page/keys.ts';
import { Newest } from '../../../client/panel/page/newest.ts';

describe('coordinates', () => {
  const frame = { left: 2, top: 130.5, scale: 0.5 };
  test('there and back', () => {
    expect(inView(frame, { x: 100, y: 61 })).toEqual({ x: 52, y: 100 });
    expect(onPaper(frame, { x: 52, y: 100 })).toEqual({ x: 100, y: 61 });
    expect(viewTransform(frame)).toBe('matrix(0.5 0 0 -0.5 2 130.5)');
  });
  test('whole millimetres have no minus zero', () => {
    expect(whole({ x: -0.4, y: 12.5 })).toEqual({ x: 0, y: 13 });
  });
  test('the paper holds its edges', () => {
    const paper = { width_mm: 240, height_mm: 160 };
    expect(holds(paper, { x: 240, y: 0 })).toBe(true);
    expect(holds(paper, { x: 240.1, y: 0 })).toBe(false);
    expect(held(paper, { x: 250, y: -3 })).toEqual({ x: 240, y: 0 });
  });
});

describe('one question at a time', () => {
  function recorded(): { readonly sent: [number, string][]; readonly newest: Newest<string> } {
    const sent: [number, string][] = [];
    return { sent, newest: new Newest((ask, question) => sent.push([ask, question])) };
  }
  test('of those that come meanwhile the newest alone is asked', () => {
    const { sent, newest } = recorded();
    for (const question of ['a', 'b', 'c']) newest.ask(question);
    expect(sent).toEqual([[1, 'a']]);
    expect(newest.answered(1)).toBe(true);
    expect(sent).toEqual([
      [1, 'a'],
      [2, 'c'],
    ]);
    expect(newest.answered(2)).toBe(true);
    newest.ask('d');
    expect(sent.at(-1)).toEqual([3, 'd']);
  });
  test('what is dropped is not wanted when it comes, and does not hold up what follows', () => {
    const { sent, newest } = recorded();
    newest.ask('a');
    newest.ask('b');
    newest.drop();
    expect(newest.answered(1)).toBe(false);
    expect(sent.length).toBe(1);
    newest.ask('c');
    expect(newest.answered(2)).toBe(true);
  });
  test('answers to other questions are passed over', () => {
    const { newest } = recorded();
    newest.ask('a');
    expect(newest.answered(7)).toBe(false);
    expect(newest.answered(1)).toBe(true);
  });
});

describe('keys', () => {
  const key = (name: string, more: { shift?: boolean; modified?: boolean } = {}) => ({
    key: name,
    shift: false,
    modified: false,
    ...more,
  });
  test('arrows step by one millimetre, with the shift key by ten; up is up on the paper', () => {
    expect(intentOf(key('ArrowUp'), 'handle')).toEqual({ kind: 'step', by: { x: 0, y: 1 } });
    expect(intentOf(key('ArrowLeft', { shift: true }), 'paper')).toEqual({
      kind: 'step',
      by: { x: -10, y: 0 },
    });
  });
  test('Enter goes to the line of what lies there and adds a probe on the bare paper', () => {
    expect(intentOf(key('Enter'), 'handle')?.kind).toBe('go to its line');
    expect(intentOf(key('Enter'), 'paper')?.kind).toBe('add a probe');
    expect(intentOf(key('P', { shift: true }), 'paper')?.kind).toBe('add a probe');
    expect(intentOf(key('p'), 'handle')).toBeNull();
  });
  test('what is for the editor is left to it', () => {
    expect(intentOf(key('ArrowUp', { modified: true }), 'handle')).toBeNull();
    expect(intentOf(key('Tab'), 'paper')).toBeNull();
  });
});

/** Events one after the other: what has been done, and where it has led. */
function carried(...events: readonly Event[]): { readonly state: Carrying; readonly deeds: readonly Deed[] } {
  let state = nothing;
  const deeds: Deed[] = [];
  for (const event of events) {
    const turn = carry(state, event);
    state = turn.state;
    deeds.push(...turn.deeds);
  }
  return { state, deeds };
}
const grab: Event = { kind: 'grab', handle: 'probe M', at: { x: 10.2, y: 20.4 } };
const point = (x: number, y: number): Event => ({ kind: 'point', at: { x, y } });
const step = (handle: string, x: number, y: number): Event => ({ kind: 'step', handle, by: { x, y } });

describe('what is carried', () => {
  test('a drag is shown by whole millimetres and made once', () => {
    const { state, deeds } = carried(
      grab,
      point(10.5, 20.4),
      point(12.2, 20.1),
      point(12.3, 20.2),
      point(15.2, 18.4),
      { kind: 'release' },
    );
    expect(deeds).toEqual([
      { kind: 'preview', handle: 'probe M', by: { x: 2, y: 0 } },
      { kind: 'preview', handle: 'probe M', by: { x: 5, y: -2 } },
      { kind: 'drop', handle: 'probe M', by: { x: 5, y: -2 } },
    ]);
    expect(state.kind).toBe('dropping');
  });
  test('a press without a move changes nothing', () => {
    expect(carried(grab, { kind: 'release' })).toEqual({ state: nothing, deeds: [{ kind: 'restore' }] });
  });
  test('Escape takes it back, and the release that follows does nothing', () => {
    const { state, deeds } = carried(grab, point(20, 20), { kind: 'escape' }, { kind: 'release' });
    expect(state).toEqual(nothing);
    expect(deeds.map(({ kind }) => kind)).toEqual(['preview', 'restore']);
  });
  test('a burst of steps is one change', () => {
    const { deeds } = carried(step('bar N', 1, 0), step('bar N', 1, 0), step('bar N', 0, 10), {
      kind: 'settle',
    });
    expect(deeds.filter(({ kind }) => kind === 'drop')).toEqual([
      { kind: 'drop', handle: 'bar N', by: { x: 2, y: 10 } },
    ]);
    expect(deeds.filter(({ kind }) => kind === 'wait').length).toBe(3);
    expect(burst_ms).toBe(600);
  });
  test('steps back to where it stood change nothing', () => {
    const { state, deeds } = carried(step('bar N', 1, 0), step('bar N', -1, 0), { kind: 'settle' });
    expect(state).toEqual(nothing);
    expect(deeds.at(-1)).toEqual({ kind: 'restore' });
  });
  test('steps while the text is being changed follow as the next change', () => {
    const { state, deeds } = carried(
      step('bar N', 1, 0),
      { kind: 'settle' },
      step('bar N', 0, 1),
      step('bar N', 0, 1),
      { kind: 'applied', done: true },
    );
    expect(state).toEqual({ kind: 'stepping', handle: 'bar N', by: { x: 0, y: 2 } });
    expect(deeds.at(-2)).toEqual({ kind: 'preview', handle: 'bar N', by: { x: 0, y: 2 } });
  });
  describe('steps that were refused', () => {
    const refusedStep: readonly Event[] = [
      step('bar P', 0, 1),
      { kind: 'settle' },
      { kind: 'applied', done: false },
    ];
    const asked = (...events: readonly Event[]) => carried(...events).deeds.at(-2);

    test('add up, however slowly they come', () => {
      expect(asked(...refusedStep, ...refusedStep, ...refusedStep, step('bar P', 0, 1))).toEqual({
        kind: 'preview',
        handle: 'bar P',
        by: { x: 0, y: 4 },
      });
      const during = [...refusedStep.slice(0, 2), step('bar P', 0, 1), ...refusedStep.slice(2)];
      expect(asked(...during)).toMatchObject({ by: { x: 0, y: 2 } });
    });
    test('are forgotten for another handle, a step back, a drag and Escape', () => {
      expect(asked(...refusedStep, step('probe M', 0, 1))).toMatchObject({ by: { x: 0, y: 1 } });
      expect(asked(...refusedStep, step('bar P', 0, -1))).toMatchObject({ by: { x: 0, y: -1 } });
      for (const end of ['escape', 'settle'] as const)
        expect(asked(...refusedStep, { kind: end }, step('bar P', 0, 1))).toMatchObject({
          by: { x: 0, y: 1 },
        });
      const drag = carried(grab, point(20, 20), { kind: 'release' }, { kind: 'applied', done: false });
      expect(drag.state).toEqual(nothing);
    });
    test('leave the drawing and the slip to what the text says', () => {
      expect(isAtRest(carried(...refusedStep).state)).toBe(true);
      expect(isAtRest(carried(step('bar P', 0, 1)).state)).toBe(false);
    });
  });
  test('another handle ends the burst of the one before', () => {
    const { state, deeds } = carried(step('bar N', 1, 0), step('probe M', 0, 1));
    expect(deeds.filter(({ kind }) => kind === 'drop').length).toBe(1);
    expect(state).toMatchObject({ kind: 'stepping', handle: 'probe M' });
    expect(carried(step('bar N', 1, 0), grab).deeds.at(-1)).toMatchObject({ kind: 'drop', handle: 'bar N' });
  });
  test('nothing is taken up while the text is being changed', () => {
    const dropping = carried(grab, point(20, 20), { kind: 'release' }, grab, point(30, 30), {
      kind: 'escape',
    });
    expect(dropping.state).toMatchObject({ kind: 'dropping', handle: 'probe M' });
    expect(dropping.deeds.length).toBe(2);
  });
});
