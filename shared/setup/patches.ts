/** Holes, slits, and patches of lifted metal or paint, placed on the paper. */
import type { HoleStatement, LiftedStatement, Patch, SlitStatement, Statement } from '../block/tree.ts';
import type { Outline, Point, Segment } from '../field/geometry/outline.ts';
import { surveyProblem } from '../field/geometry/survey.ts';
import type { Names } from './names.ts';
import { hasResistance } from './once-only.ts';
import type { Places } from './places.ts';
import { boxCentre, circle, distance, placedOutline, rectangle, unitVector } from './plane.ts';
import { paperOutline } from './problem.ts';
import { type Report, rewrite } from './report.ts';
import type { Electrode, Hole, Paper, Unsolved } from './setup.ts';
import { simplePolygon } from './shapes/outline.ts';
import { written } from './shown.ts';
import type { Writing } from './writing.ts';

export interface PatchTools {
  readonly places: Places;
  readonly paper: Paper | null;
  readonly names: Names;
  readonly report: Report;
  readonly writing: Writing;
}

export function readHoles(statements: readonly Statement[], tools: PatchTools): readonly Hole[] {
  return statements.flatMap((statement) => {
    if (statement.kind !== 'hole') return [];
    const outline = holeOutline(statement, tools);
    if (outline === null) return [];
    if (misses(outline, tools.paper)) {
      tools.report('patch-misses', { span: statement.span, message: 'This hole lies beside the paper.' });
      return [];
    }
    return [{ span: statement.span, outline }];
  });
}

function holeOutline(statement: HoleStatement, tools: PatchTools): Outline | null {
  switch (statement.form) {
    case 'box':
      return patchOutline(statement, tools);
    case 'disc': {
      const centre = tools.places.point(statement.at);
      return centre === null ? null : circle(centre, statement.diameter.value / 2);
    }
    case 'outline':
      return simplePolygon(statement.corners, statement, tools.report);
  }
}

function patchOutline({ size, at, turned }: Patch, tools: PatchTools): Outline | null {
  const centre = tools.places.point(at);
  if (centre === null) return null;
  return placedOutline(
    rectangle(size.width.value, size.height.value),
    unitVector(turned?.value ?? 0),
    centre,
  );
}

/** Nothing of the outline lies on the paper. */
function misses(outline: Outline, paper: Paper | null): boolean {
  return paper !== null && !overlap(paperOutline(paper), [outline], paper);
}

export function readSlits(
  statements: readonly Statement[],
  tools: PatchTools,
): readonly (Segment & { span: SlitStatement['span'] })[] {
  return statements.flatMap((statement) => {
    if (statement.kind !== 'slit') return [];
    const from = tools.places.point(statement.start);
    const to = tools.places.point(statement.end);
    if (from === null || to === null) return [];
    if (distance(from, to) < 1e-6) {
      tools.report('patch-misses', { span: statement.span, message: 'This slit has no length.' });
      return [];
    }
    if (slitMisses(from, to, tools.paper)) {
      tools.report('patch-misses', { span: statement.span, message: 'This slit lies beside the paper.' });
      return [];
    }
    return [{ span: statement.span, from, to }];
  });
}

/** Both ends lie beyond one side of the paper, or the line through them passes all its corners on one side. */
function slitMisses(from: Point, to: Point, paper: Paper | null): boolean {
  if (paper === null) return false;
  const { width_mm: w, height_mm: h } = paper;
  const beyond = (a: number, b: number, size: number): boolean =>
    Math.max(a, b) <= 0 || Math.min(a, b) >= size;
  if (beyond(from.x, to.x, w) || beyond(from.y, to.y, h)) return true;
  const side = (x: number, y: number): number =>
    Math.sign((to.x - from.x) * (y - from.y) - (to.y - from.y) * (x - from.x));
  const sides = [side(0, 0), side(w, 0), side(w, h), side(0, h)];
  return sides.every((s) => s >= 0) || sides.every((s) => s <= 0);
}

/** What is described and drawn but not solved yet, each with its one finding. */
export function readUnsolved(
  statements: readonly Statement[],
  electrodes: readonly Electrode[],
  tools: PatchTools,
): readonly Unsolved[] {
  const touched = new Set<string>();
  return statements.flatMap((statement): readonly Unsolved[] => {
    const { kind, span } = statement;
    if (kind !== 'contact' && kind !== 'lifted' && kind !== 'painted') return [];
    if (kind !== 'painted' && !tools.names.electrode(statement.name, `Only an electrode can have this.`))
      return [];
    if (kind !== 'lifted' && !hasResistance(tools.paper, statement, `\`${kind}\``, tools.report)) return [];
    if (kind === 'contact') {
      const { text } = statement.name;
      if (touched.has(text)) {
        tools.report('line-twice', { span, message: `A second contact for ${text}: the first stands.` });
        return [];
      }
      touched.add(text);
    }
    const outline = kind === 'contact' ? null : patchOutline(statement, tools);
    if (kind !== 'contact' && outline === null) return [];
    if (kind === 'lifted' && outline !== null && liftsNothing(statement, outline, electrodes, tools))
      return [];
    tools.report('solved-later', {
      span,
      message: `${saying[kind]} not solved yet: this setup is drawn without a solution.`,
    });
    return [{ kind, span, outline }];
  });
}

const saying = {
  contact: 'A resistance of the touch between metal and paper is',
  lifted: 'Metal that is lifted off the paper is',
  painted: 'A painted patch is',
} as const;

/** A warning where no metal lies in the patch: it then changes nothing. */
function liftsNothing(
  statement: LiftedStatement,
  outline: Outline,
  electrodes: readonly Electrode[],
  { paper, report, writing, places }: PatchTools,
): boolean {
  const electrode = electrodes.find(({ name }) => name === statement.name.text);
  if (electrode === undefined || paper === null) return false;
  if (
    overlap(
      outline,
      electrode.pieces.map(({ geometry }) => geometry.outer),
      paper,
    )
  )
    return false;
  const box = places.electrodes.get(electrode.name)?.box;
  const { at } = statement;
  const x_mm = box === undefined ? null : boxCentre(box).x;
  report('patch-misses', {
    span: statement.span,
    message: `No part of ${electrode.name} lies there.`,
    fixes:
      x_mm === null || at.kind !== 'coordinates'
        ? []
        : [rewrite(at.x.span, coordinateLike(writing.text(at.x.span), at.x.value, x_mm))],
  });
  return true;
}

/** A coordinate written like an old one: `50` in a pair with one unit, `5 cm` on its own. */
function coordinateLike(old: string, old_mm: number, new_mm: number): string {
  if (/\p{L}/u.test(old)) return written(new_mm, 'length');
  const scale = Number(old) === 0 ? 1 : old_mm / Number(old);
  return String(Number((new_mm / (Number.isFinite(scale) ? scale : 1)).toPrecision(12)));
}

function overlap(a: Outline, others: readonly Outline[], paper: Paper): boolean {
  const solid = (outer: Outline) => ({ outer, hollows: [] });
  const survey = surveyProblem({
    paper: paperOutline(paper),
    holes: [],
    slits: [],
    conductors: [[solid(a)], others.map(solid)],
    sheet_ohm: [1, 1],
  });
  return survey.contacts.some(({ gap_mm }) => gap_mm === 0);
}
