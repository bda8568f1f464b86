/** What the drawing panel asks, put to a real server: drawings, readings, moves that are only supposed, and their end. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { CancellationTokenSource } from 'vscode-languageserver-protocol/node';
import { editing } from '../../../shared/index.ts';
import { Editor, type OpenText, pulling } from './editor.ts';

const { messages } = editing;

const bars = `# Two bars

\`\`\`electrodes bars
paper   240 mm × 160 mm, 5 kΩ per square
supply  cell 1.5 V
meter   10 MΩ, resolution 0.01 V
bar     N  10 mm × 120 mm at (60, 80) mm        negative
bar     P  10 mm × 120 mm, 100 mm right of N    positive
probe   B  at (100, 95) mm
\`\`\`

Between them.

\`\`\`electrodes discs
paper   100 mm × 100 mm
supply  cell 3 V
disc    N  diameter 10 mm at (25, 50) mm  negative
disc    P  diameter 10 mm at (75, 50) mm  positive
\`\`\`
`;

let editor: Editor;
beforeAll(async () => {
  editor = await Editor.start(pulling);
});
afterAll(async () => {
  expect(await editor.stop()).toBe(0);
});

const panelAt = (open: OpenText, before: string): Promise<editing.PanelDrawing | null> =>
  open.ask(messages.panel, { position: open.at(before) });
const move = (open: OpenText, handle: string, by_mm: readonly [number, number], draw = true) =>
  open.ask<editing.Moved | null>(messages.move, { block: 0, handle, by_mm, draw });
const dots = (svg: string): string[] => svg.match(/<circle/gu) ?? [];

describe('the drawing', () => {
  test('is that of the block at the place, of the nearest above it, or of the first', async () => {
    const open = editor.open(bars, 'panel-places.md');
    const named = async (before: string) => (await panelAt(open, before))?.name;
    expect(await named('probe')).toBe('bars');
    expect(await named('Between')).toBe('bars');
    expect(await named('disc    P')).toBe('discs');
    expect(await named('# Two')).toBe('bars');
  });

  test('tells what can be moved, and where its line is', async () => {
    const open = editor.open(bars, 'panel-handles.md');
    const drawing = await panelAt(open, 'probe');
    expect(drawing?.handles.map(({ id, x_mm, y_mm }) => [id, x_mm, y_mm])).toEqual([
      ['electrode N', 60, 80],
      ['electrode P', 170, 80],
      ['probe B', 100, 95],
    ]);
    expect(drawing?.handles[2]?.place).toEqual({ line: open.at('probe').line, character: 0 });
    expect(drawing).toMatchObject({ version: 1, block: 0, stale: false, message: null });
    expect(drawing?.svg).toContain('id="panel-field-lines"');
  });

  test('of a text that is no sheet there is none', async () => {
    const open = editor.open('# Notes\n', 'panel-notes.md');
    expect(await panelAt(open, '# Notes')).toBeNull();
    expect(await open.ask(messages.slip, { block: 0, x_mm: 1, y_mm: 1 })).toBeNull();
    expect(await open.ask(messages.move, { block: 0, handle: 'x', by_mm: [1, 0], draw: true })).toBeNull();
  });

  test('of a block that cannot be solved is the last good one, with the reason', async () => {
    const open = editor.open(bars, 'panel-stale.md');
    const before = await panelAt(open, 'probe');
    await open.ask('textDocument/diagnostic');
    open.replace('100 mm right of N', '0.01 mm right of N');
    const now = await panelAt(open, 'probe');
    expect(now).toMatchObject({ version: 2, stale: true, svg: before?.svg, frame: before?.frame });
    expect(now?.message).toBeTruthy();
    open.replace('0.01 mm right of N', '90 mm right of N');
    expect(await panelAt(open, 'probe')).toMatchObject({ version: 3, stale: false, message: null });
  });

  test('of a block that never was solved is its outlines, and without paper nothing', async () => {
    const open = editor.open(bars.replace('supply  cell 1.5 V\n', ''), 'panel-outlines.md');
    const outlines = await panelAt(open, 'probe');
    expect(outlines).toMatchObject({ stale: false });
    expect(outlines?.svg).toContain('id="panel-metal"');
    expect(outlines?.message).toBeTruthy();
    const bare = editor.open(bars.replace(/^paper.*\n/mu, ''), 'panel-bare.md');
    expect(await panelAt(bare, 'probe')).toMatchObject({ svg: '', paper: { width_mm: 0, height_mm: 0 } });
  });
});

test('pointing reads the field that is kept', async () => {
  const open = editor.open(bars, 'panel-slip.md');
  await panelAt(open, 'probe');
  const slip = await open.ask<editing.Slip>(messages.slip, { block: 0, x_mm: 115, y_mm: 80 });
  // Midway by symmetry half of the cell; 1.5 V over 100 mm is 15 V/m, a little less where the field spreads.
  expect(slip.text.replaceAll('\u00a0', ' ')).toMatch(/^0\.75 V at \(115, 80\) mm; 1[45]\.\d V\/m toward N$/);
  expect(slip.direction_deg).toBeCloseTo(180, 0);
  expect(await open.ask(messages.slip, { block: 7, x_mm: 115, y_mm: 80 })).toBeNull();
});

describe('a move', () => {
  test('is supposed: edits and drawing come, the text and what is known of it stay', async () => {
    const open = editor.open(bars, 'panel-move.md');
    const before = await panelAt(open, 'probe');
    const moved = await move(open, 'electrode P', [10, 0]);
    if (moved === null || 'refusal' in moved) throw new Error('refused');
    expect(moved.edits.map(({ newText }) => newText).join()).toContain('110');
    expect(moved.drawing?.handles.find(({ id }) => id === 'electrode P')?.x_mm).toBe(180);
    expect(moved.drawing?.svg).not.toBe(before?.svg);
    expect(dots(moved.drawing?.svg ?? '').length).toBeGreaterThan(10);
    expect(await panelAt(open, 'probe')).toEqual(before);
    const [edit] = moved.edits;
    if (edit === undefined) throw new Error('no edit');
    open.edit(edit.range, edit.newText);
    const now = await panelAt(open, 'probe');
    expect(now?.svg).toBe(moved.drawing?.svg);
  });

  test('without a drawing is edits alone, and one that cannot be is refused', async () => {
    const open = editor.open(bars, 'panel-edits.md');
    expect(await move(open, 'probe B', [1, 1], false)).toMatchObject({ drawing: null, handle: 'probe B' });
    expect(await move(open, 'probe Z', [1, 1])).toHaveProperty('refusal');
  });

  test('onto other metal shows the outlines and says what is wrong', async () => {
    const open = editor.open(bars.replace('100 mm right of N', 'at (170, 80) mm'), 'panel-short.md');
    const moved = await move(open, 'electrode P', [-110, 0]);
    if (moved === null || 'refusal' in moved) throw new Error('refused');
    expect(moved.drawing?.stale).toBe(false);
    expect(moved.drawing?.message).toMatch(/N/u);
    expect(moved.drawing?.svg).not.toContain('panel-field-lines');
  });

  describe('that takes long', () => {
    const rows = Array.from(
      { length: 20 },
      (_, i) => `row R${i} from (${90 + i}, 10) mm to (${90 + i}, 150) mm every 1 mm\n`,
    );
    const slow = bars.replace('probe', `${rows.join('')}probe`);

    test('ends when there is a newer one', async () => {
      const open = editor.open(slow, 'panel-newest.md');
      const moves = Array.from({ length: 5 }, (_, i) => move(open, 'electrode P', [i + 1, 0]));
      const ends = await Promise.allSettled([...moves, move(open, 'electrode P', [9, 0], false)]);
      const answered = ends.map(({ status }) => status === 'fulfilled');
      expect(answered).toEqual([false, false, false, false, false, true]);
      open.close();
    });

    test('ends when it is cancelled', async () => {
      const open = editor.open(slow, 'panel-cancel.md');
      const cancelling = new CancellationTokenSource();
      const params = {
        textDocument: { uri: open.uri },
        block: 0,
        handle: 'electrode P',
        by_mm: [7, 0],
        draw: true,
      };
      const moving = editor.connection.sendRequest(messages.move, params, cancelling.token);
      cancelling.cancel();
      await expect(moving).rejects.toThrow();
      open.close();
    });
  });
});

test('a new probe gets its line, and the drawing follows when it stands', async () => {
  const open = editor.open(bars, 'panel-probe.md');
  const added = await open.ask<editing.Moved>(messages.addProbe, { block: 0, x_mm: 130, y_mm: 60 });
  if ('refusal' in added) throw new Error('refused');
  expect(added).toMatchObject({ handle: 'probe C', version: 1, drawing: null });
  for (const { range, newText } of added.edits) open.edit(range, newText);
  expect((await panelAt(open, 'probe'))?.handles.map(({ id }) => id)).toContain('probe C');
});
