/** The scale and the id of every figure in one reader's print. Whether a solution is drawn is the affair of whoever draws. */
import type { Audience, DrawingPart } from '../../block/tree.ts';
import { outlineScene } from '../../drawing/outline-scene.ts';
import type { Scene } from '../../drawing/scene.ts';
import type { Setup } from '../../setup/setup.ts';
import type { BoundInsert } from '../inserts/bound.ts';
import { metaOf } from '../markdown/tokens.ts';
import type { Sheet } from '../sheet.ts';
import { needsSolution, outlineParts, partsAsked } from './figures.ts';
import { column_mm, gutter_mm, tallest_mm } from './stylesheet.ts';
import type { FigurePlan, Placing } from './view.ts';

export interface Planned {
  readonly sheet: Sheet;
  readonly bound: readonly BoundInsert[];
  readonly setups: readonly Setup[];
}

/** Draws a setup at a scale, to see how wide it comes out. */
export type Draw = (setup: Setup, parts: readonly DrawingPart[], scale: number) => Scene;

/** Figures that stand side by side get one scale; `half size` takes half the column. */
export function planFigures(planned: Planned, audience: Audience, draw: Draw): FigurePlan {
  const places = new Map<number, Omit<Placing, 'id'>>();
  for (const group of figureGroups(planned.sheet)) {
    const wanted = group.flatMap((number) => wantedBy(planned.bound[number], audience, group.length));
    for (const [i, placing] of sideBySide(wanted, draw).entries())
      places.set(wanted[i]?.number ?? -1, placing);
  }
  const whole = { scale: 1, limit_mm: column_mm };
  return {
    ofInsert: (number) => ({ id: `insert-${number + 1}`, ...(places.get(number) ?? whole) }),
    ofBlock(number) {
      const setup = planned.setups[number];
      const figure = setup && { number, setup, parts: setup.draw[audience], limit_mm: column_mm };
      return { id: `block-${number + 1}`, ...whole, ...(figure && { scale: fittingScale(figure) }) };
    },
  };
}

interface Wanted {
  readonly number: number;
  readonly setup: Setup;
  /** As this reader gets them. */
  readonly parts: readonly DrawingPart[];
  readonly limit_mm: number;
}

function figureGroups({ tokens }: Sheet): readonly (readonly number[])[] {
  return tokens.flatMap((token) => {
    const meta = metaOf(token);
    return meta?.kind === 'figures' && token.nesting === 1 ? [meta.inserts] : [];
  });
}

function wantedBy(bound: BoundInsert | undefined, audience: Audience, places: number): readonly Wanted[] {
  const target = bound?.target ?? null;
  if (bound === undefined || target?.kind !== 'drawing') return [];
  const { number, told } = bound.insert;
  const asked = partsAsked(target.parts, audience);
  const parts = audience === 'pupils' && !told ? outlineParts(asked) : asked;
  const share_mm = (column_mm - gutter_mm * (places - 1)) / places;
  const limit_mm = target.size === 'half' ? Math.min(share_mm, (column_mm - gutter_mm) / 2) : share_mm;
  return [{ number, setup: target.setup, parts, limit_mm }];
}

/** The largest scale that suits all, and one reduction for all where one of them is still too wide. */
function sideBySide(wanted: readonly Wanted[], draw: Draw): readonly Omit<Placing, 'id'>[] {
  const scale = Math.min(1, ...wanted.map(fittingScale));
  if (wanted.length < 2) return wanted.map(({ limit_mm }) => ({ scale, limit_mm }));
  const widths = wanted.map(({ setup, parts }) => draw(setup, parts, scale).width);
  const reduction = Math.min(1, ...wanted.map(({ limit_mm }, i) => limit_mm / (widths[i] ?? limit_mm)));
  return widths.map((width) => ({ scale, limit_mm: width * reduction }));
}

/** Kept free beside and above a drawing for the values of equipotentials, mm in all. */
const valueRoom_mm = 12;

/** In a share of the column narrower than this, letters and margins shrink to three quarters. */
const narrow_mm = 120;
/** Below this scale a drawing has no room for its letters: they shrink instead. */
const least = 0.2;

/** Letters and margins do not shrink with the drawing, so the scale that fits is found from the drawing itself, twice. */
function fittingScale({ setup, parts, limit_mm }: Wanted): number {
  const paper = setup.paper;
  if (paper === null) return 1;
  const room_mm = parts.some(needsSolution) ? valueRoom_mm : 0;
  const width_mm = limit_mm < narrow_mm ? limit_mm / 0.75 : limit_mm;
  let scale = 1;
  for (let round = 0; round < 2; round++) {
    const scene = outlineScene(setup, {
      parts: ['electrodes', 'probes', 'dimensions'],
      audience: 'pupils',
      scale,
    });
    const beside_mm = scene.width - paper.width_mm * scale + room_mm;
    const above_mm = scene.height - paper.height_mm * scale + room_mm;
    const fit = Math.min((width_mm - beside_mm) / paper.width_mm, (tallest_mm - above_mm) / paper.height_mm);
    scale = Math.max(least, Math.min(1, Math.floor(fit * 100) / 100));
  }
  return scale;
}
