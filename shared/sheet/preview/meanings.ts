/** What sheets mean, for a preview that renders the same text, or one that says nearly the same, again and again. */
import type { KnownBlocks } from '../../setup/known-blocks.ts';
import { resolveSetups } from '../../setup/resolve.ts';
import { bindInserts } from '../inserts/bind.ts';
import type { Sheet } from '../sheet.ts';
import type { Meant } from './screen-plan.ts';
import { type Wishes, wishesOf } from './wishes.ts';

export class Meanings {
  private readonly meant = new WeakMap<Sheet, Meant>();
  private readonly wished = new WeakMap<Sheet, Wishes>();
  private readonly known: KnownBlocks;

  /** `known`: where the sheets had their blocks from. */
  constructor(known: KnownBlocks) {
    this.known = known;
  }

  of(sheet: Sheet): Meant {
    const known = this.meant.get(sheet) ?? this.read(sheet);
    this.meant.set(sheet, known);
    return known;
  }

  wishes(sheet: Sheet, audience: Wishes['audience']): Wishes {
    const last = this.wished.get(sheet);
    const wishes = last?.audience === audience ? last : wishesOf(this.of(sheet), audience);
    this.wished.set(sheet, wishes);
    return wishes;
  }

  private read(sheet: Sheet): Meant {
    const blocks = sheet.blocks.map(({ block }) => block);
    const setups = resolveSetups(blocks, this.known);
    return { sheet, setups, bound: bindInserts(sheet, setups).bound };
  }
}
