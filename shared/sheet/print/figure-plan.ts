/**
 * The scale and the id of every figure of a sheet, from its text and setups alone: so neither tells anything of the field, and each
 * reader's figure has the same scale.
 */
import { outlineScene } from '../../drawing/outline-scene.ts';
import type { Setup } from '../../setup/setup.ts';
import type { BoundInsert } from '../inserts/bound.ts';
import { metaOf } from '../markdown/tokens.ts';
import type { Sheet } from '../sheet.ts';
import { column_mm, tallest_mm } from './stylesheet.ts';

export interface FigurePlan {
  ofInsert(number: number): Placing;
  ofBlock(number: number): Placing;
}

export interface Placing {
  /** Unique in the page. */
  readonly id: string;
  /** Printed mm for one mm of the bench, at most 1. */
  readonly scale: number;
}

/** Between figures side by side. */
export const gutter_mm = 6;

/** Figures that stand side by side get one scale; `half size` takes half the column. */
export function planFigures(
  sheet: Sheet,
  bound: readonly BoundInsert[],
  setups: readonly Setup[],
): FigurePlan {
  const scales = new Map<number, number>();
  for (const group of figureGroups(sheet)) {
    const drawn = group.flatMap((number) => wantedBy(bound[number]));
    const scale = commonScale(drawn, group.length);
    for (const number of group) scales.set(number, scale);
  }
  return {
    ofInsert: (number) => ({ id: `insert-${number + 1}`, scale: scales.get(number) ?? 1 }),
    ofBlock(number) {
      const setup = setups[number];
      const scale = setup === undefined ? 1 : commonScale([{ setup, size: null }], 1);
      return { id: `block-${number + 1}`, scale };
    },
  };
}

interface Wanted {
  readonly setup: Setup;
  readonly size: 'half' | 'full' | null;
}

function figureGroups({ tokens }: Sheet): readonly (readonly number[])[] {
  return tokens.flatMap((token) => {
    const meta = metaOf(token);
    return meta?.kind === 'figures' && token.nesting === 1 ? [meta.inserts] : [];
  });
}

function wantedBy(bound: BoundInsert | undefined): Wanted[] {
  const target = bound?.target ?? null;
  return target?.kind === 'drawing' ? [{ setup: target.setup, size: target.size }] : [];
}

function commonScale(drawn: readonly Wanted[], places: number): number {
  const share_mm = (column_mm - gutter_mm * (places - 1)) / Math.max(1, places);
  return Math.min(
    1,
    ...drawn.map(({ setup, size }) =>
      fittingScale(setup, size === 'half' ? Math.min(share_mm, column_mm / 2) : share_mm),
    ),
  );
}

/** Kept free for the values of equipotentials that end at the board's sides, mm in all. */
const valueRoom_mm = 12;

/** Letters and margins do not shrink with the drawing, so the scale that fits is found from the drawing at full size. */
function fittingScale(setup: Setup, limit_mm: number): number {
  const paper = setup.paper;
  if (paper === null) return 1;
  const scene = outlineScene(setup, { parts: ['electrodes', 'probes', 'dimensions'], audience: 'pupils' });
  const besides = scene.width - paper.width_mm + valueRoom_mm;
  const above = scene.height - paper.height_mm + valueRoom_mm;
  const fit = Math.min((limit_mm - besides) / paper.width_mm, (tallest_mm - above) / paper.height_mm);
  return Math.max(0.05, Math.min(1, Math.floor(fit * 100) / 100));
}
