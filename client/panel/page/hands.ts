/** The layer over the drawing: what can be taken hold of, and the cross that arrow keys move. */
import type { editing } from '../../../shared/index.ts';
import { type Frame, inView, type Point, viewTransform } from './coordinates.ts';

const svgNamespace = 'http://www.w3.org/2000/svg';

function made<K extends keyof SVGElementTagNameMap>(
  name: K,
  values: Readonly<Record<string, string>>,
): SVGElementTagNameMap[K] {
  const element = document.createElementNS(svgNamespace, name);
  for (const [key, value] of Object.entries(values)) element.setAttribute(key, value);
  return element;
}

/** Of a handle that is a point, in units of the view box. */
const graspRadius = 2.6;

export class Hands {
  readonly layer: SVGSVGElement;
  private readonly handles = made('g', {});
  private readonly crosshair = made('g', { id: 'crosshair', 'aria-hidden': 'true' });
  private readonly groups = new Map<string, SVGGElement>();
  private frame: Frame = { left: 0, top: 0, scale: 1 };

  constructor(layer: SVGSVGElement) {
    this.layer = layer;
    this.crosshair.append(made('path', { d: 'M-5 0H-1M1 0H5M0 -5V-1M0 1V5' }));
    layer.append(this.handles, this.crosshair);
  }

  /** Elements stay while their handles do, and with them the focus. */
  show({ frame, handles }: Pick<editing.PanelDrawing, 'frame' | 'handles'>, viewBox: string): void {
    this.frame = frame;
    this.layer.setAttribute('viewBox', viewBox);
    this.handles.setAttribute('transform', viewTransform(frame));
    const wanted = new Set(handles.map(({ id }) => id));
    for (const [id, group] of this.groups) {
      if (wanted.has(id)) continue;
      group.remove();
      this.groups.delete(id);
    }
    for (const [i, handle] of handles.entries()) {
      const group = this.groupOf(handle);
      if (this.handles.children[i] !== group)
        this.handles.insertBefore(group, this.handles.children[i] ?? null);
    }
  }

  private groupOf(handle: editing.PanelHandle): SVGGElement {
    const known = this.groups.get(handle.id);
    const group =
      known ??
      made('g', {
        class: `handle ${handle.kind}`,
        tabindex: '0',
        role: 'button',
        'aria-describedby': 'handle-help',
      });
    group.dataset.handle = handle.id;
    group.setAttribute('aria-label', `${handle.label}, (${whole(handle.x_mm)}, ${whole(handle.y_mm)}) mm`);
    group.replaceChildren(this.shapeOf(handle));
    this.groups.set(handle.id, group);
    return group;
  }

  private shapeOf({ path, x_mm, y_mm }: editing.PanelHandle): SVGElement {
    if (path !== null) return made('path', { d: path, 'fill-rule': 'evenodd' });
    return made('circle', { cx: String(x_mm), cy: String(y_mm), r: String(graspRadius / this.frame.scale) });
  }

  /** Puts the cross at a place of the paper, mm. */
  cross(at: Point): void {
    const { x, y } = inView(this.frame, at);
    this.crosshair.setAttribute('transform', `translate(${x} ${y})`);
  }

  /** Marks what is being carried; null: nothing. */
  carry(handle: string | null): void {
    this.layer.classList.toggle('carrying', handle !== null);
    for (const [id, group] of this.groups) group.classList.toggle('carried', id === handle);
  }

  /** The place of the view box under a place of the window. */
  viewPoint(clientX: number, clientY: number): Point | null {
    const inverse = this.layer.getScreenCTM()?.inverse();
    return inverse === undefined ? null : new DOMPoint(clientX, clientY).matrixTransform(inverse);
  }
}

const whole = (value: number): string => String(Math.round(value * 100) / 100 + 0);

/** The handle of which an element is a part; null for the bare paper. */
export function handleAt(target: EventTarget | null): string | null {
  const group = target instanceof Element ? target.closest('.handle') : null;
  return group instanceof SVGElement ? (group.dataset.handle ?? null) : null;
}
