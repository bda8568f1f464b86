/** Finds for every piece of running text the way back to the file, when it is asked for; and the unit that heads its table column. */
import type { Token } from 'markdown-it';
import { unitOf } from '../../quantity/units.ts';
import { placesOfCells, placesOfHeading, placesOfLines } from './places.ts';
import type { Places, Reading } from './reading.ts';

interface Row {
  readonly cells: readonly Token[];
  readonly contents: readonly string[];
  readonly line: number;
  places: readonly Places[] | null;
}

export class InlinePlaces {
  private readonly reading: Reading;
  private readonly tokens: readonly Token[];
  private columns: readonly (string | null)[] = [];
  private row: Row | null = null;

  constructor(reading: Reading, tokens: readonly Token[]) {
    this.reading = reading;
    this.tokens = tokens;
  }

  /** To be called for every token in order. */
  follow(token: Token, index: number): void {
    if (token.type === 'table_close') this.columns = [];
    if (token.type === 'tr_close') this.row = null;
    if (token.type !== 'tr_open') return;
    const cells: Token[] = [];
    for (let i = index + 1; i < this.tokens.length; i++) {
      const next = this.tokens[i];
      if (next === undefined || next.type === 'tr_close') break;
      if (next.type === 'inline') cells.push(next);
    }
    this.row = {
      cells,
      contents: cells.map((cell) => cell.content),
      line: token.map?.[0] ?? 0,
      places: null,
    };
    if (this.columns.length === 0) this.columns = cells.map((cell) => unitInHeading(cell.content));
  }

  /** Of the inline token at hand: found when first asked for, which may be when the walk has gone on. */
  places(token: Token, index: number): () => Places {
    const { row } = this;
    const { content } = token;
    let known: Places | null = null;
    return () => {
      known ??= this.placesIn(row, token, content, index);
      return known;
    };
  }

  private placesIn(row: Row | null, token: Token, content: string, index: number): Places {
    const cut = this.reading.cuts.get(token);
    if (cut !== undefined) return cut.places;
    if (row !== null) {
      row.places ??= placesOfCells(this.reading, row.line, row.contents);
      const place = row.places[row.cells.indexOf(token)];
      if (place !== undefined) return place;
    }
    const map = token.map ?? [0, 0];
    const before = this.tokens[index - 1];
    const marked = before?.type === 'heading_open' && before.markup.startsWith('#');
    return marked
      ? placesOfHeading(this.reading, map[0], content)
      : placesOfLines(this.reading, map, content);
  }

  /** Unit of the table column that the inline token stands in. */
  columnUnit(token: Token): string | null {
    return this.row === null ? null : (this.columns[this.row.cells.indexOf(token)] ?? null);
  }
}

/** `V / mV`, `p.d. (mV)`, `p.d. in mV`, `mV`. */
function unitInHeading(heading: string): string | null {
  const plain = heading.replace(/[*_`$]/gu, '').trim();
  const written =
    /\s\/\s*(\S.*)$/u.exec(plain)?.[1] ??
    /[([]([^()[\]]+)[)\]]$/u.exec(plain)?.[1] ??
    /\sin\s+(\S.*)$/u.exec(plain)?.[1] ??
    plain;
  return unitOf(written.trim())?.symbol ?? null;
}
