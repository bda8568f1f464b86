/** The one file that knows SVG: a scene written down, size in mm, y turned down, presentation attributes alone, the same bytes every time. */
import { escapeText } from '../text/escape.ts';
import { boxOf, padded } from './labels.ts';
import { fontStack, type Ink, type Pen, pens, type Theme, themes } from './pens.ts';
import type { Item, Label, Layer, PathPart, Scene } from './scene.ts';
import { SUBSCRIPT_SIZE } from './type.ts';

export interface SvgOptions {
  /** Unique in the page; all ids of the drawing begin with it. */
  readonly id: string;
  /** A drawing wider than this is scaled down as a whole. */
  readonly widthLimit_mm?: number;
  /** Shows this part of the page, at this size, whatever the drawing takes; a drawing that reaches beyond is scaled down to fit. */
  readonly frame?: Frame;
  readonly theme?: Theme;
  /** A sheet of ground colour behind it, for where the drawing lies on a page of any colour. */
  readonly backed?: boolean;
}

/** A part of the page of a drawing, printed mm, y up. */
export interface Frame {
  readonly left: number;
  readonly bottom: number;
  readonly width: number;
  readonly height: number;
}

/** Printed mm for one mm of the bench, for the note below a drawing: 1 means full size. */
export function printedScale(scene: Scene, widthLimit_mm?: number): number {
  return scene.scale * reduction(scene, widthLimit_mm);
}

export function renderSvg(scene: Scene, options: SvgOptions): string {
  const { theme = 'print', widthLimit_mm, backed = false, frame } = options;
  const id = options.id.replace(/[^A-Za-z0-9_-]/g, '-');
  const view = frame === undefined ? scene : frameRound(scene, frame);
  const shrink = frame === undefined ? reduction(scene, widthLimit_mm) : frame.width / view.width;
  const inks = themes[theme];
  const turn = (y: number): number => view.bottom + view.height - y;
  const attributes = attributesOf({
    xmlns: 'http://www.w3.org/2000/svg',
    id,
    role: 'img',
    'aria-labelledby': `${id}-title ${id}-description`,
    width: `${number(view.width * shrink)}mm`,
    height: `${number(view.height * shrink)}mm`,
    viewBox: `${number(view.left)} 0 ${number(view.width)} ${number(view.height)}`,
    'font-family': fontStack,
    'font-variant': 'tabular-nums',
    fill: inks.ink,
  });
  const write = new Writer(inks, turn);
  return [
    `<svg${attributes}>`,
    `<title id="${id}-title">${escapeText(scene.title)}</title>`,
    `<desc id="${id}-description">${escapeText(scene.description)}</desc>`,
    ...(backed ? [write.ground(view)] : []),
    ...scene.layers.map((layer) => write.layer(layer, id)),
    '</svg>',
    '',
  ].join('\n');
}

/** Part of the estimated width that a halo wipes: letters are mostly narrower than the room kept for them. */
const HALO_WIDTH = 0.92;

function reduction(scene: Scene, widthLimit_mm?: number): number {
  return widthLimit_mm !== undefined && scene.width > widthLimit_mm ? widthLimit_mm / scene.width : 1;
}

/** The frame, enlarged in its own proportions until it holds the drawing. */
function frameRound(scene: Scene, frame: Frame): Frame {
  const left = Math.min(frame.left, scene.left);
  const bottom = Math.min(frame.bottom, scene.bottom);
  const right = Math.max(frame.left + frame.width, scene.left + scene.width);
  const top = Math.max(frame.bottom + frame.height, scene.bottom + scene.height);
  const times = Math.max((right - left) / frame.width, (top - bottom) / frame.height);
  const [width, height] = [frame.width * times, frame.height * times];
  return { left: (left + right - width) / 2, bottom: (bottom + top - height) / 2, width, height };
}

class Writer {
  private readonly inks: Readonly<Record<Ink, string>>;
  private readonly turn: (y: number) => number;

  constructor(inks: Readonly<Record<Ink, string>>, turn: (y: number) => number) {
    this.inks = inks;
    this.turn = turn;
  }

  /** Neighbouring items of one style share a group, so that each pen is said once. */
  layer({ name, items }: Layer, id: string): string {
    const lines: string[] = [`<g id="${id}-${name}">`];
    let style = '';
    for (const item of items) {
      const own = item.kind === 'label' ? '' : item.style;
      if (own !== style) {
        if (style !== '') lines.push('</g>');
        if (item.kind !== 'label') lines.push(`<g${this.pen(pens[item.style])}>`);
        style = own;
      }
      lines.push(this.item(item));
    }
    if (style !== '') lines.push('</g>');
    return [...lines, '</g>'].join('\n');
  }

  private pen({ width, ink, fill, dash, cap }: Pen): string {
    return attributesOf({
      fill: this.inks[fill],
      'fill-rule': fill === 'none' ? undefined : 'evenodd',
      stroke: this.inks[ink],
      'stroke-width': ink === 'none' ? undefined : number(width),
      'stroke-dasharray': dash?.map(number).join(' '),
      'stroke-linecap': cap,
      'stroke-linejoin': ink === 'none' ? undefined : 'round',
    });
  }

  private item(item: Item): string {
    if (item.kind === 'label') return this.label(item);
    if (item.kind === 'dot') {
      return `<circle cx="${number(item.x)}" cy="${number(this.turn(item.y))}" r="${number(item.diameter / 2)}"/>`;
    }
    return `<path d="${item.parts.map((part) => this.part(part)).join('')}"/>`;
  }

  private part(part: PathPart): string {
    if (part.to === 'close') return 'Z';
    const end = `${number(part.x)} ${number(this.turn(part.y))}`;
    if (part.to !== 'arc') return `${part.to === 'move' ? 'M' : 'L'}${end}`;
    // Anticlockwise with y up is sweep 0 with y down.
    const r = number(part.radius);
    return `A${r} ${r} 0 ${part.large ? 1 : 0} ${part.anticlockwise ? 0 : 1} ${end}`;
  }

  private label(label: Label): string {
    const attributes = attributesOf({
      x: number(label.x),
      y: number(this.turn(label.y)),
      'font-size': number(label.size_mm),
      'text-anchor': label.anchor === 'start' ? undefined : label.anchor,
    });
    const runs = label.runs.map(({ text, form }) => {
      if (form === 'upright') return escapeText(text);
      if (form === 'italic') return `<tspan font-style="italic">${escapeText(text)}</tspan>`;
      const small = number(label.size_mm * SUBSCRIPT_SIZE);
      return `<tspan font-size="${small}" baseline-shift="sub">${escapeText(text)}</tspan>`;
    });
    const text = `<text${attributes}>${runs.join('')}</text>`;
    return label.halo ? `${this.halo(label)}${text}` : text;
  }

  ground({ left, width, height }: Frame): string {
    const box = { x: number(left), y: '0', width: number(width), height: number(height) };
    return `<rect${attributesOf({ ...box, fill: this.inks.ground })}/>`;
  }

  private halo(label: Label): string {
    const b = padded(boxOf(label, HALO_WIDTH), 0.3);
    return `<rect${attributesOf({
      x: number(b.x0),
      y: number(this.turn(b.y1)),
      width: number(b.x1 - b.x0),
      height: number(b.y1 - b.y0),
      fill: this.inks.ground,
    })}/>`;
  }
}

/** To 0.01 mm, no trailing zeros, no negative zero. */
function number(value: number): string {
  if (!Number.isFinite(value)) throw new Error('a coordinate of a drawing is not finite');
  return String(Math.round(value * 100) / 100 + 0);
}

function attributesOf(values: Readonly<Record<string, string | undefined>>): string {
  return Object.entries(values)
    .flatMap(([name, value]) => (value === undefined ? [] : [` ${name}="${escapeText(value)}"`]))
    .join('');
}
