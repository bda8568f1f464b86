/** What the server tells the editor of its own accord: whether it is solving, and which texts have got a newer solution. */
import type { Connection } from 'vscode-languageserver';
import { type Examination, editing } from '../../shared/index.ts';
import type { Room } from './house.ts';
import { refreshHints, refreshLenses } from './refresh.ts';
import type { OpenSheet } from './sheets.ts';

/** Solving that is done sooner is not spoken of, ms. */
const unnoticed_ms = 200;
/** A pause between two pieces of work that is no end of solving, ms. */
const pause_ms = 50;

export const news: Room = (connection, { documents, sheets, solver, client }) => {
  const state = new State(connection, () => sheets.count);
  solver.onBusy = (busy) => state.busy(busy);
  solver.onFailure = (detail) => connection.console.error(`A task of the solver failed: ${detail}`);
  connection.onInitialized(() => state.tell());
  documents.onDidOpen(() => state.tell());
  documents.onDidClose(() => state.tell());

  sheets.onSolved((sheet) => {
    const { uri } = sheet;
    void connection.sendNotification(editing.messages.solved, { uri } satisfies editing.PanelStale);
    const before = sheets.lastShown(sheet);
    if (before !== null) void compare(sheet, shownIn(before));
  });

  /** Hints and lenses are asked for anew only where they say something else. */
  async function compare(sheet: OpenSheet, before: string): Promise<void> {
    const now = await sheets.shown(sheet);
    if (now === null || shownIn(now) === before) return;
    refreshHints(connection, client);
    refreshLenses(connection, client);
  }
};

const shownIn = (examination: Examination): string =>
  JSON.stringify([editing.hintsOf(examination), editing.lensesOf(examination)]);

class State {
  private readonly connection: Connection;
  private readonly sheets: () => number;
  private told: string | null = null;
  private solving = false;
  private beginning: Timer | null = null;
  private ending: Timer | null = null;

  constructor(connection: Connection, sheets: () => number) {
    this.connection = connection;
    this.sheets = sheets;
  }

  busy(busy: boolean): void {
    if (busy) {
      this.ending = stopped(this.ending);
      this.beginning ??= setTimeout(() => this.turn(true), unnoticed_ms);
    } else {
      this.ending ??= setTimeout(() => {
        this.ending = null;
        this.beginning = stopped(this.beginning);
        this.turn(false);
      }, pause_ms);
    }
  }

  /** Says nothing twice. */
  tell(): void {
    const state: editing.ServerState = { state: this.solving ? 'solving' : 'ready', sheets: this.sheets() };
    const told = JSON.stringify(state);
    if (told !== this.told) void this.connection.sendNotification(editing.messages.state, state);
    this.told = told;
  }

  private turn(solving: boolean): void {
    this.solving = solving;
    this.tell();
  }
}

type Timer = ReturnType<typeof setTimeout>;

function stopped(timer: Timer | null): null {
  if (timer !== null) clearTimeout(timer);
  return null;
}
