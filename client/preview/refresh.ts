/**
 * When the preview is rendered anew. A refresh reloads the whole page, so it comes at most once in an idle half second, and only where
 * something shown has changed since it was rendered.
 */
import type { PreviewHost } from './preview.ts';

const idle_ms = 500;

export class Refresh {
  private readonly host: Pick<PreviewHost, 'refresh' | 'later'>;
  private readonly needed: () => boolean;
  private cancelWaiting: (() => void) | null = null;

  constructor(host: Pick<PreviewHost, 'refresh' | 'later'>, needed: () => boolean) {
    this.host = host;
    this.needed = needed;
  }

  /** Something may have changed. */
  consider(): void {
    if (this.needed()) this.wait();
  }

  /** The editor has rendered by itself: whether a refresh is still needed is asked when it has been idle. */
  postpone(): void {
    if (this.cancelWaiting !== null) this.wait();
  }

  now(): void {
    this.cancel();
    this.host.refresh();
  }

  cancel(): void {
    this.cancelWaiting?.();
    this.cancelWaiting = null;
  }

  private wait(): void {
    this.cancel();
    this.cancelWaiting = this.host.later(idle_ms, () => {
      this.cancelWaiting = null;
      if (this.needed()) this.host.refresh();
    });
  }
}
