/** The drawing of a setup for an editor: all that is known of it, small, and the same in words. */
import { type DrawingPart, drawingParts } from '../block/tree.ts';
import type { Draft } from '../checks/examine.ts';
import { outlineScene } from '../drawing/outline-scene.ts';
import { solvedScene } from '../drawing/solved-scene.ts';
import { renderSvg } from '../drawing/svg.ts';
import { veiled } from '../drawing/veil.ts';
import type { FieldTrouble } from '../field/field.ts';
import type { SolvedSetup } from '../setup/readings.ts';
import type { Setup } from '../setup/setup.ts';
import { troubleFinding } from '../setup/trouble.ts';

export interface EditorDrawing {
  /** An SVG document. */
  readonly svg: string;
  readonly title: string;
  readonly description: string;
}

/** A drawing as it is shown. */
export interface ShownDrawing extends EditorDrawing {
  /** Why there is no solution; the drawing is then pale and that of the last setup that had one, or it is of the outlines alone. */
  readonly message: string | null;
}

/** Largest extent of the paper in the drawing, mm; letters keep their size. */
const widest_mm = 120;
const highest_mm = 70;

/** What would crowd a small drawing. */
const leftOut: readonly DrawingPart[] = ['ruling', 'circuit', 'dimensions'];
/** What a drawing that has grown too long does without, one after the other. */
const dispensable: readonly DrawingPart[] = ['field-lines', 'equipotentials', 'values', 'probes'];

/** Length of an SVG document, in UTF-16 units, that still fits a hover as base64: 4 signs for 3 bytes, of which few signs need two. */
const longest = 60_000;

/** Null for a setup without paper, and for one whose outlines alone are too long. Without a solution the outlines alone. */
export function editorDrawing(setup: Setup, solved: SolvedSetup | null): EditorDrawing | null {
  const drawn = (less: number): EditorDrawing | null => {
    const without = [...leftOut, ...dispensable.slice(0, less)];
    const parts = drawingParts.filter((part) => !without.includes(part));
    return drawnWith(setup, solved, parts);
  };
  const whole = drawn(0);
  if (whole === null || fits(whole)) return whole;
  // What takes long to draw is mostly hopeless: then that is known after two drawings.
  const barest = drawn(dispensable.length);
  if (barest === null || !fits(barest)) return null;
  for (let less = 1; less < dispensable.length; less++) {
    const leaner = drawn(less);
    if (leaner !== null && fits(leaner)) return leaner;
  }
  return barest;
}

const fits = ({ svg }: EditorDrawing): boolean => svg.length <= longest;

function drawnWith(
  setup: Setup,
  solved: SolvedSetup | null,
  parts: readonly DrawingPart[],
): EditorDrawing | null {
  if (setup.paper === null) return null;
  const { width_mm, height_mm } = setup.paper;
  const scale = Math.min(1, widest_mm / width_mm, highest_mm / height_mm);
  const look = { parts, audience: 'teachers' as const, scale };
  const scene = solved === null ? outlineScene(setup, look) : solvedScene(setup, solved, look);
  return {
    svg: renderSvg(scene, { id: 'setup', backed: true }),
    title: scene.title,
    description: scene.description,
  };
}

/** The last drawing that a block had a solution for, below which stands why it has none now. */
export function staleDrawing(last: EditorDrawing, message: string): ShownDrawing {
  return { ...last, svg: veiled(last.svg), message };
}

/** Why a setup has no solution, in one or two sentences: the first of its errors. */
export function whyUnsolved({ sheet, setups }: Draft, block: number, trouble: FieldTrouble | null): string {
  const setup = setups[block];
  if (setup !== undefined && trouble !== null) return troubleFinding(setup, trouble).message;
  const findings = [...(setup?.findings ?? []), ...(sheet.blocks[block]?.block.findings ?? [])];
  const errors = findings
    .filter(({ severity }) => severity === 'error' || severity === 'stop')
    .sort((a, b) => a.span.from - b.span.from);
  return errors[0]?.message ?? 'This setup is not solved.';
}
