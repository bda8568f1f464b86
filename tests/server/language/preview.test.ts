/** Previews over the protocol: what is sent while a text is watched, each part once. */
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type editing, messages } from '../../../shared/index.ts';
import { Editor, pulling } from './editor.ts';

const sheet = `# Sheet

A value ?{one.M}.

\`\`\`electrodes one
paper   240 mm × 160 mm, 5 kΩ per square
supply  cell 1.5 V
bar     N  10 mm × 120 mm at (60, 80) mm      negative
bar     P  10 mm × 120 mm, 100 mm right of N  positive
probe   M  at (115, 80) mm
\`\`\`

\`\`\`electrodes two like one
move P 90 mm right of N
\`\`\`
`;

let editor: Editor;
let updates: editing.PreviewUpdate[];
let looking: (() => void)[];

beforeEach(async () => {
  editor = await Editor.start(pulling);
  updates = [];
  looking = [];
  editor.connection.onNotification(messages.preview, (update: editing.PreviewUpdate) => {
    updates.push(update);
    for (const look of looking.splice(0)) look();
  });
});
afterEach(() => editor.stop());

const watch = (audience: editing.Watch['audience'], uri = 'file:///sheets/sheet.md'): void =>
  void editor.connection.sendNotification(messages.watch, { uri, audience });

/** All parts sent from `since` on, when there are as many as the text has keys that are not in `known`. */
async function sent(
  since = 0,
  known: ReadonlySet<string> = new Set(),
): Promise<readonly editing.PreviewPiece[]> {
  for (;;) {
    const now = updates.slice(since);
    const keys = (now.at(-1)?.keys ?? []).filter((key) => !known.has(key));
    const pieces = now.flatMap((update) => update.pieces);
    if (now.length > 0 && keys.every((key) => pieces.some((piece) => piece.key === key))) return pieces;
    await new Promise<void>((next) => looking.push(next));
  }
}

/** Anything that was to come has come: the server answers in order, and its thread is idle. */
async function quiet(text: { ask(method: string): Promise<unknown> }): Promise<void> {
  await text.ask('textDocument/diagnostic');
  await new Promise((next) => setTimeout(next, 300));
}

describe('a watched text', () => {
  it('is sent whole, a part at a time, and nothing twice', async () => {
    watch('teachers');
    const text = editor.open(sheet);
    const pieces = await sent();
    expect(pieces.length).toBe(3);
    expect(pieces.some(({ html }) => /0\.7[45]\u00a0V/u.test(html))).toBe(true);
    expect(pieces.filter(({ html }) => html.startsWith('<svg')).length).toBe(2);
    await quiet(text);
    expect(updates.flatMap((update) => update.pieces).length).toBe(3);
  });

  it('prose sends nothing, a block its own parts, and what comes back is sent again', async () => {
    watch('teachers');
    const text = editor.open(sheet);
    const first = await sent();
    const keys = new Set(first.map(({ key }) => key));
    const count = updates.length;
    text.replace('# Sheet', '# Sheets');
    await quiet(text);
    expect(updates.length).toBe(count);
    text.replace('90 mm right', '80 mm right');
    const [moved, ...others] = await sent(count, keys);
    expect(others).toEqual([]);
    expect(keys.has(moved?.key ?? '')).toBe(false);
    const again = updates.length;
    text.replace('80 mm right', '90 mm right');
    const second = first.filter(({ html }) => html.includes('papervolt-block-2'));
    const known = new Set(first.filter((piece) => !second.includes(piece)).map(({ key }) => key));
    expect(await sent(again, known)).toEqual(second);
  });

  it('a block that cannot be solved says why', async () => {
    watch('teachers');
    editor.open(sheet.replace('move P 90 mm right of N', 'move P at (62, 80) mm'));
    const pieces = await sent();
    const said = pieces.flatMap(({ message }) => message ?? []);
    expect(said).toEqual(['N (negative) and P (positive) touch at (65, 20) mm: a short circuit.']);
  });

  it('pupils get drawings without a solution, and no value', async () => {
    watch('pupils');
    editor.open(sheet);
    const pieces = await sent();
    expect(pieces.length).toBe(2);
    expect(pieces.every(({ html }) => html.startsWith('<svg') && !html.includes('-equipotentials'))).toBe(
      true,
    );
  });

  it('another reader gets the text anew; one that is no longer shown nothing', async () => {
    watch('pupils');
    const text = editor.open(sheet);
    await sent();
    const count = updates.length;
    watch('teachers');
    expect((await sent(count)).length).toBe(3);
    watch(null);
    const last = updates.length;
    text.replace('100 mm right', '110 mm right');
    await quiet(text);
    expect(updates.length).toBe(last);
  });
});
