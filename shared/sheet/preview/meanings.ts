/**
 * What sheets mean, for a preview that renders the same text, or one with other prose, again and again. Setups are kept by the text of
 * all blocks: where only prose has changed they are the same, but for their places in the file, of which a preview knows nothing.
 */
import { resolveSetups } from '../../setup/resolve.ts';
import type { Setup } from '../../setup/setup.ts';
import { bindInserts } from '../inserts/bind.ts';
import type { Sheet } from '../sheet.ts';
import type { Meant } from './screen-plan.ts';
import { type Wishes, wishesOf } from './wishes.ts';

/** Texts whose setups are kept: those of a few previews side by side. */
const mostTexts = 8;

export class Meanings {
  private readonly meant = new WeakMap<Sheet, Meant>();
  private readonly wished = new WeakMap<Sheet, Wishes>();
  /** By the text of all blocks, in the order of use. */
  private readonly setups = new Map<string, readonly Setup[]>();

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
    const setups = this.setupsOf(sheet);
    return { sheet, setups, bound: bindInserts(sheet, setups).bound };
  }

  private setupsOf({ blocks }: Sheet): readonly Setup[] {
    const text = JSON.stringify(
      blocks.map(({ block: { excerpt } }) => [excerpt.head.text, ...excerpt.lines.map((line) => line.text)]),
    );
    const setups = this.setups.get(text) ?? resolveSetups(blocks.map(({ block }) => block));
    this.setups.delete(text);
    this.setups.set(text, setups);
    const [oldest] = this.setups.keys();
    if (this.setups.size > mostTexts && oldest !== undefined) this.setups.delete(oldest);
    return setups;
  }
}
