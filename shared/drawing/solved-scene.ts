/** The drawing of a solved setup: the same frame to the millimetre, with equipotentials, field lines and values. */
import type { SolvedSetup } from '../setup/readings.ts';
import type { Setup } from '../setup/setup.ts';
import { composed, framing, type LayerName, lettering, naming } from './compose.ts';
import { describeSetup, solvedTitleOf } from './describe.ts';
import { describeSolution } from './describe-solution.ts';
import { type Desk, deskOf } from './desk.ts';
import { key } from './key.ts';
import {
  barbs,
  carbonDots,
  equipotentials,
  fieldLines,
  keepLines,
  lineValues,
  probeReadings,
} from './lines.ts';
import { type Look, pageOf } from './page.ts';
import type { Item, Scene } from './scene.ts';

interface SolvedPart {
  readonly layer: LayerName;
  readonly draw: (desk: Desk, solved: SolvedSetup) => Item[];
}

/** In the order in which they take their room. */
const order: readonly SolvedPart[] = [
  ...framing,
  { layer: 'equipotentials', draw: equipotentials },
  { layer: 'field-lines', draw: fieldLines },
  { layer: 'barbs', draw: barbs },
  { layer: 'values', draw: lineValues },
  ...naming,
  { layer: 'readings', draw: probeReadings },
  ...lettering,
  { layer: 'carbon-dots', draw: carbonDots },
];

export function solvedScene(setup: Setup, solved: SolvedSetup, look: Look): Scene {
  const desk = deskOf(pageOf(setup, look));
  keepLines(desk, solved);
  const drawn = order.map(({ layer, draw }) => ({ layer, items: draw(desk, solved) }));
  const strip = key(desk.page, desk.board, {
    equipotentials: solved.traces.equipotentials.some(({ lines }) => lines.length > 0),
    fieldLines: solved.traces.fieldLines.length > 0,
    lineCurrent_A: solved.traces.lineCurrent_A,
  });
  const words = {
    title: solvedTitleOf(setup, look),
    description: [describeSetup(setup), describeSolution(setup, solved, look)]
      .filter((part) => part !== '')
      .join(' '),
  };
  return composed(desk, [...drawn, { layer: 'key', items: strip }], words);
}
