/** Finds for every piece of running text the way back to the file, when it is asked for; and the unit that heads its table column. */
import type { Token } from 'markdown-it';
import { unitOf } from '../../quantity/units.ts';
import { placesOfCells, placesOfHeading, placesOfLines } from './places.ts';
import type { Places, Reading } from './reading.ts';

export class InlinePlaces {
  private readonly reading: Reading;
  private readonly tokens: readonly Token[];
  private columns: readonly (string | null)[] = [];
  private row: { readonly cells: readonly Token[]; readonly line: number } | null = null;

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
    this.row = { cells, line: token.map?.[0] ?? 0 };
    if (this.columns.length === 0) this.columns = cells.map((cell) => unitInHeading(cell.content));
  }

  /** Of the inline token at hand. */
  places(token: Token, index: number): Places {
    const cut = this.reading.cuts.get(token);
    if (cut !== undefined) return cut.places;
    if (this.row !== null) {
      const { cells, line } = this.row;
      const contents = cells.map((cell) => cell.content);
      const place = placesOfCells(this.reading, line, contents)[cells.indexOf(token)];
      if (place !== undefined) return place;
    }
    const map = token.map ?? [0, 0];
    const before = this.tokens[index - 1];
    const marked = before?.type === 'heading_open' && before.markup.startsWith('#');
    return marked
      ? placesOfHeading(this.reading, map[0], token.content)
      : placesOfLines(this.reading, map, token.content);
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
