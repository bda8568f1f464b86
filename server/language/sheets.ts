/** The texts that are open: each is read when it changes, and its setups are sent to be solved. */
import type { TextDocument } from 'vscode-languageserver-textdocument';
import {
  askOf,
  conclude,
  type Draft,
  draftSheet,
  type Examination,
  editing,
  KnownBlocks,
  type LineIndex,
  lineIndex,
  mayBeSheet,
  type Outcome,
} from '../../shared/index.ts';
import { type Problem, problemFor, type Solutions } from './solutions.ts';

/** One version of a text. */
export interface OpenSheet {
  readonly uri: string;
  readonly version: number;
  readonly text: string;
  readonly lines: LineIndex;
  readonly draft: Draft;
  /** By number of the block. */
  readonly problems: readonly Problem[];
}

export class Sheets {
  private readonly open = new Map<string, OpenSheet>();
  private readonly known = new Map<string, KnownBlocks>();
  private readonly examined = new WeakMap<OpenSheet, Promise<Examination | null>>();
  private readonly shownOf = new WeakMap<OpenSheet, Promise<Examination | null>>();
  private readonly lastShownOf = new WeakMap<OpenSheet, Examination>();
  private readonly solutions: Solutions;
  private readonly listeners: ((sheet: OpenSheet) => void)[] = [];

  constructor(solutions: Solutions) {
    this.solutions = solutions;
    solutions.onSolved = (key) => {
      for (const sheet of this.open.values()) {
        if (!sheet.problems.some((problem) => problem.key === key)) continue;
        this.shownOf.delete(sheet);
        for (const listener of this.listeners) listener(sheet);
      }
    };
  }

  /** Told of each open sheet that has got a solution, or a better one. */
  onSolved(listener: (sheet: OpenSheet) => void): void {
    this.listeners.push(listener);
  }

  get count(): number {
    return this.open.size;
  }

  /** The sheet as the document stands; null for a text that has none of our blocks and says nothing like one. */
  read(document: TextDocument, editedAt = 0): OpenSheet | null {
    const { uri, version } = document;
    const known = this.open.get(uri);
    if (known?.version === version) return known;
    const text = document.getText();
    if (!mayBeSheet(text)) {
      this.close(uri);
      return null;
    }
    const blocks = this.known.get(uri) ?? new KnownBlocks();
    this.known.set(uri, blocks);
    const draft = draftSheet({ name: nameOf(uri), text }, {}, blocks);
    const problems = draft.setups.map((setup) => problemFor(setup, askOf(draft, setup)));
    const sheet = { uri, version, text, lines: lineIndex(text), draft, problems };
    this.open.set(uri, sheet);
    this.solutions.need(uri, urgentFirst(sheet, editedAt));
    return sheet;
  }

  close(uri: string): void {
    this.known.delete(uri);
    if (this.open.delete(uri)) this.solutions.release(uri);
  }

  isCurrent(sheet: OpenSheet): boolean {
    return this.open.get(sheet.uri) === sheet;
  }

  /**
   * With the solutions that stand, for findings: what a rough solution would say of a limit could be taken back. Null where the text has
   * changed meanwhile.
   */
  examination(sheet: OpenSheet): Promise<Examination | null> {
    const known = this.examined.get(sheet) ?? this.examine(sheet, (problem) => this.solutions.whole(problem));
    this.examined.set(sheet, known);
    return known;
  }

  /** With the best solutions so far, for what is shown beside the text. Null where the text has changed meanwhile. */
  shown(sheet: OpenSheet): Promise<Examination | null> {
    if (!this.isRough(sheet)) return this.examination(sheet);
    const known = this.shownOf.get(sheet) ?? this.show(sheet);
    this.shownOf.set(sheet, known);
    return known;
  }

  /** What was shown of a sheet before all its solutions stood; null where that was nothing. */
  lastShown(sheet: OpenSheet): Examination | null {
    return this.lastShownOf.get(sheet) ?? null;
  }

  /** True where solutions, or better ones, are still to come. */
  private isRough(sheet: OpenSheet): boolean {
    return sheet.problems.some((problem) => this.solutions.isToCome(problem));
  }

  /** The best so far of one block; null where the text has changed meanwhile. */
  async outcome(sheet: OpenSheet, block: number): Promise<Outcome | null> {
    const problem = sheet.problems[block];
    const outcome = problem === undefined ? null : await this.solutions.outcome(problem);
    return this.isCurrent(sheet) ? outcome : null;
  }

  async drawing(sheet: OpenSheet, block: number): Promise<editing.EditorDrawing | null> {
    const problem = sheet.problems[block];
    return problem === undefined ? null : this.solutions.drawing(problem);
  }

  private async show(sheet: OpenSheet): Promise<Examination | null> {
    const examined = await this.examine(sheet, (problem) => this.solutions.outcome(problem));
    if (examined !== null) this.lastShownOf.set(sheet, examined);
    return examined;
  }

  private async examine(
    sheet: OpenSheet,
    outcome: (problem: Problem) => Promise<Outcome | null>,
  ): Promise<Examination | null> {
    const outcomes = await Promise.all(sheet.problems.map(outcome));
    if (!this.isCurrent(sheet)) return null;
    return conclude(sheet.draft, ({ block }) => outcomes[block] ?? { solved: null, trouble: null });
  }
}

/** The block that was edited goes before the others. */
function urgentFirst({ draft, problems }: OpenSheet, editedAt: number): readonly Problem[] {
  const edited = editing.blockPlace(draft.sheet, editedAt)?.number;
  const first = edited === undefined ? undefined : problems[edited];
  return first === undefined ? problems : [first, ...problems.filter((problem) => problem !== first)];
}

/** The last part of a URI, for messages. */
function nameOf(uri: string): string {
  const last = uri.slice(uri.lastIndexOf('/') + 1);
  try {
    return decodeURIComponent(last);
  } catch {
    return last;
  }
}
