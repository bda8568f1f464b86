/** What a block comes to once `like` is carried out. */
import type { MoveStatement, Statement } from '../block/tree.ts';

export interface Inventory {
  /** In the order written, inherited ones first; without `change`, `move`, `without` and `reverse supply`. */
  readonly statements: readonly Statement[];
  /** Electrodes of drawn or several pieces that are moved as a whole. */
  readonly shifts: ReadonlyMap<string, MoveStatement>;
  /** Leads of the supply swapped. */
  readonly reversed: boolean;
  /** Names whose line is left out for a reason already reported. */
  readonly lost: ReadonlySet<string>;
  /** Electrodes whose missing terminal is already reported. */
  readonly unjoined: ReadonlySet<string>;
}

/** What a block inherits that is like none. */
export const nothingGiven: Inventory = {
  statements: [],
  shifts: new Map(),
  reversed: false,
  lost: new Set(),
  unjoined: new Set(),
};
