/**
 * What is being carried over the paper, by pointer or by arrow keys. Each event gives the next state and what is to be done: a pure
 * table, so that undo steps can be reasoned about. A drag ends in one change of the text, and so does a burst of arrow keys.
 */
import { minus, type Point, plus, whole } from './coordinates.ts';

export type Carrying =
  | { readonly kind: 'nothing' }
  /** `from`: where the pointer took hold, mm. */
  | { readonly kind: 'dragging'; readonly handle: string; readonly from: Point; readonly by: Point }
  | { readonly kind: 'stepping'; readonly handle: string; readonly by: Point }
  /** The text is being changed; `stepped`: by arrow keys, so far; `next`: steps made meanwhile. */
  | { readonly kind: 'dropping'; readonly handle: string; readonly stepped: Point; readonly next: Point }
  /** Steps that were refused: what stands in line with something else leaves it by several of them at once, not by one. */
  | { readonly kind: 'held back'; readonly handle: string; readonly by: Point };

export type Event =
  | { readonly kind: 'grab'; readonly handle: string; readonly at: Point }
  | { readonly kind: 'point'; readonly at: Point }
  | { readonly kind: 'release' }
  | { readonly kind: 'step'; readonly handle: string; readonly by: Point }
  /** No further step has come for a while, or the handle has lost the focus. */
  | { readonly kind: 'settle' }
  | { readonly kind: 'escape' }
  /** The text has been changed, or could not be. */
  | { readonly kind: 'applied'; readonly done: boolean };

export type Deed =
  /** Show what it would look like. */
  | { readonly kind: 'preview'; readonly handle: string; readonly by: Point }
  /** Make it so in the text. */
  | { readonly kind: 'drop'; readonly handle: string; readonly by: Point }
  /** Show what the text says. */
  | { readonly kind: 'restore' }
  /** Send `settle` when no step comes for `burst_ms`. */
  | { readonly kind: 'wait' };

/** Steps that follow each other within this time are one change of the text. */
export const burst_ms = 600;

export interface Turn {
  readonly state: Carrying;
  readonly deeds: readonly Deed[];
}

export const nothing: Carrying = { kind: 'nothing' };

/** True where what is shown is what the text says. */
export const isAtRest = ({ kind }: Carrying): boolean => kind === 'nothing' || kind === 'held back';

const nowhere: Point = { x: 0, y: 0 };

export function carry(state: Carrying, event: Event): Turn {
  switch (event.kind) {
    case 'grab':
      return grabbed(state, event.handle, event.at);
    case 'point':
      return pointed(state, event.at);
    case 'step':
      return stepped(state, event.handle, event.by);
    case 'release':
      return state.kind === 'dragging' ? dropped(state, nowhere) : stay(state);
    case 'settle':
      return settled(state);
    case 'escape':
      return state.kind === 'nothing' || state.kind === 'dropping'
        ? stay(state)
        : { state: nothing, deeds: [{ kind: 'restore' }] };
    case 'applied':
      return applied(state, event.done);
  }
}

const stay = (state: Carrying): Turn => ({ state, deeds: [] });
const still = ({ x, y }: Point): boolean => x === 0 && y === 0;

function grabbed(state: Carrying, handle: string, at: Point): Turn {
  if (state.kind === 'dropping' || state.kind === 'dragging') return stay(state);
  const before = state.kind === 'stepping' ? dropped(state, state.by).deeds : [];
  return { state: { kind: 'dragging', handle, from: at, by: nowhere }, deeds: before };
}

/** In whole millimetres. */
function pointed(state: Carrying, at: Point): Turn {
  if (state.kind !== 'dragging') return stay(state);
  const by = whole(minus(at, state.from));
  if (by.x === state.by.x && by.y === state.by.y) return stay(state);
  return { state: { ...state, by }, deeds: [{ kind: 'preview', handle: state.handle, by }] };
}

function stepped(state: Carrying, handle: string, by: Point): Turn {
  switch (state.kind) {
    case 'dragging':
      return stay(state);
    case 'dropping':
      return state.handle === handle ? stay({ ...state, next: plus(state.next, by) }) : stay(state);
    case 'nothing':
      return stepping(handle, by, []);
    case 'held back':
      return stepping(
        handle,
        state.handle === handle && isOnward(state.by, by) ? plus(state.by, by) : by,
        [],
      );
    case 'stepping':
      return state.handle === handle
        ? stepping(handle, plus(state.by, by), [])
        : stepping(handle, by, dropped(state, state.by).deeds);
  }
}

const stepping = (handle: string, by: Point, before: readonly Deed[]): Turn => ({
  state: { kind: 'stepping', handle, by },
  deeds: [...before, { kind: 'preview', handle, by }, { kind: 'wait' }],
});

/** A step back from where the way was barred is meant as it is. */
const isOnward = (before: Point, by: Point): boolean => before.x * by.x + before.y * by.y > 0;

function settled(state: Carrying): Turn {
  if (state.kind === 'held back') return stay(nothing);
  return state.kind === 'stepping' ? dropped(state, state.by) : stay(state);
}

function dropped({ handle, by }: { readonly handle: string; readonly by: Point }, byKeys: Point): Turn {
  if (still(by)) return { state: nothing, deeds: [{ kind: 'restore' }] };
  return {
    state: { kind: 'dropping', handle, stepped: byKeys, next: nowhere },
    deeds: [{ kind: 'drop', handle, by }],
  };
}

function applied(state: Carrying, done: boolean): Turn {
  if (state.kind !== 'dropping') return stay(state);
  const { handle, stepped: before, next } = state;
  if (!still(next)) return stepping(handle, !done && isOnward(before, next) ? plus(before, next) : next, []);
  return stay(done || still(before) ? nothing : { kind: 'held back', handle, by: before });
}
