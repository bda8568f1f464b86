/**
 * Pairs lines of colons into passages. A passage opens and closes in the same list item or quotation; a bare run closes the innermost
 * open one. What is misspelt or never closed is broken: it reaches to the end of what it stands in, and pupils do not get it.
 */
import type { StateCore, Token } from 'markdown-it';
import { type Finding, type Fix, finding } from '../../findings/finding.ts';
import { type Span, span } from '../../text/span.ts';
import type { Passage, PassageKind } from '../sheet.ts';
import { colonsType } from './block-rules.ts';
import { common, everyone, readersOf, readPassageLine } from './passage-line.ts';
import type { Reading } from './reading.ts';
import { setMeta, tokenTypes } from './tokens.ts';

/** Replaces lines of colons by opening and closing tokens, and fills `reading.passages`. */
export function pairPassages(state: StateCore, reading: Reading): void {
  if (!state.tokens.some((token) => token.type === colonsType)) return;
  const pairing = new Pairing(state, reading);
  for (const token of state.tokens) pairing.take(token);
  state.tokens = pairing.finish();
}

interface Draft {
  kind: PassageKind;
  to: number;
  readonly space: Passage['space'];
  readonly opening: Span;
  /** Index of the passage round it, or null. */
  readonly round: number | null;
  readonly open: Token;
  close: Token | null;
}

/** The sheet itself, a list item or a quotation. */
interface Room {
  readonly name: string;
  /** Passages open in it, the innermost last. */
  readonly open: number[];
  /** Line behind its last. */
  readonly endLine: number;
}

interface Unclosed {
  readonly draft: Draft;
  readonly room: Room;
  /** The run of colons that stands just behind the room and was meant to close it. */
  stray: Span | null;
}

const roomNames: Readonly<Record<string, string>> = {
  list_item_open: 'its list item',
  blockquote_open: 'its quotation',
};

class Pairing {
  private readonly state: StateCore;
  private readonly reading: Reading;
  private readonly out: Token[] = [];
  private readonly drafts: Draft[] = [];
  private readonly rooms: Room[];
  private readonly unclosed: Unclosed[] = [];
  /** Unclosed passages whose room has just ended. */
  private waiting: Unclosed[] = [];

  constructor(state: StateCore, reading: Reading) {
    this.state = state;
    this.reading = reading;
    this.rooms = [{ name: 'the sheet', open: [], endLine: reading.index.lineCount }];
  }

  take(token: Token): void {
    const roomName = roomNames[token.type];
    if (token.type === colonsType) {
      this.colons(token);
      return;
    }
    if (token.type === 'list_item_close' || token.type === 'blockquote_close') this.leaveRoom();
    else if (token.nesting >= 0) this.waiting = [];
    this.out.push(token);
    if (roomName !== undefined) {
      this.rooms.push({ name: roomName, open: [], endLine: token.map?.[1] ?? 0 });
    }
  }

  finish(): Token[] {
    this.leaveRoom();
    for (const { kind, to, space, opening, round, open, close } of this.drafts) {
      const outer = round === null ? everyone : (this.reading.passages[round]?.readers ?? []);
      const readers = common(outer, readersOf[kind]);
      const passage = this.reading.passages.length;
      this.reading.passages.push({ kind, span: span(opening.from, to), opening, readers, space });
      setMeta(open, { kind: 'passage', passage, readers });
      if (close !== null) setMeta(close, { kind: 'passage', passage, readers });
    }
    for (const one of this.unclosed) this.reading.findings.push(this.unclosedFinding(one));
    return this.out;
  }

  private colons(token: Token): void {
    const line = token.map?.[0] ?? 0;
    const to = this.reading.index.startOf(line) + this.reading.line(line).trimEnd().length;
    const written = span(to - token.content.length, to);
    const opening = readPassageLine(token.content, written.from);
    if (opening === null) {
      this.close(token, written);
      return;
    }
    this.waiting = [];
    if (opening.trouble !== null) this.reading.report(opening.trouble.code, opening.trouble);
    const open = this.push(tokenTypes.passageOpen, 1, token);
    const { kind, space } = opening;
    const round = this.rooms.flatMap((room) => room.open).at(-1) ?? null;
    this.room.open.push(this.drafts.length);
    this.drafts.push({ kind, to, space, opening: written, round, open, close: null });
  }

  private close(token: Token, written: Span): void {
    const draft = this.drafts[this.room.open.pop() ?? -1];
    if (draft !== undefined) {
      draft.to = written.to;
      draft.close = this.push(tokenTypes.passageClose, -1, token);
      return;
    }
    const [meant] = this.waiting.splice(0, 1);
    if (meant !== undefined) meant.stray = written;
    this.reading.report('passage-stray', {
      span: written,
      message:
        meant === undefined
          ? 'These colons close nothing: no passage is open here.'
          : `These colons close nothing: they stand outside ${meant.room.name.replace('its', 'the')} in which the passage opens.`,
      related: meant === undefined ? [] : [{ span: meant.draft.opening, message: 'It opens here.' }],
      fixes:
        meant === undefined
          ? [{ title: 'Take them out', edits: [{ span: written, text: '' }], certain: false }]
          : [],
    });
  }

  private leaveRoom(): void {
    const room = this.rooms.pop();
    if (room === undefined) return;
    const left: Unclosed[] = [];
    while (room.open.length > 0) {
      const draft = this.drafts[room.open.pop() ?? -1];
      if (draft === undefined) break;
      draft.kind = 'broken';
      draft.to = this.reading.index.endOf(this.lastLine(room));
      draft.close = this.push(tokenTypes.passageClose, -1, null);
      left.push({ draft, room, stray: null });
    }
    this.unclosed.push(...left);
    this.waiting.unshift(...left);
  }

  private get room(): Room {
    const room = this.rooms.at(-1);
    if (room === undefined) throw new Error('the sheet itself is left last');
    return room;
  }

  private push(type: string, nesting: 1 | -1, from: Token | null): Token {
    const token = new this.state.Token(type, 'div', nesting);
    token.block = true;
    if (from !== null) {
      token.level = from.level;
      if (nesting === 1) token.map = from.map;
    }
    this.out.push(token);
    return token;
  }

  /** The last line of a room that has something on it. */
  private lastLine(room: Room): number {
    let line = Math.min(room.endLine, this.reading.index.lineCount) - 1;
    while (line > 0 && /^[\s>]*$/u.test(this.reading.line(line))) line--;
    return line;
  }

  private unclosedFinding({ draft, room, stray }: Unclosed): Finding {
    const { opening } = draft;
    const where = room.name === 'the sheet' ? '' : ` inside ${room.name}`;
    const until =
      room.name === 'the sheet' ? 'the end of the sheet' : `the end of ${room.name.replace('its', 'the')}`;
    return finding('passage-unclosed', {
      span: opening,
      message: `This passage is not closed${where}: pupils do not get anything from here to ${until}.`,
      fixes: [stray === null ? this.closeAtEnd(draft, room) : this.indent(draft, stray)],
      related: stray === null ? [] : [{ span: stray, message: 'These colons stand outside.' }],
    });
  }

  private indent(draft: Draft, stray: Span): Fix {
    const from = this.reading.index.startOf(this.reading.index.placeOf(stray.from).line);
    const edits = [{ span: span(from, stray.from), text: this.prefix(draft) }];
    return { title: 'Indent the closing colons', edits, certain: true };
  }

  private closeAtEnd(draft: Draft, room: Room): Fix {
    const { index, text } = this.reading;
    const end = index.endOf(this.lastLine(room));
    const lineEnd = text.includes('\r\n') ? '\r\n' : '\n';
    const edits = [{ span: span(end, end), text: `${lineEnd}${this.prefix(draft)}:::` }];
    return { title: 'Close it here', edits, certain: false };
  }

  /** What stands before the opening colons, with space in place of list marks. */
  private prefix({ opening }: Draft): string {
    const { index, text } = this.reading;
    const before = text.slice(index.startOf(index.placeOf(opening.from).line), opening.from);
    return before.replace(/[^\s>]/gu, ' ');
  }
}
