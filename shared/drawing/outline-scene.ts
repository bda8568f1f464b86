/** The drawing of a setup without any field. Made from the setup alone: what it is given holds no solution. */
import type { Setup } from '../setup/setup.ts';
import { composed, framing, lettering, naming } from './compose.ts';
import { describeSetup, titleOf } from './describe.ts';
import { deskOf } from './desk.ts';
import { key } from './key.ts';
import { type Look, pageOf } from './page.ts';
import type { Scene } from './scene.ts';

export function outlineScene(setup: Setup, look: Look): Scene {
  const desk = deskOf(pageOf(setup, look));
  const parts = [...framing, ...naming, ...lettering];
  const drawn = parts.map(({ layer, draw }) => ({ layer, items: draw(desk) }));
  const strip = key(desk.page, desk.board, { equipotentials: false, fieldLines: false, lineCurrent_A: null });
  const words = { title: titleOf(setup), description: describeSetup(setup) };
  return composed(desk, [...drawn, { layer: 'key', items: strip }], words);
}
