/**
 * Where figures stand on a screen: a frame for each, from the size of its paper alone, so that it is known before anything is drawn and
 * stays while anything but the paper changes. Blocks and drawings are counted apart from other inserts, so that prose changes no id.
 */
import type { Paper, Setup } from '../../setup/setup.ts';
import type { BoundInsert } from '../inserts/bound.ts';
import { metaOf } from '../markdown/tokens.ts';
import type { FigurePlan, Placing } from '../print/view.ts';
import type { Sheet } from '../sheet.ts';

export interface Meant {
  readonly sheet: Sheet;
  /** By number of the insert. */
  readonly bound: readonly BoundInsert[];
  /** By number of the block. */
  readonly setups: readonly Setup[];
}

/** Largest figure, and room between figures side by side, mm. */
const [widest_mm, highest_mm, gutter_mm] = [140, 115, 6];
/** Figures that would come out smaller than this side by side stand in fewer columns. */
const leastBeside = 0.25;
/** Board, leads and key round the paper, mm; small drawings have smaller ones. */
const usualRim = { side: 14, above: 18, below: 23 };
const smallRim = { side: 7.5, above: 18, below: 28.5 };
const smallBelow = 0.4;

export function screenPlan({ sheet, bound, setups }: Meant): FigurePlan {
  const inserts = new Map<number, Placing>();
  const ids = new Map(
    bound
      .filter(({ insert }) => insert.head.kind === 'drawing')
      .map(({ insert }, i) => [insert.number, `papervolt-drawing-${i + 1}`]),
  );
  for (const group of groupsIn(sheet)) {
    const drawings = group.flatMap((number) => drawingAt(bound[number]));
    const scale = commonScale(drawings, group.length);
    for (const { number, paper } of drawings)
      inserts.set(number, placing(ids.get(number) ?? '', paper, scale));
  }
  const blocks = setups.map(({ paper }, i) => {
    const id = `papervolt-block-${i + 1}`;
    return paper === null ? noPaper(id) : placing(id, paper, scaleIn(paper, widest_mm));
  });
  return {
    ofInsert: (number) => inserts.get(number) ?? noPaper(ids.get(number) ?? ''),
    ofBlock: (number) => blocks[number] ?? noPaper(''),
  };
}

interface Drawing {
  readonly number: number;
  readonly paper: Paper;
  readonly half: boolean;
}

function groupsIn({ tokens }: Sheet): readonly (readonly number[])[] {
  return tokens.flatMap((token) => {
    const meta = metaOf(token);
    return meta?.kind === 'figures' && token.nesting === 1 ? [meta.inserts] : [];
  });
}

function drawingAt(bound: BoundInsert | undefined): readonly Drawing[] {
  const target = bound?.target ?? null;
  if (bound === undefined || target?.kind !== 'drawing' || target.setup.paper === null) return [];
  return [{ number: bound.insert.number, paper: target.setup.paper, half: target.size === 'half' }];
}

/** One scale for all figures of a paragraph. `places`: tables among them count. */
function commonScale(drawings: readonly Drawing[], places: number): number {
  for (let columns = places; columns > 1; columns--) {
    const scale = scaleInColumns(drawings, columns);
    if (scale >= leastBeside) return scale;
  }
  return scaleInColumns(drawings, 1);
}

function scaleInColumns(drawings: readonly Drawing[], columns: number): number {
  return Math.min(
    1,
    ...drawings.map(({ paper, half }) => scaleIn(paper, shareOf(half ? Math.max(2, columns) : columns))),
  );
}

const shareOf = (columns: number): number => (widest_mm - gutter_mm * (columns - 1)) / columns;

/** The largest scale at which paper and rim have room, to a hundredth; a paper of many metres gets whatever it takes. */
function scaleIn({ width_mm, height_mm }: Paper, width: number): number {
  const roomy = ({ side, above, below }: typeof usualRim): number =>
    Math.min(1, (width - 2 * side) / width_mm, (highest_mm - above - below) / height_mm);
  const usual = roomy(usualRim);
  const scale = usual >= smallBelow ? usual : Math.min(smallBelow - 0.01, roomy(smallRim));
  return scale > 0.05 ? Math.floor(scale * 100) / 100 : scale;
}

function placing(id: string, { width_mm, height_mm }: Paper, scale: number): Placing {
  const { side, above, below } = scale < smallBelow ? smallRim : usualRim;
  const screen = {
    left: -side,
    bottom: -below,
    width: rounded(width_mm * scale + 2 * side),
    height: rounded(height_mm * scale + above + below),
  };
  return { id, scale, limit_mm: screen.width, screen };
}

const rounded = (length: number): number => Math.round(length * 100) / 100;

const noPaper = (id: string): Placing => ({ id, scale: 1, limit_mm: widest_mm });
