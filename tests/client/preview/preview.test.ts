/** The preview in an editor that is played: what the server is told, when pages are rendered anew, what stands in for what is not ready. */
import MarkdownIt from 'markdown-it';
import { describe, expect, it } from 'vitest';
import { createPreview, type Preview } from '../../../client/preview/preview.ts';
import {
  type Audience,
  type editing,
  examineSheet,
  pieceWork,
  previewPieces,
  wishesOf,
} from '../../../shared/index.ts';

const sheet = `A value ?{M}.

\`\`\`electrodes
paper   240 mm × 160 mm, 5 kΩ per square
supply  cell 1.5 V
bar     N  10 mm × 120 mm at (60, 80) mm      negative
bar     P  10 mm × 120 mm, 100 mm right of N  positive
probe   M  at (115, 80) mm
draw    equipotentials
\`\`\`
`;
const moved = sheet.replace('(60, 80)', '(62, 80)');
const touching = sheet.replace('100 mm right', '0.001 mm right');

/** An editor that shows one text; its time goes on by hand. */
class Editor {
  readonly watches: editing.Watch[] = [];
  refreshes = 0;
  html = '';
  text = sheet;
  readonly preview: Preview;
  private readonly md = new MarkdownIt({ html: true });
  private now = 0;
  private waiting: { readonly at: number; readonly run: () => void }[] = [];
  private readonly uri: string;

  constructor(uri = 'file:///a.md', reader: Audience = 'teachers') {
    this.uri = uri;
    this.preview = createPreview(
      {
        watch: (watch) => this.watches.push(watch),
        refresh: () => {
          this.refreshes++;
          this.render();
        },
        later: (delay, run) => {
          const entry = { at: this.now + delay, run };
          this.waiting.push(entry);
          return () => {
            this.waiting = this.waiting.filter((other) => other !== entry);
          };
        },
      },
      reader,
    );
    expect(this.preview.extendMarkdownIt(this.md)).toBe(this.md);
  }

  render(text = this.text): string {
    this.text = text;
    this.html = this.md.render(text, { currentDocument: { toString: () => this.uri } });
    return this.html;
  }

  /** Until so many ms later. */
  pass(ms: number): void {
    this.now += ms;
    const due = this.waiting.filter(({ at }) => at <= this.now);
    this.waiting = this.waiting.filter(({ at }) => at > this.now);
    for (const { run } of due) run();
  }

  /** What the server sends for a text. */
  answer(text = this.text, audience: Audience = 'teachers', uri = this.uri): void {
    this.preview.take(updateFor(text, audience, uri));
  }
}

const known = new Map<string, editing.PreviewUpdate>();

function updateFor(text: string, audience: Audience, uri: string): editing.PreviewUpdate {
  const name = `${audience} ${text}`;
  const update = known.get(name) ?? made(text, audience);
  known.set(name, update);
  return { ...update, uri };
}

function made(text: string, audience: Audience): editing.PreviewUpdate {
  const examined = examineSheet({ name: 'a.md', text });
  const { all } = wishesOf(examined, audience);
  const trouble = new Map(examined.setups.map(({ block }) => [block, 'No solution.'] as const));
  const pieces = previewPieces(pieceWork(examined, audience, all), examined.solutions, trouble);
  return { uri: '', audience, keys: all.map(({ key }) => key), pieces };
}

describe('what the server is told', () => {
  it('a sheet that is rendered is watched, once', () => {
    const editor = new Editor();
    editor.render();
    editor.render(moved);
    expect(editor.watches).toEqual([{ uri: 'file:///a.md', audience: 'teachers' }]);
  });

  it('a text that is no sheet is not', () => {
    const editor = new Editor();
    expect(editor.render('# Notes\n')).toBe('<h1>Notes</h1>\n');
    expect(editor.watches).toEqual([]);
  });

  it('another reader, a new server, a closed text', () => {
    const editor = new Editor();
    editor.preview.connected();
    editor.render();
    editor.preview.show('pupils');
    editor.preview.connected();
    editor.preview.closed('file:///a.md');
    editor.preview.closed('file:///other.md');
    editor.preview.connected();
    expect(editor.watches.map(({ audience }) => audience)).toEqual(['teachers', 'pupils', 'pupils', null]);
    editor.render();
    expect(editor.watches.length).toBe(5);
  });
});

describe('refreshes', () => {
  it('what was not ready is shown half a second after it has come', () => {
    const editor = new Editor();
    expect(editor.render()).toContain('papervolt-waiting');
    editor.answer();
    editor.pass(499);
    expect(editor.refreshes).toBe(0);
    editor.pass(1);
    expect(editor.refreshes).toBe(1);
    expect(editor.html).not.toContain('papervolt-waiting');
    expect(editor.html).toContain('0.75');
    editor.pass(5000);
    editor.answer();
    editor.pass(5000);
    expect(editor.refreshes).toBe(1);
  });

  it('none where the editor has rendered in the meantime', () => {
    const editor = new Editor();
    editor.render();
    editor.answer();
    editor.pass(300);
    editor.render(`More. ${sheet}`);
    expect(editor.html).not.toContain('papervolt-waiting');
    editor.pass(5000);
    expect(editor.refreshes).toBe(0);
  });

  it('none where nothing that is shown has changed', () => {
    const editor = new Editor();
    editor.answer();
    editor.render();
    editor.answer(moved);
    editor.pass(5000);
    expect(editor.refreshes).toBe(0);
  });

  it('one for all that comes without half a second between', () => {
    const editor = new Editor();
    const { keys, pieces, ...rest } = updateFor(sheet, 'teachers', 'file:///a.md');
    editor.render();
    for (const piece of pieces) {
      editor.preview.take({ ...rest, keys, pieces: [piece] });
      editor.pass(400);
    }
    expect(editor.refreshes).toBe(0);
    editor.pass(100);
    expect(editor.refreshes).toBe(1);
  });

  it('a finer solution replaces what is shown', () => {
    const editor = new Editor();
    editor.render();
    editor.answer();
    editor.pass(500);
    const update = updateFor(sheet, 'teachers', 'file:///a.md');
    const pieces = update.pieces.map((piece) => ({ ...piece, html: piece.html.replace('0.75', '0.751') }));
    editor.preview.take({ ...update, pieces });
    editor.pass(500);
    expect(editor.refreshes).toBe(2);
    expect(editor.html).toContain('0.751');
  });

  it('another reader at once', () => {
    const editor = new Editor();
    editor.render();
    editor.answer();
    editor.pass(500);
    expect(editor.html).toContain('0.75');
    editor.preview.show('pupils');
    expect(editor.refreshes).toBe(2);
    expect(editor.html).not.toContain('0.75');
    // What the server sends late for the reader before.
    editor.answer();
    editor.pass(5000);
    expect(editor.refreshes).toBe(2);
  });
});

describe('what stands in', () => {
  function shown(): Editor {
    const editor = new Editor();
    editor.render();
    editor.answer();
    editor.pass(500);
    return editor;
  }

  it('the last drawing and value while an edit is being solved', () => {
    const editor = shown();
    const before = editor.html;
    const drawing = /<svg[\s\S]*?<\/svg>/u.exec(before)?.[0] ?? '';
    expect(editor.render(moved)).toContain(drawing);
    expect(editor.html).toContain(
      '<span class="papervolt-value papervolt-waiting"><span class="together">0.75',
    );
    editor.answer(moved);
    editor.pass(500);
    expect(editor.html).not.toContain('papervolt-waiting');
    expect(editor.html).not.toContain(drawing);
  });

  it('the last good drawing over several edits that cannot be solved, with the message', () => {
    const editor = shown();
    const drawing = /<svg[\s\S]*?<\/svg>/u.exec(editor.html)?.[0] ?? '';
    for (const text of [touching, touching.replace('0.001', '0.002')]) {
      editor.render(text);
      editor.answer(text);
      editor.pass(500);
      expect(editor.html).toContain(drawing);
      expect(editor.html).toContain('<div class="papervolt-drawing papervolt-stale">');
      expect(editor.html).toContain('No solution.');
    }
    editor.render(sheet);
    expect(editor.html).not.toContain('papervolt-stale');
  });

  it('nothing of a text that was closed', () => {
    const editor = shown();
    editor.preview.closed('file:///a.md');
    expect(editor.render(moved)).toContain('…');
  });

  it('a text without an address gets what is ready for others', () => {
    const editor = shown();
    const md = new MarkdownIt({ html: true });
    editor.preview.extendMarkdownIt(md);
    expect(md.render(sheet)).toContain('0.75');
    expect(md.render(moved)).toContain('…');
    expect(editor.watches.length).toBe(1);
  });
});
