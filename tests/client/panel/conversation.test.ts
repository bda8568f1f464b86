/** The panel's side of the extension against an editor and a server that are played. */
import { describe, expect, test } from 'vitest';
import { Conversation, type Editor, englishConversation } from '../../../client/panel/conversation.ts';
import type { ToPage } from '../../../client/panel/protocol.ts';
import { type editing, messages } from '../../../shared/index.ts';

const uri = 'file:///sheet.md';
const drawing = (version: number, name = 'bars'): editing.PanelDrawing => ({
  version,
  block: 0,
  name,
  svg: '<svg/>',
  title: '',
  description: '',
  frame: { left: 0, top: 0, scale: 1 },
  paper: { width_mm: 1, height_mm: 1 },
  handles: [],
  stale: false,
  message: null,
});
const moved = (version: number): editing.Moved => ({
  edits: [{ range: { start: { line: 1, character: 0 }, end: { line: 1, character: 1 } }, newText: 'x' }],
  version,
  drawing: null,
  handle: 'probe M',
  said: 'probe M moves',
});

interface Played {
  readonly conversation: Conversation;
  readonly posted: ToPage[];
  readonly asked: { readonly method: string; readonly params: unknown; cancelled: boolean }[];
  readonly applied: (readonly editing.PlacedEdit[])[];
  readonly titles: string[];
  readonly logged: string[];
  version: number;
}

/** `answer` is the server: it may throw, as one that does not know the text any more. */
function played(answer: (method: string, count: number) => unknown): Played {
  const counts = new Map<string, number>();
  const game: Omit<Played, 'conversation'> = {
    posted: [],
    asked: [],
    applied: [],
    titles: [],
    logged: [],
    version: 1,
  };
  const editor: Editor = {
    ask(method, params) {
      const count = (counts.get(method) ?? 0) + 1;
      counts.set(method, count);
      const question = { method, params, cancelled: false };
      game.asked.push(question);
      return {
        answer: Promise.resolve().then(() => answer(method, count)),
        cancel: () => {
          question.cancelled = true;
        },
      };
    },
    post: (message) => void game.posted.push(message),
    name: (title) => void game.titles.push(title),
    version: () => game.version,
    apply: async (_, edits) => {
      game.applied.push(edits);
      return true;
    },
    goTo: () => undefined,
    log: (message) => void game.logged.push(message),
    after: (_, run) => void setTimeout(run, 0),
  };
  const conversation = new Conversation(editor, englishConversation);
  return Object.assign(game, { conversation });
}

/** All that is under way has come to its end. */
const settled = (): Promise<void> => new Promise((done) => setTimeout(done, 25));
const place = { line: 4, character: 0 };

describe('drawings', () => {
  test('the block at the place is shown under its name, and again to a page that is made anew', async () => {
    const game = played(() => drawing(1));
    game.conversation.lookAt({ uri, place });
    await settled();
    const shown = { kind: 'drawing', lookout: { uri, line: 4 }, drawing: drawing(1) };
    expect(game.posted).toEqual([shown]);
    expect(game.titles).toEqual(['bars']);
    game.conversation.hear({ kind: 'ready' });
    expect(game.posted.at(-1)).toEqual(shown);
  });
  test('a text that has changed under the question is asked for again', async () => {
    const game = played((_, count) => {
      if (count < 3) throw new Error('the text has changed');
      return drawing(2);
    });
    game.conversation.lookAt({ uri, place });
    await settled();
    expect(game.posted).toHaveLength(1);
    expect(game.asked).toHaveLength(3);
  });
  test('of several places the last is shown, and the questions before are cancelled', async () => {
    const game = played((_, count) => drawing(1, `number ${count}`));
    for (const line of [1, 2, 3]) game.conversation.lookAt({ uri, place: { line, character: 0 } });
    await settled();
    expect(game.titles).toEqual(['number 3']);
    expect(game.asked.map(({ cancelled }) => cancelled)).toEqual([true, true, false]);
  });
  test('another text without a block leaves the drawing, its own text without one takes it away', async () => {
    const game = played((_, count) => (count === 1 ? drawing(1) : null));
    game.conversation.lookAt({ uri, place });
    await settled();
    game.conversation.lookAt({ uri: 'file:///notes.md', place });
    await settled();
    expect(game.posted).toHaveLength(1);
    game.conversation.lookAt({ uri, place });
    await settled();
    expect(game.posted.at(-1)).toEqual({ kind: 'nothing', text: englishConversation.noBlock });
  });
  test('a closed text and a server that is silent are told', async () => {
    const game = played(() => {
      throw new Error('not there');
    });
    game.conversation.lookAt({ uri, place });
    await settled();
    await settled();
    expect(game.posted).toEqual([{ kind: 'nothing', text: englishConversation.noServer }]);
    game.conversation.closed(uri);
    await settled();
    expect(game.posted.at(-1)).toEqual({ kind: 'nothing', text: englishConversation.noSheet });
  });
});

describe('changes of the text', () => {
  const drop = { kind: 'drop', ask: 5, block: 0, handle: 'probe M', by_mm: [1, 0] };
  const serving = (answer: (count: number) => unknown): Played =>
    played((method, count) => (method === messages.panel ? drawing(1) : answer(count)));
  async function open(game: Played): Promise<Played> {
    game.conversation.lookAt({ uri, place });
    await settled();
    return game;
  }

  test('a drop is one change, made in the version that it was written for', async () => {
    const game = await open(serving((count) => moved(count)));
    game.version = 2;
    game.conversation.hear(drop);
    await settled();
    // The first answer was for an older version.
    expect(game.asked.filter(({ method }) => method === messages.move)).toHaveLength(2);
    expect(game.applied).toHaveLength(1);
    expect(game.posted.at(-1)).toEqual({
      kind: 'applied',
      ask: 5,
      outcome: { handle: 'probe M', said: 'probe M moves' },
    });
  });
  test('a refusal is handed on and nothing is changed', async () => {
    const game = await open(serving(() => ({ refusal: 'Its place is written in another sheet.' })));
    game.conversation.hear(drop);
    await settled();
    expect(game.applied).toEqual([]);
    expect(game.posted).toContainEqual({
      kind: 'applied',
      ask: 5,
      outcome: { refusal: 'Its place is written in another sheet.' },
    });
  });
  test('two changes are made one after the other', async () => {
    const game = await open(serving(() => moved(1)));
    game.conversation.hear(drop);
    game.conversation.hear({ kind: 'addProbe', ask: 6, block: 0, x_mm: 10, y_mm: 20 });
    await settled();
    const asks = game.posted.flatMap((message) => (message.kind === 'applied' ? [message.ask] : []));
    expect(asks).toEqual([5, 6]);
    expect(game.applied).toHaveLength(2);
  });
  test('a move that is only shown keeps its edits here, and a newer one cancels it', async () => {
    const game = await open(serving(() => moved(1)));
    const move = { kind: 'move', block: 0, handle: 'probe M', by_mm: [1, 0] };
    game.conversation.hear({ ...move, ask: 1 });
    await Promise.resolve();
    await Promise.resolve();
    game.conversation.hear({ ...move, ask: 2 });
    await settled();
    const moves = game.asked.filter(({ method }) => method === messages.move);
    expect(moves.map(({ cancelled }) => cancelled)).toEqual([true, false]);
    expect(game.posted.at(-1)).toEqual({
      kind: 'moved',
      ask: 2,
      moved: { drawing: null, handle: 'probe M', said: 'probe M moves' },
    });
    expect(game.applied).toEqual([]);
  });
  test('what has no form is not acted upon', async () => {
    const game = await open(serving(() => ({ edits: 'all of them' })));
    game.conversation.hear({ kind: 'drop' });
    game.conversation.hear('drop');
    game.conversation.hear(drop);
    await settled();
    await settled();
    expect(game.applied).toEqual([]);
    expect(game.logged.length).toBeGreaterThanOrEqual(3);
    expect(game.posted).toContainEqual({
      kind: 'applied',
      ask: 5,
      outcome: { refusal: englishConversation.notApplied },
    });
  });
});
