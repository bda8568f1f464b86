/**
 * What a reader's preview needs to have made ready elsewhere: drawings, and for those who get them tables and values. Each has a key by
 * its content: the meaning of its setups, what is asked of them, where it stands, who reads it. All else is rendered on the spot.
 */
import type { Audience, DrawingPart } from '../../block/tree.ts';
import { meaningKey } from '../../setup/meaning-key.ts';
import type { Setup } from '../../setup/setup.ts';
import { fingerprint } from '../../text/fingerprint.ts';
import type { BoundInsert, Target } from '../inserts/bound.ts';
import { needsSolution, outlineParts, partsAsked } from '../print/figures.ts';
import type { FigurePlan, Placing } from '../print/view.ts';
import type { Readers } from '../sheet.ts';
import type { Wish } from './lookup.ts';
import { type Meant, screenPlan } from './screen-plan.ts';

/** One part that is to be made ready; plain data. */
export interface Wanted extends Wish {
  readonly of: 'insert' | 'block';
  /** Of the insert or the block. */
  readonly number: number;
  readonly form: 'figure' | 'table' | 'value';
  /** Blocks whose setups it is made from. */
  readonly setups: readonly number[];
  /** Whether their solutions are needed as well. */
  readonly solved: boolean;
  /** Of a figure. */
  readonly placing: Placing;
}

export interface Wishes {
  readonly audience: Audience;
  readonly all: readonly Wanted[];
  readonly plan: FigurePlan;
  insert(number: number): Wanted | null;
  block(number: number): Wanted | null;
}

export function wishesOf(meant: Meant, audience: Audience): Wishes {
  const plan = screenPlan(meant);
  const maker = new Maker(audience, plan);
  const blocks = meant.sheet.blocks.map(({ readers }, number) => {
    const setup = meant.setups[number];
    return setup === undefined ? null : maker.block(setup, readers);
  });
  const inserts = meant.bound.map((bound) => maker.insert(bound));
  return {
    audience,
    all: [...blocks, ...inserts].filter((wanted) => wanted !== null),
    plan,
    insert: (number) => inserts[number] ?? null,
    block: (number) => blocks[number] ?? null,
  };
}

/** What is wanted, before it has its key and its place. */
interface Draft extends Omit<Wanted, 'key' | 'place'> {
  readonly content: readonly unknown[];
  /** What its place is known by. */
  readonly name: string;
}

class Maker {
  private readonly audience: Audience;
  private readonly plan: FigurePlan;
  private readonly places = new Map<string, number>();

  constructor(audience: Audience, plan: FigurePlan) {
    this.audience = audience;
    this.plan = plan;
  }

  block(setup: Setup, readers: Readers): Wanted | null {
    if (!readers.includes(this.audience)) return null;
    const parts = setup.draw[this.audience];
    const placing = this.plan.ofBlock(setup.block);
    return this.figure({ of: 'block', number: setup.block }, { setup, parts, placing });
  }

  insert({ insert, target }: BoundInsert): Wanted | null {
    const { audience } = this;
    if (target === null || !insert.readers.includes(audience)) return null;
    const { number, written } = insert;
    const solved = audience !== 'pupils' || insert.told;
    if (target.kind === 'drawing') {
      const asked = partsAsked(target.parts, audience);
      const parts = solved ? asked : outlineParts(asked);
      const drawing = { setup: target.setup, parts, placing: this.plan.ofInsert(number) };
      return this.figure({ of: 'insert', number }, drawing);
    }
    const setups = setupsOf(target);
    if (!solved || setups.length === 0) return null;
    return this.finished({
      of: 'insert',
      number,
      form: target.kind === 'readings' ? 'table' : 'value',
      setups: setups.map(({ block }) => block),
      solved,
      size: null,
      placing: this.plan.ofInsert(number),
      content: [written, insert.bareNumber, insert.columnUnit, setups.map(meaningKey)],
      name: written,
    });
  }

  private figure(
    which: Pick<Wanted, 'of' | 'number'>,
    { setup, parts, placing }: DrawingWish,
  ): Wanted | null {
    if (parts.length === 0) return null;
    const { screen } = placing;
    return this.finished({
      ...which,
      form: 'figure',
      setups: [setup.block],
      // Without paper nothing is drawn: it is then said why.
      solved: screen === undefined || parts.some(needsSolution),
      size: screen === undefined ? null : `${screen.width} × ${screen.height}`,
      placing,
      content: [placing, parts, meaningKey(setup)],
      // Other parts are another drawing: none stands for the other.
      name: `${which.of} ${setup.name} ${parts.join(' ')}`,
    });
  }

  private finished({ content, name, ...wanted }: Draft): Wanted {
    const place = `${this.audience} ${name}`;
    const count = (this.places.get(place) ?? 0) + 1;
    this.places.set(place, count);
    const key = fingerprint(JSON.stringify([this.audience, wanted.form, content]));
    return { ...wanted, key, place: `${place} ${count}` };
  }
}

interface DrawingWish {
  readonly setup: Setup;
  readonly parts: readonly DrawingPart[];
  readonly placing: Placing;
}

function setupsOf(target: Target): readonly Setup[] {
  if (target.kind === 'readings') return [...new Set(target.rows.map(({ setup }) => setup))];
  return 'setup' in target ? [target.setup] : [];
}
