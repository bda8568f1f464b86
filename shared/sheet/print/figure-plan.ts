/** The scale and the id of every figure in one reader's print. Whether a solution is drawn is the affair of whoever draws. */
import type { Audience, DrawingPart } from '../../block/tree.ts';
import { outlineScene } from '../../drawing/outline-scene.ts';
import type { Scene } from '../../drawing/scene.ts';
import type { Setup } from '../../setup/setup.ts';
import type { BoundInsert } from '../inserts/bound.ts';
import { metaOf } from '../markdown/tokens.ts';
import type { Sheet } from '../sheet.ts';
import { outlineParts, partsAsked } from './figures.ts';
import { column_mm, gutter_mm, tallest_mm } from './stylesheet.ts';
import type { FigurePlan, Placing } from './view.ts';

export interface Planned {
  readonly sheet: Sheet;
  readonly bound: readonly BoundInsert[];
  readonly setups: readonly Setup[];
}

/** Draws a setup at a scale, to see how wide it comes out. */
export type Draw = (setup: Setup, parts: readonly DrawingPart[], scale: number) => Scene;

/** Figures of one paragraph get one scale; `half size` takes half the column. */
export function planFigures(planned: Planned, audience: Audience, draw: Draw): FigurePlan {
  const places = new Map<number, Omit<Placing, 'id'>>();
  for (const group of figureGroups(planned.sheet)) {
    const wanted = group.flatMap((number) => wantedBy(planned.bound[number], audience));
    for (const [i, placing] of together(wanted, group.length, draw).entries())
      places.set(wanted[i]?.number ?? -1, placing);
  }
  const whole = { scale: 1, limit_mm: column_mm };
  return {
    ofInsert: (number) => ({ id: `insert-${number + 1}`, ...(places.get(number) ?? whole) }),
    ofBlock(number) {
      const setup = planned.setups[number];
      const placing = setup && {
        scale: fittingScale(setup, partsOf(setup), { width_mm: column_mm, height_mm: tallest_mm }),
        limit_mm: column_mm,
      };
      return { id: `block-${number + 1}`, ...(placing ?? whole) };
    },
  };
}

interface Wanted {
  readonly number: number;
  readonly setup: Setup;
  /** As this reader gets them. */
  readonly parts: readonly DrawingPart[];
  readonly half: boolean;
}

function figureGroups({ tokens }: Sheet): readonly (readonly number[])[] {
  return tokens.flatMap((token) => {
    const meta = metaOf(token);
    return meta?.kind === 'figures' && token.nesting === 1 ? [meta.inserts] : [];
  });
}

function wantedBy(bound: BoundInsert | undefined, audience: Audience): readonly Wanted[] {
  const target = bound?.target ?? null;
  if (bound === undefined || target?.kind !== 'drawing') return [];
  const { number, told } = bound.insert;
  const asked = partsAsked(target.parts, audience);
  const parts = audience === 'pupils' && !told ? outlineParts(asked) : asked;
  return [{ number, setup: target.setup, parts, half: target.size === 'half' }];
}

interface Room {
  readonly width_mm: number;
  readonly height_mm: number;
}

/** Of two figures that stand below each other on one page. */
const halfPage_mm = 112;

/** Figures that would come out smaller than this side by side stand in fewer columns, at last one below the other. */
const leastBeside = 0.25;

/** One scale for all, with one reduction for all where one of them is still too wide. `places`: tables among them count. */
function together(wanted: readonly Wanted[], places: number, draw: Draw): readonly Omit<Placing, 'id'>[] {
  for (let columns = places; columns >= 1; columns--) {
    const limits = wanted.map(({ half }) => {
      const share_mm = shareOf(columns);
      return half ? Math.min(share_mm, shareOf(2)) : share_mm;
    });
    const height_mm = columns < places ? halfPage_mm : tallest_mm;
    const scale = Math.min(
      1,
      ...wanted.map(({ setup, parts }, i) =>
        fittingScale(setup, outlineParts(parts), { width_mm: limits[i] ?? column_mm, height_mm }),
      ),
    );
    const widths = wanted.map(({ setup, parts }) => draw(setup, parts, scale).width);
    const reduction = Math.min(1, ...limits.map((limit_mm, i) => limit_mm / (widths[i] ?? limit_mm)));
    if (scale * reduction >= leastBeside || columns === 1)
      return widths.map((width) => ({ scale, limit_mm: width * reduction }));
  }
  return [];
}

const shareOf = (columns: number): number => (column_mm - gutter_mm * (columns - 1)) / columns;

/** What the block's own drawing shows to anyone: all readers get one scale, so that the teachers' copy lies on the pupils'. */
function partsOf({ draw }: Setup): readonly DrawingPart[] {
  return outlineParts([...new Set([...draw.pupils, ...draw.teachers, ...draw.technicians])]);
}

/** In a share of the column narrower than this, letters and margins shrink to three quarters. */
const narrow_mm = 120;
/** Below this scale a drawing has no room for its letters: they shrink instead. */
const least = 0.2;

/** Letters and margins do not shrink with the drawing, so the scale that fits is found from the drawing itself, in three rounds. */
function fittingScale(setup: Setup, parts: readonly DrawingPart[], room: Room): number {
  const paper = setup.paper;
  if (paper === null) return 1;
  const letters = room.width_mm < narrow_mm ? 0.75 : 1;
  let scale = 1;
  for (let round = 0; round < 3; round++) {
    const scene = outlineScene(setup, { parts, audience: 'technicians', scale });
    const beside_mm = scene.width - paper.width_mm * scale;
    const above_mm = scene.height - paper.height_mm * scale;
    const fit = Math.min(
      (room.width_mm / letters - beside_mm) / paper.width_mm,
      (room.height_mm / letters - above_mm) / paper.height_mm,
    );
    scale = Math.max(least, Math.min(1, Math.floor(fit * 100) / 100));
  }
  return scale;
}
