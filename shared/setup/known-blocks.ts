/**
 * What has been read of the blocks of a text: while somebody types, nearly all of them say what they said, though most have moved. One
 * that says the same is not read again. Nothing that is read differs for it but in time.
 */
import { parseBlock } from '../block/parse.ts';
import type { Block } from '../block/tree.ts';
import type { Excerpt, ExcerptLine } from '../text/excerpt.ts';
import { moved } from '../text/moved.ts';
import type { Inventory } from './inventory.ts';
import type { Setup } from './setup.ts';

/** The meaning of a block, and what others inherit from it. */
export interface Resolved {
  readonly setup: Setup;
  readonly inventory: Inventory;
}

interface Known {
  readonly block: Block;
  /** Of a block whose meaning does not depend on others. */
  resolved: Resolved | null;
  /** The last reading that had it. */
  reading: number;
}

export class KnownBlocks {
  private readonly known = new Map<string, Known>();
  private readonly ofBlock = new WeakMap<Block, Known>();
  private readonly kept: number;
  private reading = 0;

  /** `kept`: how many readings back is remembered; more than one where several texts take turns. */
  constructor(kept = 1) {
    this.kept = kept;
  }

  /** A text is about to be read. */
  begin(): void {
    for (const [key, { reading }] of this.known)
      if (reading <= this.reading - this.kept) this.known.delete(key);
    this.reading++;
  }

  /** What `parseBlock` makes of it. */
  block(excerpt: Excerpt): Block {
    const key = keyOf(excerpt);
    const before = this.known.get(key);
    const known = before === undefined ? null : movedTo(excerpt.span.from, before);
    const now = known ?? { block: parseBlock(excerpt), resolved: null, reading: 0 };
    now.reading = this.reading;
    this.known.set(key, now);
    this.ofBlock.set(now.block, now);
    return now.block;
  }

  /** What `resolve` makes of a block by itself, as the one of that number. */
  resolved(block: Block, number: number, resolve: () => Resolved): Resolved {
    const known = this.ofBlock.get(block);
    if (known?.resolved?.setup.block === number) return known.resolved;
    const resolved = resolve();
    if (known !== undefined) known.resolved = resolved;
    return resolved;
  }
}

function movedTo(from: number, known: Known): Known {
  const by = from - known.block.excerpt.span.from;
  return by === 0 ? known : moved(known, by);
}

/** What an excerpt says, without where it stands. */
function keyOf({ span, head, lines }: Excerpt): string {
  const written = ({ text, at, prefix }: ExcerptLine): readonly unknown[] => [text, at - span.from, prefix];
  return JSON.stringify([span.to - span.from, written(head), ...lines.map(written)]);
}
