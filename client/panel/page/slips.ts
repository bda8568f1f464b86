/** The reading slip below the drawing: one line read or said, and one of what is wrong. */
import type { editing } from '../../../shared/index.ts';

export class Slips {
  private readonly slip = element('slip');
  private readonly reading = element('reading');
  private readonly remarked = element('remark');
  private readonly directions = element('directions');
  private readonly invitation = this.reading.textContent ?? '';
  private readsPlace = false;

  /** Whether it tells a reading, and not what has been done. */
  get isReading(): boolean {
    return this.readsPlace;
  }

  show({ text, direction_deg }: editing.Slip): void {
    this.put(text, null);
    this.readsPlace = true;
    this.slip.classList.toggle('directed', direction_deg !== null);
    // Angles on the paper grow anticlockwise, those of the page clockwise.
    if (direction_deg !== null) this.directions.setAttribute('transform', `rotate(${-direction_deg})`);
  }

  say(text: string): void {
    this.put(text, null);
  }

  refuse(text: string): void {
    this.put(text, 'refused');
  }

  invite(): void {
    this.put(this.invitation, null);
  }

  remark(text: string | null): void {
    if (this.remarked.textContent !== (text ?? '')) this.remarked.textContent = text;
  }

  /** Whether screen readers are told of what is read next. */
  aloud(on: boolean): void {
    this.reading.setAttribute('aria-live', on ? 'polite' : 'off');
  }

  private put(text: string, mark: 'refused' | null): void {
    this.readsPlace = false;
    this.slip.classList.remove('directed');
    this.slip.classList.toggle('refused', mark === 'refused');
    this.reading.textContent = text;
  }
}

function element(id: string): Element {
  const found = document.getElementById(id);
  if (found === null) throw new Error(`the page has no ${id}`);
  return found;
}
