/** Binds the names of inserts to the setups of the sheet. What cannot be bound becomes a visible box, never a gap. */

import type { Point } from '../../field/geometry/outline.ts';
import type { Finding } from '../../findings/finding.ts';
import type { Row, Setup } from '../../setup/setup.ts';
import type { Insert, InsertHead, Reference, Sheet } from '../sheet.ts';
import { bindDrawing, bindLater, bindReadings } from './bind-figures.ts';
import type { BoundInsert, SampleIndex, Target } from './bound.ts';
import { type Found, has, Names, replacing, spotIn, trouble } from './names.ts';
import { isFigure } from './parse-insert.ts';

export interface Binding {
  /** One for every insert of the sheet, in its order. */
  readonly bound: readonly BoundInsert[];
  readonly findings: readonly Finding[];
  /** By block number: places that inserts need beside probes and rows. */
  readonly samples: ReadonlyMap<number, readonly Point[]>;
}

export function bindInserts(sheet: Sheet, setups: readonly Setup[]): Binding {
  const binder = new Binder(new Names(setups));
  const findings: Finding[] = [];
  const bound = sheet.inserts.map((insert): BoundInsert => {
    const target = binder.bind(insert);
    if ('found' in target) return { insert, target: target.found };
    if (target.trouble.finding !== null) findings.push(target.trouble.finding);
    return { insert, target: null, trouble: target.trouble.message };
  });
  return { bound, findings, samples: binder.samples };
}

/** Places of the paper to ask the solution for, beside probes and rows; targets give indices in this list. */
export function wantedSamples(binding: Binding, setup: Setup): readonly Point[] {
  return binding.samples.get(setup.block) ?? [];
}

type Head<K extends InsertHead['kind']> = InsertHead & { readonly kind: K };

class Binder {
  readonly samples = new Map<number, Point[]>();
  private readonly names: Names;

  constructor(names: Names) {
    this.names = names;
  }

  bind({ head, alone, span }: Insert): Found<Target> {
    if (isFigure(head) && !alone) {
      return { trouble: { message: 'A table or figure stands in a paragraph of its own.', finding: null } };
    }
    switch (head.kind) {
      case 'broken':
        return { trouble: { message: head.message, finding: null } };
      case 'reading':
      case 'range':
        return this.reading(head);
      case 'difference':
        return this.difference(head);
      case 'along':
        return this.along(head);
      case 'gradient':
        return this.gradient(head);
      case 'mean strength':
        return this.meanStrength(head);
      case 'current':
        return this.current(head, span);
      case 'resistance':
        return this.resistance(head, span);
      case 'blank':
        return { found: head };
      case 'readings':
        return bindReadings(this.names, head);
      case 'drawing':
        return bindDrawing(this.names, head, span);
      case 'later':
        return bindLater(this.names, head);
    }
  }

  private reading(head: Head<'reading' | 'range'>): Found<Target> {
    const spot = this.names.spot(head.of);
    if ('trouble' in spot) return spot;
    const { kind } = head;
    return { found: kind === 'range' ? { kind, ...spot.found } : { kind, ...spot.found, form: head.form } };
  }

  /** Both names are of one setup: the one that is written, or the only one that has both. */
  private difference({ from, to }: Head<'difference'>): Found<Target> {
    const written = from.setup ?? to.setup;
    const both = this.names.setups.filter(
      (setup) => has(setup, from.name, 'spot') && has(setup, to.name, 'spot'),
    );
    const setup = written ?? (both.length === 1 ? (both[0]?.name ?? null) : null);
    const first = this.names.spot({ ...from, setup: from.setup ?? setup });
    if ('trouble' in first) return first;
    const second = this.names.spot({ ...to, setup: to.setup ?? first.found.setup.name });
    if ('trouble' in second) return second;
    if (first.found.setup !== second.found.setup) {
      return trouble('insert-kind', {
        span: to.span,
        message: 'A p.d. lies between two places of one setup.',
      });
    }
    return {
      found: { kind: 'difference', setup: first.found.setup, from: first.found.spot, to: second.found.spot },
    };
  }

  private along({ row: name, distance_mm }: Head<'along'>): Found<Target> {
    const row = this.names.row(name);
    if ('trouble' in row) return row;
    const beyond = outside(row.found.row, distance_mm, name);
    if (beyond !== null) return beyond;
    const { setup } = row.found;
    const sample = this.sample(setup, row.found.row, distance_mm);
    return { found: { kind: 'along', setup, row: row.found.row, sample } };
  }

  private gradient({ row: name }: Head<'gradient'>): Found<Target> {
    const row = this.names.row(name);
    if ('trouble' in row) return row;
    if (row.found.row.points.length >= 2) return { found: { kind: 'gradient', ...row.found } };
    const message = `${name.name} has one reading; a gradient needs two.`;
    return trouble('insert-kind', { span: name.span, message });
  }

  private meanStrength({ row: name, from_mm, to_mm }: Head<'mean strength'>): Found<Target> {
    const found = this.names.row(name);
    if ('trouble' in found) return found;
    const { setup, row } = found.found;
    const beyond = outside(row, from_mm, name) ?? outside(row, to_mm, name);
    if (beyond !== null) return beyond;
    const from = this.sample(setup, row, from_mm);
    const to = this.sample(setup, row, to_mm);
    const distance_mm = Math.abs(to_mm - from_mm);
    return { found: { kind: 'mean strength', setup, row, from, to, distance_mm } };
  }

  private current({ of }: Head<'current'>, span: Insert['span']): Found<Target> {
    const ofSetup =
      of === null || (of.setup === null && this.names.setups.some(({ name }) => name === of.name));
    if (ofSetup) return this.whole('current', of, span);
    const owner = this.names.owner(of, 'electrode');
    if ('trouble' in owner) return owner;
    const spot = spotIn(owner.found, of.name);
    return { found: { kind: 'current', setup: owner.found, electrode: spot?.index ?? null } };
  }

  private resistance({ of }: Head<'resistance'>, span: Insert['span']): Found<Target> {
    if (of === null || of.setup === null) return this.whole('resistance', of, span);
    return trouble('insert-kind', {
      span: of.span,
      message: `A resistance belongs to a whole setup: \`${of.setup}.resistance\`.`,
      fixes: [{ ...replacing(of.span, of.setup), certain: true }],
    });
  }

  private whole(kind: 'current' | 'resistance', of: Reference | null, span: Insert['span']): Found<Target> {
    // Between the braces: `?{current}`.
    const word = { from: span.from + 2, to: span.to - 1 };
    const setup =
      of === null
        ? this.names.onlySetup(word, (name) => `${name}.${kind}`)
        : this.names.setup(of.name, of.span);
    if ('trouble' in setup) return setup;
    return {
      found:
        kind === 'current' ? { kind, setup: setup.found, electrode: null } : { kind, setup: setup.found },
    };
  }

  private sample(setup: Setup, row: Row, distance_mm: number): SampleIndex {
    const places = this.samples.get(setup.block) ?? [];
    this.samples.set(setup.block, places);
    const { start, direction } = row;
    places.push({ x: start.x + direction.x * distance_mm, y: start.y + direction.y * distance_mm });
    return places.length - 1;
  }
}

/** A row with a direction only has no end. */
function outside(row: Row, distance_mm: number, { span, name }: Reference): Found<never> | null {
  const { start, end, direction } = row;
  const length = end === null ? null : (end.x - start.x) * direction.x + (end.y - start.y) * direction.y;
  // A thousandth of a millimetre is no slip of the pen but of arithmetic.
  if (distance_mm >= 0 && (length === null || distance_mm <= length + 1e-3)) return null;
  const message =
    length === null || distance_mm < 0
      ? `Distances along ${name} are counted from its first point on.`
      : `${name} is ${Number(length.toFixed(1))} mm long.`;
  return trouble('insert-beyond', { span, message });
}
