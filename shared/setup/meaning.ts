/** The meaning of one block: its lines, as varied, read in the order in which they need each other. */
import type { Block, Statement } from '../block/tree.ts';
import { connectElectrodes } from './connections.ts';
import { readElectrodes } from './electrodes.ts';
import { readEquipotentials } from './equipotentials.ts';
import type { Inventory } from './inventory.ts';
import { bindNames, type Names } from './names.ts';
import { hasResistance, missingLine, only, readDraw, readMeter, readPaper, readSupply } from './once-only.ts';
import { readHoles, readSlits, readUnsolved } from './patches.ts';
import { type Places, placePieces } from './places.ts';
import { checkRow, type Readable, readProbe } from './probes.ts';
import { paperOutline } from './problem.ts';
import { nameGiven } from './references.ts';
import type { Report } from './report.ts';
import { type RowTools, readRow } from './rows.ts';
import type { Electrode, Meter, Paper, Setup, Supply } from './setup.ts';
import { readTerminals, type Terminals } from './terminals.ts';
import type { Writing } from './writing.ts';

export interface MeaningTools {
  readonly block: Block;
  readonly name: string;
  readonly number: number;
  readonly report: Report;
  readonly writing: Writing;
}

export function meaningOf(inventory: Inventory, tools: MeaningTools): Omit<Setup, 'findings'> {
  const { statements } = inventory;
  const { report, block } = tools;
  const names = bindNames(inventory, report);
  const bench = readBench(inventory, names, tools);
  const { paper, supply, meter } = bench;
  const centre = paper === null ? null : { x: paper.width_mm / 2, y: paper.height_mm / 2 };
  const terminals = readTerminals(
    names,
    { reversed: inventory.reversed, excused: inventory.unjoined },
    report,
  );
  const { refused } = terminals;
  const places = placePieces({ names, refused, shifts: inventory.shifts, centre, report });
  const metal = readMetal(statements, { ...tools, names, places, terminals, bench });
  const { electrodes, holes, slits, unsolved } = metal;
  const readings = placeReadings({ paper, holes, electrodes }, { names, places, report });
  const lines = only('equipotentials', statements, report);
  const unplaced = electrodes.length < names.electrodes.size || inventory.lost.size > 0;
  const driven = closedCircuit(electrodes, supply, statements, { ...tools, unplaced });
  return {
    name: tools.name,
    block: tools.number,
    span: block.excerpt.span,
    paper,
    supply,
    meter,
    copper_mm: only('copper', statements, report)?.thickness.value ?? null,
    electrodes,
    holes,
    slits,
    unsolved,
    ...readings,
    lost: lostNames(inventory, [...electrodes, ...readings.probes, ...readings.rows]),
    equipotentials: readEquipotentials(lines, supply, electrodes, report),
    fieldLines: only('field-lines', statements, report)?.count.value ?? null,
    draw: readDraw(statements, report),
    solvable: paper !== null && driven && !metal.shorted && unsolved.length === 0 && metal.conductors >= 2,
  };
}

/** Names that lines of the block give and that have come to nothing. */
function lostNames(
  { statements, lost }: Inventory,
  present: readonly { readonly name: string }[],
): readonly string[] {
  const given = statements.flatMap((s) => (s.kind === 'broken' ? s.name : nameGiven(s))?.text ?? []);
  const here = new Set(present.map(({ name }) => name));
  return [...new Set([...given, ...lost])].filter((name) => !here.has(name));
}

interface MetalTools extends MeaningTools {
  readonly names: Names;
  readonly places: Places;
  readonly terminals: Terminals;
  readonly bench: Bench;
}

/** Electrodes as conductors, and what is cut out of the paper around them. */
function readMetal(statements: readonly Statement[], tools: MetalTools) {
  const { names, places, terminals, bench, report, writing } = tools;
  const { paper, supply } = bench;
  const drawn = readElectrodes(statements, { names, places, terminals, paper, report });
  const patches = { places, paper, names, report, writing };
  const holes = readHoles(statements, patches);
  const slits = readSlits(statements, patches);
  const unsolved = readUnsolved(statements, drawn, patches);
  if (paper === null) return { holes, slits, unsolved, electrodes: drawn, conductors: 0, shorted: false };
  const sheet = { paper: paperOutline(paper), paperSpan: paper.span, holes, slits };
  return { holes, slits, unsolved, ...connectElectrodes(drawn, sheet, supply, report) };
}

function placeReadings(readable: Readable, tools: RowTools): Pick<Setup, 'rows' | 'probes'> {
  const { names, report } = tools;
  const rows = [...names.rows.values()].flatMap((row) => readRow(row, tools) ?? []);
  for (const row of rows) checkRow(row, readable, report);
  const probes = [...names.probes.values()].flatMap((probe) => readProbe(probe, rows, readable, tools) ?? []);
  return { rows, probes };
}

interface Bench {
  readonly paper: Paper | null;
  readonly supply: Supply | null;
  readonly meter: Meter | null;
}

function readBench(
  { statements, reversed }: Inventory,
  names: Names,
  { report, block, writing }: MeaningTools,
): Bench {
  const paperLine = only('paper', statements, report);
  const paper = paperLine === null ? null : readPaper(paperLine, report);
  if (paperLine === null) {
    missingLine('paper', 'paper 240 mm × 160 mm, 5 kΩ per square', block, statements, { report, writing });
  }
  const supplyLine = only('supply', statements, report);
  const supply = supplyLine === null ? null : readSupply(supplyLine, paper, reversed, report);
  const meterLine = only('meter', statements, report);
  const lead = meterLine?.blackLead ?? null;
  const blackLead =
    lead !== null && names.electrode(lead, 'The black lead stands on an electrode.') ? lead.text : null;
  const meter = meterLine === null ? null : readMeter(meterLine, paper, blackLead, report);
  for (const clip of statements) {
    if (clip.kind === 'clip') hasResistance(paper, clip, 'A clip with a resistance', report);
  }
  return { paper, supply, meter };
}

/** True where two different potentials are fixed, so that a current flows; otherwise an error, unless a missing terminal, place or line already has one. */
function closedCircuit(
  electrodes: readonly Electrode[],
  supply: Supply | null,
  statements: readonly Statement[],
  { report, block, writing, unplaced }: MeaningTools & { readonly unplaced: boolean },
): boolean {
  const live = electrodes.filter(({ conductor }) => conductor !== null);
  const kinds = live.flatMap(({ connection }) => (connection === null ? [] : [connection]));
  const has = (kind: 'positive' | 'negative'): boolean => kinds.some((c) => c.kind === kind);
  const held = new Set(kinds.flatMap((c) => (c.kind === 'held' ? [c.potential_V] : [])));
  if (supply === null && (has('positive') || has('negative') || held.size < 2)) {
    missingLine('supply', 'supply cell 1.5 V', block, statements, { report, writing });
    return false;
  }
  const fixed = held.size + (has('positive') ? 1 : 0) + (has('negative') && !held.has(0) ? 1 : 0);
  if (fixed >= 2) return true;
  const excused =
    unplaced || electrodes.some(({ connection, conductor }) => connection === null || conductor === null);
  const broken = statements.some((s) => s.kind === 'broken');
  if (!excused && !broken) {
    const lacking = has('positive') ? 'negative' : has('negative') ? 'positive' : 'positive or negative';
    report('circuit-open', {
      span: block.head.span,
      message:
        electrodes.length === 0
          ? 'No electrode stands on this paper.'
          : `No electrode is ${lacking}: no current flows.`,
    });
  }
  return false;
}
