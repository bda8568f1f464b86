/** The texts that are open: each is read when it changes, and its setups are sent to be solved. */
import type { TextDocument } from 'vscode-languageserver-textdocument';
import {
  askOf,
  conclude,
  type Draft,
  draftSheet,
  type Examination,
  editing,
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
  private readonly examined = new WeakMap<OpenSheet, Promise<Examination | null>>();
  private readonly solutions: Solutions;

  constructor(solutions: Solutions) {
    this.solutions = solutions;
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
    const draft = draftSheet({ name: nameOf(uri), text });
    const problems = draft.setups.map((setup) => problemFor(setup, askOf(draft, setup)));
    const sheet = { uri, version, text, lines: lineIndex(text), draft, problems };
    this.open.set(uri, sheet);
    this.solutions.need(uri, urgentFirst(sheet, editedAt));
    return sheet;
  }

  close(uri: string): void {
    if (this.open.delete(uri)) this.solutions.release(uri);
  }

  isCurrent(sheet: OpenSheet): boolean {
    return this.open.get(sheet.uri) === sheet;
  }

  /** With all solutions; null where the text has changed meanwhile. */
  examination(sheet: OpenSheet): Promise<Examination | null> {
    const known = this.examined.get(sheet) ?? this.examine(sheet);
    this.examined.set(sheet, known);
    return known;
  }

  /** Of one block; null where the text has changed meanwhile. */
  async outcome(sheet: OpenSheet, block: number): Promise<Outcome | null> {
    const problem = sheet.problems[block];
    const outcome = problem === undefined ? null : await this.solutions.outcome(problem);
    return this.isCurrent(sheet) ? outcome : null;
  }

  async drawing(sheet: OpenSheet, block: number): Promise<editing.EditorDrawing | null> {
    const problem = sheet.problems[block];
    return problem === undefined ? null : this.solutions.drawing(problem);
  }

  private async examine(sheet: OpenSheet): Promise<Examination | null> {
    const outcomes = await Promise.all(sheet.problems.map((problem) => this.solutions.outcome(problem)));
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
