/**
 * Previews of sheets: while the editor shows a text, the drawings, tables and values that its reader gets are made by the solving thread
 * and sent, each once. The editor keeps what the text has now; what it no longer has is sent again when it comes back.
 */
import type { Connection } from 'vscode-languageserver';
import {
  type Audience,
  editing,
  messages,
  pieceWork,
  type ReadyPiece,
  type Wanted,
  wishesOf,
} from '../../shared/index.ts';
import type { House, Room } from './house.ts';
import type { MadePieces } from './preview-task.ts';
import type { OpenSheet } from './sheets.ts';
import { Shelf } from './shelf.ts';

export const preview: Room = (connection, house) => {
  const { documents, sheets } = house;
  const watched = new Map<string, Watched>();
  const ready = new Shelf<ReadyPiece>(mostReadyBytes);
  const changed = new Set<string>();

  connection.onNotification(messages.watch, ({ uri, audience }: editing.Watch) => {
    watched.get(uri)?.end();
    watched.delete(uri);
    if (audience === null) return;
    const one = new Watched(connection, house, { uri, audience, ready });
    watched.set(uri, one);
    one.look();
  });
  documents.onDidChangeContent(({ document: { uri } }) => {
    if (!watched.has(uri) || changed.has(uri)) return;
    changed.add(uri);
    // Edits that have come together are read once.
    setTimeout(() => {
      changed.delete(uri);
      watched.get(uri)?.look();
    });
  });
  sheets.onSolved(({ uri }) => watched.get(uri)?.look());
  documents.onDidClose(({ document: { uri } }) => {
    watched.get(uri)?.end();
    watched.delete(uri);
  });
};

/** Pieces that were made lately, for texts that are shown again and edits that are taken back. */
const mostReadyBytes = 16 * 2 ** 20;

interface Look {
  readonly uri: string;
  readonly audience: Audience;
  readonly ready: Shelf<ReadyPiece>;
}

type Quality = 'rough' | 'whole';

/** A text that the editor shows to one reader. */
class Watched {
  private readonly connection: Connection;
  private readonly house: House;
  private readonly shows: Look;
  private readonly sent = new Map<string, Quality>();
  /** Being made. */
  private readonly asked = new Set<string>();
  private keys: ReadonlySet<string> = new Set();
  private sheet: OpenSheet | null = null;
  private over = false;

  constructor(connection: Connection, house: House, look: Look) {
    this.connection = connection;
    this.house = house;
    this.shows = look;
  }

  end(): void {
    this.over = true;
    this.keys = new Set();
    this.house.solver.advance();
  }

  /** Compares what the text wants with what was sent, and has the rest made. */
  look(): void {
    const sheet = this.house.read(this.shows.uri);
    if (this.over || sheet === null) return;
    this.sheet = sheet;
    const { all } = wishesOf({ ...sheet.draft, bound: sheet.draft.binding.bound }, this.shows.audience);
    this.keys = new Set(all.map(({ key }) => key));
    for (const key of this.sent.keys()) if (!this.keys.has(key)) this.sent.delete(key);
    const missing = all.filter((wanted) => !this.asked.has(wanted.key) && this.isMissing(sheet, wanted));
    const kept = missing.flatMap(({ key }) => this.shows.ready.get(key) ?? []);
    if (kept.length > 0) this.send(kept, 'whole');
    for (const group of together(missing.filter(({ key }) => !this.sent.has(key) || this.isRough(key))))
      void this.make(sheet, group);
  }

  private isRough(key: string): boolean {
    return this.sent.get(key) === 'rough';
  }

  private isMissing(sheet: OpenSheet, { key, setups }: Wanted): boolean {
    if (!this.isRough(key)) return !this.sent.has(key);
    const { solutions } = this.house;
    return setups.every((block) => {
      const problem = sheet.problems[block];
      return problem === undefined || !solutions.isToCome(problem);
    });
  }

  private async make(sheet: OpenSheet, group: readonly Wanted[]): Promise<void> {
    for (const { key } of group) this.asked.add(key);
    const made = await this.made(sheet, group);
    for (const { key } of group) this.asked.delete(key);
    if (this.over) return;
    if (made !== null) this.send(made.pieces, made.rough ? 'rough' : 'whole');
    // What was dropped with an older text may be wanted by a newer one.
    else if (this.sheet !== sheet) this.look();
  }

  private async made(sheet: OpenSheet, group: readonly Wanted[]): Promise<MadePieces | null> {
    const { solutions, solver } = this.house;
    const wanted = (): boolean => group.some(({ key }) => this.keys.has(key));
    const blocks = group.some(({ solved }) => solved) ? (group[0]?.setups ?? []) : [];
    const problems = blocks.flatMap((block) => sheet.problems[block] ?? []);
    // Solving goes first: findings wait for it.
    const outcomes = await Promise.all(problems.map((problem) => solutions.outcome(problem)));
    if (!wanted() || outcomes.includes(null)) return null;
    const trouble = problems.flatMap(({ setup }, i): (readonly [number, string])[] => {
      const outcome = outcomes[i] ?? null;
      if (outcome === null || outcome.solved !== null) return [];
      return [[setup.block, editing.whyUnsolved(sheet.draft, setup.block, outcome.trouble)]];
    });
    const meant = { ...sheet.draft, bound: sheet.draft.binding.bound };
    const work = pieceWork(meant, this.shows.audience, group);
    const answer = await solver.ask({ kind: 'preview', ask: { work, problems, trouble }, wanted });
    if (answer === 'dropped') return null;
    // What has killed one thread is not given to the next.
    if (answer === 'lost') return { pieces: group.map(lost), rough: false };
    return answer.result;
  }

  private send(pieces: readonly ReadyPiece[], quality: Quality): void {
    const { uri, audience, ready } = this.shows;
    const current = pieces.filter(({ key }) => this.keys.has(key));
    for (const piece of pieces) if (quality === 'whole') ready.put(piece.key, piece, 2 * piece.html.length);
    if (current.length === 0) return;
    for (const { key } of current) this.sent.set(key, quality);
    const update: editing.PreviewUpdate = { uri, audience, keys: [...this.keys], pieces: current };
    void this.connection.sendNotification(messages.preview, update);
  }
}

const lost = ({ key }: Wanted): ReadyPiece => ({ key, html: '', message: 'The solver stopped over it.' });

/** Figures one by one, since each takes a while; values and tables of the same setups together. */
function together(all: readonly Wanted[]): readonly (readonly Wanted[])[] {
  const groups = new Map<string, Wanted[]>();
  for (const wanted of all) {
    const name = wanted.form === 'figure' ? `${wanted.of} ${wanted.number}` : `of ${wanted.setups.join(' ')}`;
    groups.set(name, [...(groups.get(name) ?? []), wanted]);
  }
  return [...groups.values()];
}
