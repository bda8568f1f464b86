/** Ready parts of previews by key, and what each text showed when it was last rendered. Bounded in letters; what is shown now is kept. */
import type { editing, Lookup, ReadyPiece } from '../../shared/index.ts';

/** Room for some hundred drawings. */
const usualLetters = 16 * 1024 * 1024;

interface Shown {
  /** What stood for each key; null where nothing was ready. */
  readonly pieces: Map<string, ReadyPiece | null>;
  /** Keys that the text has now, as the server knows them. */
  keys: ReadonlySet<string>;
  /** The last part without a message, by its place. */
  readonly good: Map<string, Good>;
}

interface Good {
  readonly html: string;
  readonly size: string | null;
}

export class PieceCache {
  /** The order of the map is that of use. */
  private readonly pieces = new Map<string, ReadyPiece>();
  private readonly texts = new Map<string, Shown>();
  private letters = 0;
  private readonly most: number;

  constructor(most = usualLetters) {
    this.most = most;
  }

  take({ uri, keys, pieces }: editing.PreviewUpdate): void {
    this.shown(uri).keys = new Set(keys);
    for (const piece of pieces) this.keep(piece);
    this.shrink();
  }

  /** To be asked for every part of one rendering of a text. */
  rendering(uri: string): Lookup {
    const shown = this.shown(uri);
    const good = new Map(shown.good);
    shown.pieces.clear();
    shown.good.clear();
    return {
      piece: ({ key, place, size }) => {
        const piece = this.used(key);
        shown.pieces.set(key, piece);
        const last = piece?.message === null ? { html: piece.html, size } : good.get(place);
        if (last !== undefined) shown.good.set(place, last);
        return piece;
      },
      lastGood: ({ place, size }) => {
        const last = good.get(place);
        return last !== undefined && (size === null || size === last.size) ? last.html : null;
      },
    };
  }

  /** For a text without an address: what is known from elsewhere, nothing else. */
  unnamed(): Lookup {
    return { piece: ({ key }) => this.used(key), lastGood: () => null };
  }

  /** Does any text show something else than what is ready for it? */
  outdated(): boolean {
    return [...this.texts.values()].some((shown) =>
      [...shown.pieces].some(([key, piece]) => {
        const ready = this.pieces.get(key);
        return ready !== undefined && (piece?.html !== ready.html || piece.message !== ready.message);
      }),
    );
  }

  forget(uri: string): void {
    this.texts.delete(uri);
    this.shrink();
  }

  private shown(uri: string): Shown {
    const known = this.texts.get(uri) ?? {
      pieces: new Map(),
      keys: new Set<string>(),
      good: new Map<string, Good>(),
    };
    this.texts.set(uri, known);
    return known;
  }

  private used(key: string): ReadyPiece | null {
    const piece = this.pieces.get(key);
    if (piece === undefined) return null;
    this.pieces.delete(key);
    this.pieces.set(key, piece);
    return piece;
  }

  private keep(piece: ReadyPiece): void {
    this.letters += piece.html.length - (this.pieces.get(piece.key)?.html.length ?? 0);
    this.pieces.delete(piece.key);
    this.pieces.set(piece.key, piece);
  }

  /** What a text has now stays: the server does not send it again. */
  private shrink(): void {
    for (const [key, { html }] of this.pieces) {
      if (this.letters <= this.most) return;
      if ([...this.texts.values()].some(({ keys }) => keys.has(key))) continue;
      this.pieces.delete(key);
      this.letters -= html.length;
    }
  }
}
