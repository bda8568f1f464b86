/** Draws leads: two-jaw clips on connected metal, leads that leave the board, terminals with their signs, leads between joined metal. */
import type { Point } from '../field/geometry/outline.ts';
import { hypot } from '../field/maths.ts';
import { printQuantity } from '../quantity/print.ts';
import type { Desk } from './desk.ts';
import { chooseJoins } from './join-routes.ts';
import { centred } from './labels.ts';
import type { Lead } from './lead-routes.ts';
import { at, circle, dot, label, line, polyline, upright } from './marks.ts';
import { wants } from './page.ts';
import { textSize } from './pens.ts';
import { aroundPoint } from './pointed.ts';
import { between } from './polygon.ts';
import type { Item, Label } from './scene.ts';
import { volts } from './values.ts';
import { wire } from './wire.ts';

export function leads({ page, room, leads: all }: Desk): Item[] {
  if (!wants(page, 'electrodes') && !wants(page, 'circuit')) return [];
  const drawn: Item[] = [];
  for (const lead of all) {
    const from = along(lead, CLIP_OUT);
    room.keepLine(between(lead.clip, lead.end, 0.5));
    room.keepSolid(between(along(lead, -CLIP_IN), from, 0.5));
    drawn.push(...wire(page, from, lead.end));
  }
  return drawn;
}

export function joins({ page, room }: Desk): Item[] {
  if (!wants(page, 'electrodes')) return [];
  return chooseJoins(page).flatMap(({ from, to }) => {
    room.keepSolid(between(from, to, 0.5));
    return [
      line('casing', from, to),
      // The junctions cover its ends on the metal that it joins.
      ...wire(page, towards(from, to), towards(to, from)),
      dot('junction', from, JUNCTION_mm),
      dot('junction', to, JUNCTION_mm),
    ];
  });
}

const JUNCTION_mm = 1.6;

/** Where the lead leaves the junction at p. */
function towards(p: Point, q: Point): Point {
  const length = hypot(q.x - p.x, q.y - p.y);
  const part = length === 0 ? 0 : Math.min(0.5, (0.45 * JUNCTION_mm) / length);
  return at(p.x + part * (q.x - p.x), p.y + part * (q.y - p.y));
}

const CLIP_IN = 2.2;
const CLIP_OUT = 1.8;

/** Resistance of a clip, for those who prepare the practical, never for pupils. */
export function clipValues({ page, room, leads: all }: Desk): Item[] {
  if (page.look.audience === 'pupils' || !wants(page, 'electrodes')) return [];
  return all.flatMap((lead) => {
    if (!(lead.electrode.clip_ohm > 0)) return [];
    const text = upright(`clip ${printQuantity(lead.electrode.clip_ohm, 'resistance')}`);
    const best = room.place(aroundPoint(along(lead, 0.8), text, textSize.value));
    return best === null ? [] : [best.label];
  });
}

/** A fork that grips the metal: two jaws and the back that joins them. */
export function leadClips({ page, leads: all }: Desk): Item[] {
  if (!wants(page, 'electrodes') && !wants(page, 'circuit')) return [];
  return all.flatMap((lead) => {
    const p = (forward: number, across: number): Point => {
      const q = along(lead, forward);
      return at(q.x - lead.direction.y * across, q.y + lead.direction.x * across);
    };
    const jaw = (side: 1 | -1): Item =>
      polyline(
        'clip',
        [p(-CLIP_IN, side * 0.45), p(-CLIP_IN, side * 1.15), p(0.8, side * 1.35), p(0.8, side * 0.45)],
        true,
      );
    const back = polyline('clip', [p(0.8, -1.35), p(0.8, 1.35), p(CLIP_OUT, 0.6), p(CLIP_OUT, -0.6)], true);
    return [jaw(1), jaw(-1), back];
  });
}

/** Where no circuit is drawn a lead ends in an open terminal with its sign; the negative one is the zero of potential. */
export function terminals({ page, room, leads: all }: Desk): Item[] {
  if (!wants(page, 'electrodes') && !wants(page, 'circuit')) return [];
  return all
    .filter(({ polarity }) => !wants(page, 'circuit') || polarity === 'held')
    .flatMap((lead) => {
      const mark = circle('terminal', lead.end, 0.9);
      const best = room.place(terminalLabels(lead).map((each) => ({ label: each })));
      return best === null ? [mark] : [mark, best.label];
    });
}

function terminalText({ polarity, electrode }: Lead): string {
  if (polarity === 'positive') return '+';
  if (polarity === 'negative') return '\u2212 0\u00a0V';
  return electrode.connection?.kind === 'held' ? volts(electrode.connection.potential_V) : '';
}

function terminalLabels(lead: Lead): Label[] {
  const { end, direction } = lead;
  const size_mm = textSize.sign;
  const text = upright(terminalText(lead));
  const y = centred(end.y, size_mm);
  const aside: Label[] = [
    label(at(end.x + 2, y), text, { size_mm }),
    label(at(end.x - 2, y), text, { size_mm, anchor: 'end' }),
  ];
  const over: Label[] = [
    label(at(end.x, end.y + 2), text, { size_mm, anchor: 'middle' }),
    label(at(end.x, end.y - 2 - 0.76 * size_mm), text, { size_mm, anchor: 'middle' }),
  ];
  return direction.x === 0 ? [...aside, ...over] : [...over, ...aside];
}

const along = ({ clip, direction }: Lead, by: number): Point =>
  at(clip.x + direction.x * by, clip.y + direction.y * by);
