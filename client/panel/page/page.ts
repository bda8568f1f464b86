/** The panel's page: shows what the extension sends, and turns pointer and keys into what is asked of it. */
import type { editing } from '../../../shared/index.ts';
import type { Applied, Lookout, Shown, ToExtension, ToPage } from '../protocol.ts';
import { adopted } from './adopt.ts';
import {
  burst_ms,
  type Event as CarryEvent,
  type Carrying,
  carry,
  type Deed,
  isAtRest,
  nothing,
} from './carrying.ts';
import { held, holds, onPaper, type Point, plus, whole } from './coordinates.ts';
import { Hands, handleAt } from './hands.ts';
import { type Intent, intentOf, type Key } from './keys.ts';
import { Newest } from './newest.ts';
import { Slips } from './slips.ts';

type PanelDrawing = editing.PanelDrawing;

export interface Outside {
  send(message: ToExtension): void;
  /** Keeps where the panel looks beyond a reload. */
  remember(lookout: Lookout): void;
}

interface Move {
  readonly handle: string;
  readonly by: Point;
}

/** A press that strays further than this, px, is no click. */
const clickSlack = 4;

export class PanelPage {
  private readonly outside: Outside;
  private readonly stage = byId('stage');
  private readonly picture = byId('picture');
  private readonly hands = new Hands(theLayer());
  private readonly slips = new Slips();
  private readonly readings: Newest<Point>;
  private readonly previews: Newest<Move>;
  /** What the text says. */
  private drawing: PanelDrawing | null = null;
  private lookout: Lookout | null = null;
  /** What is to be seen: that, or a preview of a move. */
  private seen: PanelDrawing | null = null;
  /** Drawings of the text before the change that has just been made are late. */
  private late: number | null = null;
  private carrying: Carrying = nothing;
  private burst: ReturnType<typeof setTimeout> | undefined;
  private pressed: { readonly x: number; readonly y: number } | null = null;
  private place: Point | null = null;
  private changes = 0;

  constructor(outside: Outside) {
    this.outside = outside;
    this.readings = new Newest((ask, at) =>
      this.withBlock((block) => outside.send({ kind: 'slip', ask, block, x_mm: at.x, y_mm: at.y })),
    );
    this.previews = new Newest((ask, { handle, by }) =>
      this.withBlock((block) => outside.send({ kind: 'move', ask, block, handle, by_mm: [by.x, by.y] })),
    );
    this.listen();
  }

  hear(message: ToPage): void {
    switch (message.kind) {
      case 'drawing':
        this.drawn(message.drawing, message.lookout);
        break;
      case 'nothing':
        this.empty(message.text);
        break;
      case 'slip':
        this.read(message.ask, message.slip);
        break;
      case 'moved':
        this.moved(message.ask, message.moved);
        break;
      case 'applied':
        this.applied(message.ask, message.outcome);
        break;
    }
  }

  private drawn(drawing: PanelDrawing, lookout: Lookout): void {
    const elsewhere = lookout.uri !== this.lookout?.uri || drawing.block !== this.drawing?.block;
    this.lookout = lookout;
    this.outside.remember(lookout);
    if (elsewhere) this.leave();
    else if (this.late !== null && drawing.version <= this.late) return;
    this.late = null;
    this.drawing = drawing;
    if (isAtRest(this.carrying)) this.show(drawing);
  }

  /** Another block: what went on over the old one is over. */
  private leave(): void {
    clearTimeout(this.burst);
    this.carrying = nothing;
    this.late = null;
    this.place = null;
    this.readings.drop();
    this.previews.drop();
    this.slips.invite();
  }

  private empty(text: string): void {
    this.leave();
    this.drawing = null;
    this.seen = null;
    this.picture.replaceChildren();
    this.stage.classList.add('empty');
    this.slips.say(text);
    this.slips.remark(null);
  }

  private show(drawing: PanelDrawing): void {
    const again = this.seen?.svg === drawing.svg;
    this.seen = drawing;
    const svg = again ? this.picture.querySelector('svg') : adopted(drawing.svg);
    if (!again) this.picture.replaceChildren(...(svg === null ? [] : [svg]));
    this.stage.classList.toggle('empty', svg === null);
    this.stage.classList.toggle('stale', drawing.stale);
    this.hands.show(drawing, svg?.getAttribute('viewBox') ?? '0 0 1 1');
    byId('heading').textContent = drawing.name;
    byId('title').textContent = drawing.title;
    byId('text').textContent = drawing.description;
    this.slips.remark(drawing.message);
    this.hands.cross(this.crossed(drawing));
    if (this.place !== null && this.slips.isReading) this.readings.ask(this.place);
  }

  /** Where the cross stands: in the middle of the paper until it is moved. */
  private crossed({ paper }: PanelDrawing): Point {
    return held(paper, this.place ?? whole({ x: paper.width_mm / 2, y: paper.height_mm / 2 }));
  }

  private read(ask: number, slip: editing.Slip | null): void {
    const wanted = this.readings.answered(ask);
    if (wanted && slip !== null && isAtRest(this.carrying)) this.slips.show(slip);
  }

  private moved(ask: number, moved: Shown | null): void {
    const wanted = this.previews.answered(ask);
    if (!wanted || moved === null || isAtRest(this.carrying)) return;
    if ('refusal' in moved) this.slips.refuse(moved.refusal);
    else {
      if (moved.drawing !== null) this.show(moved.drawing);
      this.slips.say(moved.said);
    }
  }

  private applied(ask: number, outcome: Applied): void {
    if (ask !== this.changes) return;
    if ('refusal' in outcome) {
      this.late = null;
      if (this.drawing !== null) this.show(this.drawing);
      this.slips.refuse(outcome.refusal);
    } else this.slips.say(outcome.said);
    this.carry({ kind: 'applied', done: !('refusal' in outcome) });
  }

  private withBlock(run: (block: number) => void): void {
    if (this.drawing !== null) run(this.drawing.block);
  }

  private carry(event: CarryEvent): void {
    const { state, deeds } = carry(this.carrying, event);
    this.carrying = state;
    this.hands.carry(state.kind === 'dragging' || state.kind === 'stepping' ? state.handle : null);
    for (const deed of deeds) this.carryOut(deed);
  }

  private carryOut(deed: Deed): void {
    switch (deed.kind) {
      case 'preview':
        this.previews.ask(deed);
        break;
      case 'drop':
        clearTimeout(this.burst);
        this.previews.drop();
        this.late = this.drawing?.version ?? null;
        this.withBlock((block) =>
          this.outside.send({
            kind: 'drop',
            ask: ++this.changes,
            block,
            handle: deed.handle,
            by_mm: [deed.by.x, deed.by.y],
          }),
        );
        break;
      case 'restore':
        clearTimeout(this.burst);
        this.previews.drop();
        this.outside.send({ kind: 'cancel' });
        if (this.drawing !== null) this.show(this.drawing);
        break;
      case 'wait':
        clearTimeout(this.burst);
        this.burst = setTimeout(() => this.carry({ kind: 'settle' }), burst_ms);
    }
  }

  private addProbe(at: Point): void {
    this.withBlock((block) => {
      this.late = this.drawing?.version ?? null;
      this.outside.send({ kind: 'addProbe', ask: ++this.changes, block, x_mm: at.x, y_mm: at.y });
    });
  }

  private listen(): void {
    const { layer } = this.hands;
    layer.addEventListener('pointerdown', (event) => this.press(event));
    layer.addEventListener('pointermove', (event) => this.point(event));
    layer.addEventListener('pointerup', (event) => this.release(event));
    layer.addEventListener('pointercancel', () => this.carry({ kind: 'escape' }));
    layer.addEventListener('keydown', (event) => this.key(event));
    layer.addEventListener('focusin', ({ target }) => this.focused(handleAt(target)));
    layer.addEventListener('focusout', () => this.carry({ kind: 'settle' }));
    // A drag may be taken back wherever the focus is.
    window.addEventListener('keydown', ({ key }) => {
      if (key === 'Escape') this.carry({ kind: 'escape' });
    });
  }

  /** On the paper under the pointer, mm; null where the window has no drawing. */
  private under({ clientX, clientY }: PointerEvent): Point | null {
    const at = this.hands.viewPoint(clientX, clientY);
    return at === null || this.seen === null ? null : onPaper(this.seen.frame, at);
  }

  private press(event: PointerEvent): void {
    const at = this.under(event);
    if (event.button !== 0 || at === null) return;
    const handle = handleAt(event.target);
    this.pressed = { x: event.clientX, y: event.clientY };
    if (handle === null) return;
    this.hands.layer.setPointerCapture(event.pointerId);
    this.carry({ kind: 'grab', handle, at });
  }

  private point(event: PointerEvent): void {
    const at = this.under(event);
    if (at === null || this.seen === null) return;
    if (this.carrying.kind === 'dragging') this.carry({ kind: 'point', at });
    else if (holds(this.seen.paper, at)) this.look(whole(at), false);
  }

  private release(event: PointerEvent): void {
    const { pressed } = this;
    this.pressed = null;
    if (this.carrying.kind === 'dragging') {
      this.carry({ kind: 'release' });
      return;
    }
    const at = this.under(event);
    if (at === null || pressed === null || this.seen === null || handleAt(event.target) !== null) return;
    const strayed = Math.abs(event.clientX - pressed.x) + Math.abs(event.clientY - pressed.y);
    if (strayed <= clickSlack && holds(this.seen.paper, at)) this.addProbe(whole(at));
  }

  /** `aloud` where keys ask: a pointer would have every place on its way read out. */
  private look(at: Point, aloud: boolean): void {
    this.place = at;
    this.slips.aloud(aloud);
    if (this.seen !== null) this.hands.cross(at);
    this.readings.ask(at);
  }

  /** The paper, when keys reach it, is read where the cross stands. */
  private focused(handle: string | null): void {
    const seen = this.seen;
    if (handle === null && seen !== null && this.hands.layer.matches(':focus-visible')) {
      this.look(this.crossed(seen), true);
    }
  }

  private key(event: KeyboardEvent): void {
    const handle = handleAt(event.target);
    const intent = intentOf(keyOf(event), handle === null ? 'paper' : 'handle');
    if (intent === null || this.seen === null) return;
    event.preventDefault();
    if (handle === null) this.keyOnPaper(intent, this.seen);
    else this.keyOnHandle(intent, handle);
  }

  private keyOnPaper(intent: Intent, seen: PanelDrawing): void {
    const at = this.crossed(seen);
    if (intent.kind === 'step') this.look(held(seen.paper, plus(at, intent.by)), true);
    else if (intent.kind === 'add a probe') this.addProbe(whole(at));
  }

  private keyOnHandle(intent: Intent, handle: string): void {
    if (intent.kind === 'step') {
      this.slips.aloud(true);
      this.carry({ kind: 'step', handle, by: intent.by });
    } else if (intent.kind === 'go to its line') {
      this.carry({ kind: 'settle' });
      const place = this.seen?.handles.find(({ id }) => id === handle)?.place;
      if (place !== undefined) this.outside.send({ kind: 'goTo', ...place });
    }
  }
}

const keyOf = ({ key, shiftKey, ctrlKey, altKey, metaKey }: KeyboardEvent): Key => ({
  key,
  shift: shiftKey,
  modified: ctrlKey || altKey || metaKey,
});

/** The page is made with all of its elements. */
export function byId(id: string): HTMLElement {
  const element = document.getElementById(id);
  if (element === null) throw new Error(`the page has no ${id}`);
  return element;
}

function theLayer(): SVGSVGElement {
  const layer: Element | null = document.getElementById('hands');
  if (!(layer instanceof SVGSVGElement)) throw new Error('the page has no layer for hands');
  return layer;
}
