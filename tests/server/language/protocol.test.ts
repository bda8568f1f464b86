/** Every request of the protocol, put to a real server by an editor that knows much and by one that knows little. */
import { once } from 'node:events';
import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it, test } from 'vitest';
import type {
  CodeAction,
  CodeLens,
  CompletionItem,
  Diagnostic,
  DocumentHighlight,
  DocumentSymbol,
  FoldingRange,
  Hover,
  InlayHint,
  Location,
  Range,
  SemanticTokens,
  TextEdit,
  WorkspaceEdit,
} from 'vscode-languageserver-protocol/node';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { examineSheet, formatSheet } from '../../../shared/index.ts';
import { twoSetups } from '../../editing/cursor.ts';
import { Editor, type OpenText, plain, pulling } from './editor.ts';

const everything: Range = { start: { line: 0, character: 0 }, end: { line: 9999, character: 0 } };
const plainSpaces = (text: string): string => text.replaceAll('\u00a0', ' ');

const kept = (file: string): unknown => JSON.parse(readFileSync(new URL(file, import.meta.url), 'utf8'));

/** The lines that an edit of the workspace changes. */
function changedLines(open: OpenText, edit: WorkspaceEdit | null | undefined): readonly string[] {
  const before = open.text.split('\n');
  const after = TextDocument.applyEdits(open.document, edit?.changes?.[open.uri] ?? []).split('\n');
  return after.filter((line, i) => line !== before[i]);
}

describe('an editor that asks for findings', () => {
  let editor: Editor;
  beforeAll(async () => {
    editor = await Editor.start(pulling, { drawings: true });
  });
  afterAll(async () => {
    expect(await editor.stop()).toBe(0);
  });

  test('what the server can do', () => {
    expect(editor.initialized?.capabilities).toEqual(kept('initialize-pulling.json'));
  });

  test('findings are those of the command line', async () => {
    const open = editor.open(
      twoSetups.replace('1.5 V', '1,5 V').replace('at A 20 mm', 'at B 20 mm'),
      'found.md',
    );
    const report = await open.ask<{ items: Diagnostic[] }>('textDocument/diagnostic');
    const { findings } = examineSheet({ name: 'found.md', text: open.text });
    expect(findings.length).toBeGreaterThan(1);
    expect(report.items.map(({ code, range }) => [code, open.document.offsetAt(range.start)])).toEqual(
      findings.map(({ code, span }) => [code, span.from]),
    );
  });

  describe('about one sheet', () => {
    let open: OpenText;
    beforeAll(() => {
      open = editor.open(twoSetups);
    });

    test('hover', async () => {
      const hover = await open.ask<Hover>('textDocument/hover', { position: open.at('probe   M') });
      expect(open.document.getText(hover.range)).toBe('M');
      expect(plainSpaces(JSON.stringify(hover.contents))).toContain('reading: 0.75 V');
    });

    test('hover on the opening line shows the solved drawing', async () => {
      const hover = await open.ask<Hover>('textDocument/hover', { position: open.at('```elec') });
      const text = (hover.contents as { value: string }).value;
      expect(text.length).toBeLessThan(90_000);
      const data = /\(data:image\/svg\+xml;base64,([^)]*)\)/.exec(text)?.[1] ?? '';
      const svg = Buffer.from(data, 'base64').toString();
      expect(svg).toContain('<svg');
      expect(svg).toContain('equipotentials');
      // On a ground of its own: hovers are dark in dark themes.
      expect(svg).toMatch(/<\/desc>\n<rect[^>]* fill="#FFFFFF"\/>/);
      const drawing = await open.ask<{ svg: string }>('papervolt/drawing', { position: open.at('```elec') });
      expect(drawing.svg).toBe(svg);
    });

    test('inlay hints, in their range only', async () => {
      const hints = await open.ask<InlayHint[]>('textDocument/inlayHint', { range: everything });
      expect(hints.map(({ label }) => plainSpaces(String(label)))).toEqual([
        expect.stringMatching(/ mA, .* kΩ$/),
        '0.75 V',
        expect.stringMatching(/ V$/),
      ]);
      const one = await open.ask<InlayHint[]>('textDocument/inlayHint', {
        range: open.range('probe   M  at (115, 80) mm'),
      });
      expect(one.map(({ label }) => plainSpaces(String(label)))).toEqual(['0.75 V']);
    });

    test('code lens', async () => {
      const lenses = await open.ask<CodeLens[]>('textDocument/codeLens');
      expect(lenses.map(({ command }) => plainSpaces(command?.title ?? ''))).toEqual([
        expect.stringMatching(/^bars: .* mA, .* kΩ$/),
        'swapped: not solved',
      ]);
    });

    test('outline', async () => {
      const symbols = await open.ask<DocumentSymbol[]>('textDocument/documentSymbol');
      expect(symbols.map(({ name, children }) => [name, children?.length])).toEqual([
        ['bars', 5],
        ['swapped', 0],
      ]);
    });

    test('definition, references and highlights', async () => {
      const position = open.at('right of N');
      const given = await open.ask<Location[]>('textDocument/definition', { position });
      expect(given.map(({ range }) => open.document.offsetAt(range.start))).toEqual([
        open.text.indexOf('N  10 mm'),
      ]);
      const context = { includeDeclaration: true };
      const all = await open.ask<Location[]>('textDocument/references', { position, context });
      expect(all.length).toBe(5);
      const marked = await open.ask<DocumentHighlight[]>('textDocument/documentHighlight', { position });
      expect(marked.length).toBe(5);
    });

    test('rename', async () => {
      const position = open.at('row     A');
      const prepared = await open.ask<{ placeholder: string }>('textDocument/prepareRename', { position });
      expect(prepared.placeholder).toBe('A');
      const edit = await open.ask<WorkspaceEdit>('textDocument/rename', { position, newName: 'L' });
      expect(changedLines(open, edit)).toEqual([
        'row     L  from N to P every 10 mm',
        'probe   H  at L 20 mm',
        '?{readings bars.L, swapped.L}',
      ]);
    });

    test('a rename that would break the sheet is refused with a reason', async () => {
      const position = open.at('row     A');
      const refused = open.ask('textDocument/rename', { position, newName: 'M' });
      await expect(refused).rejects.toThrow('bars already has M.');
    });

    test('completion', async () => {
      const position = open.at('move    ');
      const items = await open.ask<CompletionItem[]>('textDocument/completion', { position });
      expect(items.slice(0, 5).map(({ label }) => label)).toEqual(['N', 'P', 'M', 'H', 'A']);
    });

    test('folds and colours', async () => {
      const folds = await open.ask<FoldingRange[]>('textDocument/foldingRange');
      expect(folds.map(({ startLine, endLine }) => [startLine, endLine])).toEqual([
        [0, 9],
        [11, 14],
      ]);
      const { data } = await open.ask<SemanticTokens>('textDocument/semanticTokens/full');
      expect(data.slice(0, 15)).toEqual([0, 14, 4, 1, 0, 1, 0, 5, 0, 0, 0, 8, 3, 2, 0]);
    });

    test('null in prose', async () => {
      const position = open.at('At M: ', -4);
      expect(await open.ask('textDocument/hover', { position })).toBe(null);
      expect(await open.ask('textDocument/prepareRename', { position })).toBe(null);
      expect(await open.ask('textDocument/completion', { position })).toBe(null);
    });
  });

  test('snippets', async () => {
    const open = editor.open('```electrodes\n\n```\n', 'snippets.md');
    const position = { line: 1, character: 0 };
    const items = await open.ask<CompletionItem[]>('textDocument/completion', { position });
    const probe = items.find(({ label }) => label === 'probe');
    expect(probe?.textEdit?.newText).toBe(`probe \${1:M} at (\${2:120}, \${3:80}) mm`);
  });

  test('formatting, whole and in part', async () => {
    const text = `Text  stays.\n\n${twoSetups.replace('probe   M  at', 'probe M at').replace('row     A', 'row A')}`;
    const open = editor.open(text, 'untidy.md');
    const options = { tabSize: 2, insertSpaces: true };
    const whole = await open.ask<TextEdit[]>('textDocument/formatting', { options });
    expect(TextDocument.applyEdits(open.document, whole)).toBe(formatSheet(text));
    const range = open.range('row A');
    const part = await open.ask<TextEdit[]>('textDocument/rangeFormatting', { options, range });
    expect(part.length).toBe(1);
  });

  test('quick fixes, all certain ones, and formatting as an action', async () => {
    const open = editor.open(
      twoSetups.replaceAll('```electrodes', '```Electrodes') +
        twoSetups
          .replaceAll(' bars', ' more')
          .replaceAll('bars.', 'more.')
          .replaceAll('swapped', 'other')
          .replace('1.5 V', '1,5 V')
          .replace('row     A', 'row A'),
      'fix.md',
    );
    const diagnostics: Diagnostic[] = [];
    const range = open.range('1,5');
    const quick = await open.ask<CodeAction[]>('textDocument/codeAction', {
      range,
      context: { diagnostics },
    });
    const writing = quick.find(({ title }) => title === 'Write 1.5 V');
    expect(writing?.kind).toBe('quickfix');
    expect(changedLines(open, writing?.edit)).toEqual(['supply  cell 1.5 V, internal 0.5 Ω']);
    const of = async (only: string): Promise<CodeAction[]> =>
      open.ask('textDocument/codeAction', { range: everything, context: { diagnostics, only: [only] } });
    const [all] = await of('source.fixAll');
    expect(all?.kind).toBe('source.fixAll.papervolt');
    expect(changedLines(open, all?.edit)).toContain('```electrodes bars');
    const [tidy] = await of('source.format.papervolt');
    expect(changedLines(open, tidy?.edit)).toEqual(['row     A  from N to P every 10 mm']);
  });

  test('places are exact beside astral characters, CRLF and tabs', async () => {
    const text = `# 𝑉 and 𝐸\r\n\r\n> \`\`\`electrodes\r\n> paper\t240 mm × 160 mm # 𝑉\r\n> supply cell 1,5 V\r\n> \`\`\`\r\n`;
    const open = editor.open(text, 'places.md');
    const report = await open.ask<{ items: Diagnostic[] }>('textDocument/diagnostic');
    const comma = report.items.find(({ code }) => code === 'decimal-comma');
    expect(open.document.getText(comma?.range)).toBe('1,5');
  });

  test('and behind a byte order mark, in names, inserts and edits', async () => {
    const text = `\ufeff# 𝑉\r\n\r\n- 𝑉 is ?{𝑉𝑀} V\r\n\r\n  \`\`\`electrodes\r\n  probe\t𝑉𝑀 at (1, 1) mm # 𝐸\r\n  \`\`\`\r\n`;
    const open = editor.open(text, 'marked.md');
    const position = open.at('?{𝑉');
    const prepared = await open.ask<{ range: Range }>('textDocument/prepareRename', { position });
    expect(open.document.getText(prepared.range)).toBe('𝑉𝑀');
    const edit = await open.ask<WorkspaceEdit>('textDocument/rename', { position, newName: '𝐾' });
    expect(changedLines(open, edit)).toEqual(['- 𝑉 is ?{𝐾} V\r', '  probe\t𝐾 at (1, 1) mm # 𝐸\r']);
    const { data } = await open.ask<SemanticTokens>('textDocument/semanticTokens/full');
    expect(data.slice(0, 10)).toEqual([5, 2, 5, 0, 0, 0, 6, 4, 1, 0]);
    open.edit(open.range('𝑀 at'), '𝐿 at');
    const symbols = await open.ask<DocumentSymbol[]>('textDocument/documentSymbol');
    expect(symbols[0]?.children?.map(({ name }) => name)).toEqual(['𝑉𝐿']);
  });

  test('a text without our blocks gets nulls at once', async () => {
    const open = editor.open(`# Plain\n\n${'Words of a long text. '.repeat(20_000)}`, 'plain.md');
    await open.ask('textDocument/hover', { position: { line: 0, character: 0 } });
    const position = { line: 2, character: 10 };
    const methods = ['hover', 'definition', 'prepareRename', 'completion'];
    for (const method of methods) expect(await open.ask(`textDocument/${method}`, { position })).toBe(null);
    expect(await open.ask('textDocument/diagnostic')).toEqual({ kind: 'full', items: [] });
    expect(await open.ask('textDocument/codeLens')).toBe(null);
  });
});

describe('an editor that is sent findings', () => {
  let editor: Editor;
  beforeAll(async () => {
    editor = await Editor.start(plain, { formatting: false });
  });
  afterAll(async () => {
    expect(await editor.stop()).toBe(0);
  });

  test('what the server can do', () => {
    expect(editor.initialized?.capabilities).toEqual(kept('initialize-plain.json'));
  });

  test('findings come with the version they belong to, and go when the text is closed', async () => {
    const open = editor.open(twoSetups.replace('1.5 V', '1,5 V'), 'sent.md');
    const first = await editor.findingsFor(open.uri, 1);
    expect(first.diagnostics.map(({ code }) => code)).toContain('decimal-comma');
    open.replace('1,5 V', '1.5 V');
    const second = await editor.findingsFor(open.uri, 2);
    expect(second.diagnostics.map(({ code }) => code)).not.toContain('decimal-comma');
    open.close();
    await open.ask('textDocument/hover', { position: { line: 0, character: 0 } });
    expect(editor.published.at(-1)).toEqual({ uri: open.uri, diagnostics: [] });
  });

  test('no snippets, no images', async () => {
    const open = editor.open(`\`\`\`electrodes\n\n\`\`\`\n\n${twoSetups}`, 'plain.md');
    const position = { line: 1, character: 0 };
    const items = await open.ask<CompletionItem[]>('textDocument/completion', { position });
    expect(items.find(({ label }) => label === 'probe')?.textEdit?.newText).toBe('probe M at (120, 80) mm');
    const hover = await open.ask<Hover>('textDocument/hover', { position: open.at('```electrodes b') });
    expect(JSON.stringify(hover.contents)).toContain('Equipotentials at');
    expect(JSON.stringify(hover.contents)).not.toContain('data:');
  });
});

describe('the process', () => {
  it('ends when its input ends, though something is being solved', async () => {
    const editor = await Editor.start(pulling);
    const open = editor.open(twoSetups);
    await open.ask('textDocument/documentSymbol');
    const exit = once(editor.process, 'exit');
    editor.process.stdin?.end();
    expect((await exit)[0]).toBe(1);
  });
});
