/** The lines that stand once in a block: paper, supply, meter, copper, equipotentials, field lines; and the parts to draw. */
import { nearest } from '../block/nearest.ts';
import {
  type Audience,
  type Block,
  type DrawingPart,
  type DrawStatement,
  drawingParts,
  type MeterStatement,
  type PaperStatement,
  type Statement,
  type SupplyStatement,
} from '../block/tree.ts';
import type { Span } from '../text/span.ts';
import { fixBy, type Report } from './report.ts';
import type { Meter, Paper, Supply } from './setup.ts';
import type { Writing } from './writing.ts';

type Kind = Statement['kind'];

/** The first statement of a kind; each further one is an error. */
export function only<K extends Kind>(
  kind: K,
  statements: readonly Statement[],
  report: Report,
): Extract<Statement, { kind: K }> | null {
  const all = statements.filter((s): s is Extract<Statement, { kind: K }> => s.kind === kind);
  const [first, ...others] = all;
  for (const other of others) {
    report('line-twice', {
      span: other.span,
      message: `A second line for ${kind}: a block has one, and the first stands.`,
      related: first === undefined ? [] : [{ span: first.span, message: 'The first stands here.' }],
    });
  }
  return first ?? null;
}

const leastPaper_mm = 5;
const greatestPaper_mm = 3000;

export function readPaper(statement: PaperStatement, report: Report): Paper | null {
  const { size, resistance, span } = statement;
  const sides = [size.width, size.height];
  const wrong = sides.find(({ value }) => !(value >= leastPaper_mm && value <= greatestPaper_mm));
  if (wrong !== undefined) {
    return report('paper-size', {
      span: wrong.span,
      message: `Paper ${wrong.value} mm in size? From ${leastPaper_mm} mm to ${greatestPaper_mm / 1000} m can be solved.`,
    });
  }
  return {
    span,
    width_mm: size.width.value,
    height_mm: size.height.value,
    resistance_ohm: resistance === null ? null : [resistance.x.value, resistance.y.value],
  };
}

/** `internal` needs a sheet resistance: without one it is an error and counts as none. */
export function readSupply(
  statement: SupplyStatement,
  paper: Paper | null,
  reversed: boolean,
  report: Report,
): Supply {
  const { internal, cells } = statement;
  const known = internal === null || hasResistance(paper, internal, 'An internal resistance', report);
  return {
    span: statement.span,
    source: statement.source,
    cells,
    emf_V: statement.emf.value * cells,
    internal_ohm: internal === null || !known ? 0 : internal.value * cells,
    limit_A: statement.limit?.value ?? null,
    ac: statement.ac,
    chemistry: statement.chemistry?.word ?? null,
    cellSize: statement.cellSize?.text ?? null,
    reversed,
  };
}

/** The diameter of a probe tip that is not said, mm. */
const usualTip_mm = 1;

export function readMeter(
  statement: MeterStatement,
  paper: Paper | null,
  blackLead: string | null,
  report: Report,
): Meter | null {
  if (!hasResistance(paper, statement, 'A meter', report)) return null;
  return {
    span: statement.span,
    resistance_ohm: statement.resistance.value,
    resolution_V: statement.resolution?.value ?? null,
    range_V: statement.range?.value ?? null,
    tip_mm: statement.tip?.value ?? usualTip_mm,
    blackLead,
  };
}

/** True where the sheet resistance is known, or the paper itself already has an error. */
export function hasResistance(
  paper: Paper | null,
  at: { readonly span: Span },
  what: string,
  report: Report,
): boolean {
  if (paper === null || paper.resistance_ohm !== null) return true;
  const end = { from: paper.span.to, to: paper.span.to };
  report('sheet-resistance-missing', {
    span: at.span,
    message: `${what} needs the sheet resistance of the paper.`,
    hints: ['Say it on the line of the paper, such as 5 kΩ per square.'],
    fixes: [fixBy('Add 5 kΩ per square to the paper', [{ span: end, text: ', 5 kΩ per square' }])],
  });
  return false;
}

/** An error where a line is missing altogether; one that is there but broken has its own finding. */
export function missingLine(
  word: 'paper' | 'supply',
  example: string,
  block: Block,
  statements: readonly Statement[],
  tools: { readonly report: Report; readonly writing: Writing },
): void {
  const written = (s: Statement): boolean => {
    const first = tools.writing.firstWord(s.span).toLowerCase();
    return first.startsWith(word) || nearest(first, [word]).length > 0;
  };
  const broken = statements.some((s) => s.kind === 'broken' && (s.word === word || written(s)));
  if (broken) return;
  tools.report(word === 'paper' ? 'paper-missing' : 'supply-missing', {
    span: block.head.span,
    message: `This block has no ${word}.`,
    fixes: [fixBy(`Add ${example}`, [tools.writing.lastLine(block, example)])],
  });
}

const audiences: readonly Audience[] = ['pupils', 'teachers', 'technicians'];

/**
 * Parts of the block's own drawing: a line with `for` stands instead of the common one for that audience. What only a solution can fill
 * reaches pupils by `for pupils` alone, never by the common line.
 */
export function readDraw(
  statements: readonly Statement[],
  report: Report,
): Readonly<Record<Audience, readonly DrawingPart[]>> {
  const lines = statements.filter((s): s is DrawStatement => s.kind === 'draw');
  const partsFor = (audience: Audience | null): readonly DrawingPart[] | null => {
    const [first, ...others] = lines.filter((line) => line.audience === audience);
    for (const other of others) {
      report('line-twice', {
        span: other.span,
        message: 'A second draw line for the same readers: the first stands.',
      });
    }
    return first?.parts ?? null;
  };
  const common = partsFor(null);
  const commonFor = (audience: Audience): readonly DrawingPart[] | undefined =>
    audience === 'pupils' ? common?.filter((part) => !answerParts.includes(part)) : (common ?? undefined);
  const parts = (audience: Audience): readonly DrawingPart[] =>
    ordered(partsFor(audience) ?? commonFor(audience) ?? usualParts(audience));
  const [pupils, teachers, technicians] = audiences.map(parts);
  return { pupils: pupils ?? [], teachers: teachers ?? [], technicians: technicians ?? [] };
}

const answerParts: readonly DrawingPart[] = ['equipotentials', 'field-lines', 'values'];

const ordered = (parts: readonly DrawingPart[]): readonly DrawingPart[] =>
  drawingParts.filter((part) => parts.includes(part));

function usualParts(audience: Audience): readonly DrawingPart[] {
  const outlines: readonly DrawingPart[] = ['electrodes', 'probes', 'dimensions'];
  return audience === 'teachers' ? [...outlines, ...answerParts] : outlines;
}
