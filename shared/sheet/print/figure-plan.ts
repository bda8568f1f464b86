/**
 * The scale and the id of every figure in one reader's print, from the sheet's text and its setups alone: neither tells anything of the
 * field.
 */
import type { Audience, DrawingPart } from '../../block/tree.ts';
import { outlineScene } from '../../drawing/outline-scene.ts';
import type { Setup } from '../../setup/setup.ts';
import type { BoundInsert } from '../inserts/bound.ts';
import { metaOf } from '../markdown/tokens.ts';
import type { Sheet } from '../sheet.ts';
import { needsSolution, partsAsked } from './figures.ts';
import { column_mm, gutter_mm, tallest_mm } from './stylesheet.ts';
import type { FigurePlan, Placing } from './view.ts';

export interface Planned {
  readonly sheet: Sheet;
  readonly bound: readonly BoundInsert[];
  readonly setups: readonly Setup[];
}

/** Figures that stand side by side get one scale; `half size` takes half the column. */
export function planFigures({ sheet, bound, setups }: Planned, audience: Audience): FigurePlan {
  const places = new Map<number, Omit<Placing, 'id'>>();
  for (const group of figureGroups(sheet)) {
    const share_mm = (column_mm - gutter_mm * (group.length - 1)) / group.length;
    const wanted = group.flatMap((number) => wantedBy(bound[number], audience, share_mm));
    const scale = Math.min(1, ...wanted.map(fittingScale));
    const limit_mm = Math.min(share_mm, ...wanted.map((figure) => figure.limit_mm));
    for (const number of group) places.set(number, { scale, limit_mm });
  }
  return {
    ofInsert: (number) => ({
      id: `insert-${number + 1}`,
      ...(places.get(number) ?? { scale: 1, limit_mm: column_mm }),
    }),
    ofBlock(number) {
      const setup = setups[number];
      const figure = setup && {
        setup,
        limit_mm: column_mm,
        solved: setup.draw[audience].some(needsSolution),
      };
      return {
        id: `block-${number + 1}`,
        scale: figure ? fittingScale(figure) : 1,
        limit_mm: column_mm,
      };
    },
  };
}

interface Wanted {
  readonly setup: Setup;
  readonly limit_mm: number;
  /** Drawn with equipotentials, which may carry values beside the board. */
  readonly solved: boolean;
}

function figureGroups({ tokens }: Sheet): readonly (readonly number[])[] {
  return tokens.flatMap((token) => {
    const meta = metaOf(token);
    return meta?.kind === 'figures' && token.nesting === 1 ? [meta.inserts] : [];
  });
}

function wantedBy(bound: BoundInsert | undefined, audience: Audience, share_mm: number): readonly Wanted[] {
  const target = bound?.target ?? null;
  if (target?.kind !== 'drawing') return [];
  const parts: readonly DrawingPart[] = partsAsked(target.parts, audience);
  const shown = audience !== 'pupils' || bound?.insert.told === true;
  const limit_mm = target.size === 'half' ? Math.min(share_mm, (column_mm - gutter_mm) / 2) : share_mm;
  return [{ setup: target.setup, limit_mm, solved: shown && parts.some(needsSolution) }];
}

/** Kept free beside and above a drawing for the values of equipotentials, mm in all. */
const valueRoom_mm = 12;

/** Letters and margins do not shrink with the drawing, so the scale that fits is found from the drawing itself, twice. */
function fittingScale({ setup, limit_mm, solved }: Wanted): number {
  const paper = setup.paper;
  if (paper === null) return 1;
  const room_mm = solved ? valueRoom_mm : 0;
  let scale = 1;
  for (let round = 0; round < 2; round++) {
    const scene = outlineScene(setup, {
      parts: ['electrodes', 'probes', 'dimensions'],
      audience: 'pupils',
      scale,
    });
    const beside_mm = scene.width - paper.width_mm * scale + room_mm;
    const above_mm = scene.height - paper.height_mm * scale + room_mm;
    const fit = Math.min((limit_mm - beside_mm) / paper.width_mm, (tallest_mm - above_mm) / paper.height_mm);
    scale = Math.max(0.1, Math.min(1, Math.floor(fit * 100) / 100));
  }
  return scale;
}
