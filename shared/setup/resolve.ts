/** From the blocks of a sheet to its setups: names of setups, `like`, and the meaning of each. */
import type { Block } from '../block/tree.ts';
import { reservedSetupNames } from '../block/words.ts';
import type { Point } from '../field/geometry/outline.ts';
import type { Finding } from '../findings/finding.ts';
import { inheritedFindings } from './inherited.ts';
import { nothingGiven } from './inventory.ts';
import { KnownBlocks, type Resolved } from './known-blocks.ts';
import { meaningOf } from './meaning.ts';
import { freeName, suggestNames } from './names.ts';
import { boxCentre } from './plane.ts';
import { fixBy, type Report, reportInto, rewrite } from './report.ts';
import type { Setup } from './setup.ts';
import { varied } from './variation.ts';
import { type Writing, writingOf } from './writing.ts';

/** One setup a block, in their order. `known`: where the blocks were read, if they were read before. */
export function resolveSetups(blocks: readonly Block[], known = new KnownBlocks()): readonly Setup[] {
  const resolution = new Resolution(blocks, known);
  return blocks.map((_, i) => resolution.setup(i).setup);
}

const setupName = ({ head }: Block): string => head.name?.text ?? 'setup';

/** A name that no setup may have, for which the block has its finding already. */
const isReserved = ({ head }: Block): boolean =>
  head.name !== null && reservedSetupNames.includes(head.name.text);

class Resolution {
  private readonly blocks: readonly Block[];
  private readonly known: KnownBlocks;
  private readonly writing: Writing;
  private readonly done = new Map<number, Resolved>();
  private readonly begun: number[] = [];
  /** Block of each setup name, the first of that name. */
  private readonly byName = new Map<string, number>();

  constructor(blocks: readonly Block[], known: KnownBlocks) {
    this.blocks = blocks;
    this.known = known;
    this.writing = writingOf(blocks);
    for (const [i, block] of blocks.entries()) {
      if (!this.byName.has(setupName(block)) && !isReserved(block)) this.byName.set(setupName(block), i);
    }
  }

  setup(index: number): Resolved {
    const known = this.done.get(index);
    if (known !== undefined) return known;
    const block = this.blocks[index];
    if (block === undefined) throw new Error(`no block ${index}`);
    const byItself = block.head.like === null && this.byName.get(setupName(block)) === index;
    const resolved = byItself
      ? this.known.resolved(block, index, () => this.resolve(index, block))
      : this.resolve(index, block);
    this.done.set(index, resolved);
    return resolved;
  }

  private resolve(index: number, block: Block): Resolved {
    const findings: Finding[] = [];
    const report = this.mending(reportInto(findings));
    this.checkName(index, block, report);
    this.begun.push(index);
    const base = this.base(index, block, report);
    this.begun.pop();
    // A block whose setup to be like is missing says only that: the rest would follow from it.
    const baseless = base === null && block.head.like !== null ? [...findings] : null;
    const resolved = this.read(index, block, base, report);
    const { statements } = resolved.inventory;
    const variation = { block, base: base?.setup ?? null, statements, writing: this.writing };
    const said = inheritedFindings(distinct(baseless ?? findings), variation);
    return { ...resolved, setup: { ...resolved.setup, findings: said } };
  }

  private read(index: number, block: Block, base: Resolved | null, report: Report): Resolved {
    const { writing } = this;
    const placeOf = (name: string): Point | null => placeIn(base?.setup ?? null, name);
    const inherited = base?.inventory ?? (block.head.like === null ? null : nothingGiven);
    const inventory = varied({ block, base: inherited, placeOf, report, writing });
    const meaning = meaningOf(inventory, { block, report, writing, name: setupName(block), number: index });
    return { setup: { ...meaning, findings: [] }, inventory };
  }

  /** A second line where the first stands can be taken out: nothing else changes. */
  private mending(report: Report): Report {
    return (code, parts) => {
      if (code !== 'line-twice') return report(code, parts);
      return report(code, {
        ...parts,
        fixes: [fixBy('Take this line out', [this.writing.without(parts.span)])],
      });
    };
  }

  private checkName(index: number, block: Block, report: Report): void {
    const name = setupName(block);
    const other = this.byName.get(name);
    if (other === index || isReserved(block)) return;
    const given = block.head.name;
    const first = other === undefined ? undefined : this.blocks[other]?.head;
    const free = freeName(name, new Set(this.blocks.map(setupName)));
    report('setup-name-twice', {
      span: given?.span ?? block.head.span,
      message:
        given === null
          ? 'A second block without a name: give it one.'
          : `There is already a setup called ${name}.`,
      fixes: given === null ? [] : [rewrite(given.span, free)],
      related:
        first === undefined
          ? []
          : [{ span: first.name?.span ?? first.span, message: 'The first block of that name.' }],
    });
  }

  /** The setup that the block is like; null, with a finding where it has none to be like. */
  private base(index: number, { head }: Block, report: Report): Resolved | null {
    if (head.like === null) return null;
    const found = this.byName.get(head.like.text);
    if (found === undefined) {
      const others = [...this.byName.keys()].filter((name) => this.byName.get(name) !== index);
      return report('like-unknown', {
        span: head.like.span,
        message: `There is no setup called ${head.like.text}.`,
        ...suggestNames(head.like, others),
      });
    }
    if (!this.begun.includes(found)) return this.setup(found);
    const circle = this.begun.slice(this.begun.indexOf(found)).flatMap((i) => this.blocks[i] ?? []);
    const names = circle.map(
      (block, i) => `${setupName(block)} is like ${setupName(circle[(i + 1) % circle.length] ?? block)}`,
    );
    return report('like-circular', { span: head.like.span, message: `${names.join(', ')}.` });
  }
}

function placeIn(setup: Setup | null, name: string): Point | null {
  const probe = setup?.probes.find((p) => p.name === name);
  if (probe !== undefined) return probe.at;
  const electrode = setup?.electrodes.find((e) => e.name === name);
  return electrode === undefined ? null : boxCentre(electrode.box);
}

/** One finding said twice about one place is said once. */
function distinct(findings: readonly Finding[]): readonly Finding[] {
  const seen = new Set<string>();
  return findings.filter(({ code, span, message }) => {
    const key = `${code} ${span.from} ${span.to} ${message}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}
