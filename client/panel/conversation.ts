/**
 * The panel's side of the extension, without the editor: it decides which block is shown, hands questions of the page to the language
 * server and changes the text when asked. What either of them sends is looked at before it is acted upon.
 */
import { type editing, messages } from '../../shared/index.ts';
import type { Form } from './forms.ts';
import {
  type Applied,
  type AtPoint,
  answers,
  type OfHandle,
  type ToExtension,
  type ToPage,
  toExtension,
} from './protocol.ts';

/** A question to the language server that is under way. */
export interface Question {
  /** Rejects where there is no answer. */
  readonly answer: Promise<unknown>;
  /** It is not wanted any more. */
  cancel(): void;
}

/** The editor as the panel sees it. */
export interface Editor {
  ask(method: string, params: unknown): Question;
  post(message: ToPage): void;
  name(title: string): void;
  /** Version of an open text; null for one that is not open. */
  version(uri: string): number | null;
  /** All edits in one step that is undone as one; false where the editor refuses. */
  apply(uri: string, edits: readonly editing.PlacedEdit[]): Promise<boolean>;
  goTo(uri: string, place: editing.Place): void;
  log(message: string): void;
  after(milliseconds: number, run: () => void): void;
}

/** Where the panel looks. */
export interface Target {
  readonly uri: string;
  readonly place: editing.Place;
}

/** In the language of the editor. */
export interface ConversationWords {
  readonly noSheet: string;
  readonly noBlock: string;
  readonly noServer: string;
  readonly notApplied: string;
}

export const englishConversation: ConversationWords = {
  noSheet: 'Open a sheet with an electrodes block to see its drawing.',
  noBlock: 'This text has no electrodes block.',
  noServer: 'The language server does not answer.',
  notApplied: 'The text could not be changed.',
};

/** A text that changes under a question is asked for again, so many times, after ms. */
const retries = 4;
const pause_ms = 60;

export class Conversation {
  private readonly editor: Editor;
  private readonly words: ConversationWords;
  private target: Target | null = null;
  private last: ToPage | null = null;
  private shownUri: string | null = null;
  private drawing: Question | null = null;
  private preview: Question | null = null;
  /** Changes of the text, one after the other. */
  private changes: Promise<void> = Promise.resolve();

  constructor(editor: Editor, words: ConversationWords) {
    this.editor = editor;
    this.words = words;
  }

  /** Where the panel looks now; null before it has looked anywhere. */
  get looksAt(): Target | null {
    return this.target;
  }

  lookAt(target: Target): void {
    this.target = target;
    void this.refresh();
  }

  /** Asks for the drawing anew: the text has changed, or its solution has. */
  async refresh(): Promise<void> {
    const { target } = this;
    this.drawing?.cancel();
    if (target === null) {
      this.show({ kind: 'nothing', text: this.words.noSheet });
      return;
    }
    const params: editing.TextPlace = { textDocument: { uri: target.uri }, position: target.place };
    for (let attempt = 0; attempt <= retries; attempt++) {
      const question = this.editor.ask(messages.panel, params);
      this.drawing = question;
      const found = await this.answerOf(question, answers.panel);
      if (this.drawing !== question) return;
      if (found !== null) {
        this.drawn(target, found.value);
        return;
      }
      await this.pause();
      if (this.drawing !== question) return;
    }
    if (this.shownUri !== target.uri) this.show({ kind: 'nothing', text: this.words.noServer });
  }

  /** A text is closed: its drawing goes. */
  closed(uri: string): void {
    if (this.target?.uri !== uri) return;
    this.target = null;
    void this.refresh();
  }

  /** Something that the page has sent. */
  hear(data: unknown): void {
    const message = toExtension.read(data)?.value;
    if (message === undefined) this.editor.log('The panel has sent something without a form.');
    else this.heard(message);
  }

  private heard(message: ToExtension): void {
    switch (message.kind) {
      case 'ready':
        if (this.last !== null) this.editor.post(this.last);
        void this.refresh();
        break;
      case 'slip':
        void this.slip(message.ask, message);
        break;
      case 'move':
        void this.move(message.ask, message);
        break;
      case 'drop':
        this.change(message.ask, (uri) => ({ method: messages.move, params: moveAsk(uri, message, false) }));
        break;
      case 'addProbe':
        this.change(message.ask, (uri) => ({ method: messages.addProbe, params: pointAsk(uri, message) }));
        break;
      case 'cancel':
        this.preview?.cancel();
        break;
      case 'goTo':
        if (this.shownUri !== null) this.editor.goTo(this.shownUri, message);
    }
  }

  private drawn({ uri, place }: Target, drawing: editing.PanelDrawing | null): void {
    if (drawing === null) {
      // Another text without a block does not take the drawing away.
      if (this.shownUri === null || this.shownUri === uri) {
        this.shownUri = null;
        this.show({ kind: 'nothing', text: this.words.noBlock });
      }
      return;
    }
    this.shownUri = uri;
    this.editor.name(drawing.name);
    this.show({ kind: 'drawing', lookout: { uri, line: place.line }, drawing });
  }

  private show(message: ToPage): void {
    this.last = message;
    this.editor.post(message);
  }

  private async slip(ask: number, at: AtPoint): Promise<void> {
    const uri = this.shownUri;
    const question = uri === null ? null : this.editor.ask(messages.slip, pointAsk(uri, at));
    const found = question === null ? null : await this.answerOf(question, answers.slip);
    this.editor.post({ kind: 'slip', ask, slip: found?.value ?? null });
  }

  /** What a move would look like; the one before is not wanted any more. */
  private async move(ask: number, of: OfHandle): Promise<void> {
    this.preview?.cancel();
    await this.changes;
    const uri = this.shownUri;
    const question = uri === null ? null : this.editor.ask(messages.move, moveAsk(uri, of, true));
    this.preview = question;
    const moved = (question === null ? null : await this.answerOf(question, answers.moved))?.value ?? null;
    if (moved === null || 'refusal' in moved) this.editor.post({ kind: 'moved', ask, moved });
    else {
      const { drawing, handle, said } = moved;
      this.editor.post({ kind: 'moved', ask, moved: { drawing, handle, said } });
    }
  }

  private change(ask: number, request: (uri: string) => { method: string; params: unknown }): void {
    this.preview?.cancel();
    this.changes = this.changes.then(async () => {
      const uri = this.shownUri;
      const outcome = uri === null ? { refusal: this.words.noSheet } : await this.changed(uri, request(uri));
      this.editor.post({ kind: 'applied', ask, outcome });
      if ('refusal' in outcome) void this.refresh();
    });
  }

  /** Edits are made in the version of the text that they were written for, or asked for again. */
  private async changed(
    uri: string,
    { method, params }: { method: string; params: unknown },
  ): Promise<Applied> {
    for (let attempt = 0; attempt <= retries; attempt++) {
      const found = await this.answerOf(this.editor.ask(method, params), answers.moved);
      if (found !== null && found.value !== null) {
        const moved = found.value;
        if ('refusal' in moved) return moved;
        const { edits, version, handle, said } = moved;
        if (edits.length === 0) return { refusal: said };
        if (this.editor.version(uri) === version) {
          const done = await this.editor.apply(uri, edits);
          return done ? { handle, said } : { refusal: this.words.notApplied };
        }
      }
      await this.pause();
    }
    return { refusal: this.words.notApplied };
  }

  /** Null where there is no answer, or one that has not the form. */
  private async answerOf<T>(question: Question, form: Form<T>): Promise<{ readonly value: T } | null> {
    let answer: unknown;
    try {
      answer = await question.answer;
    } catch {
      // The text has changed meanwhile, or the server is gone: whoever asks sees to that.
      return null;
    }
    const found = form.read(answer);
    if (found === null) this.editor.log('The language server has answered the panel without a form.');
    return found;
  }

  private pause(): Promise<void> {
    return new Promise((go) => this.editor.after(pause_ms, go));
  }
}

const pointAsk = (uri: string, { block, x_mm, y_mm }: AtPoint): editing.PointAsk => ({
  textDocument: { uri },
  block,
  x_mm,
  y_mm,
});

const moveAsk = (uri: string, { block, handle, by_mm }: OfHandle, draw: boolean): editing.MoveAsk => ({
  textDocument: { uri },
  block,
  handle,
  by_mm,
  draw,
});
