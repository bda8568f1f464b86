/**
 * The pupils' view: blanks for what is asked, and what the sheet tells. Made from the sheet, the setups and the finished told parts;
 * nothing here can reach a solution, and no type here holds a solved number.
 */
import type { DrawingPart } from '../../block/tree.ts';
import { outlineScene } from '../../drawing/outline-scene.ts';
import type { Setup } from '../../setup/setup.ts';
import type { BoundInsert, Target } from '../inserts/bound.ts';
import { askedBy, blankFor, freeBlank } from './blanks.ts';
import { figureOf, outlineParts, partsAsked } from './figures.ts';
import { troubleBox } from './stand-ins.ts';
import { blankCells, layoutTable, renderTable } from './table-layout.ts';
import {
  block,
  type Figure,
  type FigurePlan,
  noPrint,
  type Placing,
  type Printed,
  type Told,
  type View,
  words,
} from './view.ts';

export interface PupilsSource {
  readonly bound: readonly BoundInsert[];
  readonly setups: readonly Setup[];
}

export function pupilsView({ bound, setups }: PupilsSource, told: Told): View {
  const { plan } = told;
  return {
    audience: 'pupils',
    insert(number) {
      const asked = bound[number];
      if (asked === undefined) return noPrint;
      return told.inserts.get(number) ?? askedOf(asked, plan);
    },
    block(number) {
      const setup = setups[number];
      if (setup === undefined) return null;
      return told.blocks.get(number) ?? outlineFigure(setup, setup.draw.pupils, plan.ofBlock(number));
    },
  };
}

/** A name that is not known may be that of a setup, which pupils never see. */
function askedOf({ insert, target }: BoundInsert, plan: FigurePlan): Printed {
  if (target === null) return words(troubleBox('?', 'not known'));
  const asked = askedBy(insert.head);
  if (asked !== null) return words(blankFor(asked, insert.bareNumber));
  return blankOf(target, plan.ofInsert(insert.number));
}

function blankOf(target: Target, placing: Placing): Printed {
  switch (target.kind) {
    case 'blank':
      return words(freeBlank(target.unit, target.length_mm));
    case 'readings': {
      const layout = layoutTable(target.rows, target.columns);
      return block(renderTable(layout, blankCells(layout), target.caption));
    }
    case 'drawing': {
      const figure = outlineFigure(target.setup, partsAsked(target.parts, 'pupils'), placing, target.caption);
      return figure === null ? noPrint : { form: 'figure', figure };
    }
    default:
      return noPrint;
  }
}

function outlineFigure(
  setup: Setup,
  parts: readonly DrawingPart[],
  placing: Placing,
  caption: string | null = null,
): Figure | null {
  const outlines = outlineParts(parts);
  if (outlines.length === 0 || setup.paper === null) return null;
  const scene = outlineScene(setup, { parts: outlines, audience: 'pupils', scale: placing.scale });
  return figureOf(scene, placing, { caption, remark: null });
}
