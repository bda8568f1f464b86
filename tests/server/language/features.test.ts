/** What depends on how an editor is set up, and what a sheet shows while it is wrong, put to a real server. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, it, test } from 'vitest';
import {
  type CodeAction,
  type CodeLens,
  type Diagnostic,
  type DocumentLink,
  type Hover,
  type InlayHint,
  LSPErrorCodes,
  type Range,
  type SelectionRange,
  type SemanticTokens,
  type SignatureHelp,
  type SymbolInformation,
  type TextDocumentEdit,
  type WorkspaceEdit,
} from 'vscode-languageserver-protocol/node';
import { twoSetups } from '../../editing/cursor.ts';
import { Editor, type OpenText, plain, pulling } from './editor.ts';

const everything: Range = { start: { line: 0, character: 0 }, end: { line: 9999, character: 0 } };
const plainSpaces = (text: string): string => text.replaceAll('\u00a0', ' ');
const hoverText = (hover: Hover | null): string =>
  (hover?.contents as { value: string } | undefined)?.value ?? '';

interface Drawing {
  readonly svg: string;
  readonly message: string | null;
}

describe('an editor with all that ours has', () => {
  let editor: Editor;
  beforeAll(async () => {
    const options = {
      drawings: true,
      commands: true,
      files: true,
      explanations: 'command:explain?{code}',
      formatting: false,
    };
    const files = new Map([
      ['vfs://school/physics/bars.md', twoSetups],
      ['vfs://school/physics/plain.md', '# No block\n'],
      ['vfs://school/physics/gone.md', '```electrodes gone\nprobe Z at centre\n```\n'],
    ]);
    editor = await Editor.start(pulling, options, { files });
  });
  afterAll(async () => {
    expect(await editor.stop()).toBe(0);
  });

  test('lenses show the drawing', async () => {
    const open = editor.open(twoSetups, 'lenses.md');
    const lenses = await open.ask<CodeLens[]>('textDocument/codeLens');
    expect(lenses.map(({ command }) => [plainSpaces(command?.title ?? ''), command?.command])).toEqual([
      ['Show drawing', 'papervolt.showDrawing'],
      [expect.stringMatching(/ mA, .* kΩ$/), ''],
      ['Show drawing', 'papervolt.showDrawing'],
      ['not solved', ''],
    ]);
    expect(lenses[2]?.command?.arguments).toEqual([open.uri, { line: 11, character: 0 }]);
  });

  test('each finding leads to its explanation', async () => {
    const open = editor.open(twoSetups.replace('1.5 V', '1,5 V'), 'explained.md');
    const { items } = await open.ask<{ items: Diagnostic[] }>('textDocument/diagnostic');
    const comma = items.find(({ code }) => code === 'decimal-comma');
    expect(comma?.codeDescription?.href).toBe('command:explain?decimal-comma');
  });

  test('a finding names other places', async () => {
    const open = editor.open(`${twoSetups}\n\`\`\`electrodes bars\n\`\`\`\n`, 'related.md');
    const { items } = await open.ask<{ items: Diagnostic[] }>('textDocument/diagnostic');
    const twice = items.find(({ code }) => code === 'setup-name-twice');
    expect(twice?.relatedInformation?.map(({ location }) => location.uri)).toEqual([open.uri]);
  });

  test('signature help', async () => {
    const open = editor.open(twoSetups, 'signature.md');
    const help = await open.ask<SignatureHelp>('textDocument/signatureHelp', {
      position: open.at('change  N '),
    });
    const [form] = help.signatures;
    const active = form?.parameters?.[help.activeParameter ?? -1]?.label;
    expect(form?.label).toBe('change NAME TERMINAL');
    expect(active).toEqual([12, 20]);
    const inText = { position: open.at('At M') };
    expect(await open.ask('textDocument/signatureHelp', inText)).toBe(null);
  });

  test('symbols of the workspace, of open texts as they stand', async () => {
    const open = editor.open('```electrodes fresh\nprobe Zeta at centre\n```\n', 'open.md');
    const find = async (query: string): Promise<readonly (string | undefined)[]> => {
      const found = await editor.connection.sendRequest<SymbolInformation[]>('workspace/symbol', { query });
      return found.map(({ name, containerName, location }) => `${containerName}.${name} ${location.uri}`);
    };
    expect(await find('z')).toEqual([`fresh.Zeta ${open.uri}`, 'gone.Z vfs://school/physics/gone.md']);
    expect(await find('swp')).toContain('undefined.swapped vfs://school/physics/bars.md');
    open.close();
    const reads = editor.asked.filter((method) => method === 'papervolt/readFile').length;
    expect(await find('zeta')).toEqual([]);
    // The editor tells of changes: nothing is read twice.
    expect(editor.asked.filter((method) => method === 'papervolt/readFile').length).toBe(reads);
    const changes = [{ uri: 'vfs://school/physics/bars.md', type: 2 }];
    await editor.connection.sendNotification('workspace/didChangeWatchedFiles', { changes });
    await find('zeta');
    expect(editor.asked.filter((method) => method === 'papervolt/readFile').length).toBe(reads + 1);
  });

  test('links of the front matter', async () => {
    const text = `---\nrisk-assessment: ../ra/field.pdf\nsafety: kept-in "notes.md"\n---\n\n${twoSetups}`;
    const open = editor.open(text, 'links.md');
    const links = await open.ask<DocumentLink[]>('textDocument/documentLink');
    expect(links.map(({ target, range }) => [target, open.document.getText(range)])).toEqual([
      ['file:///ra/field.pdf', '../ra/field.pdf'],
      ['file:///sheets/notes.md', 'notes.md'],
    ]);
    expect(await editor.open(twoSetups, 'unlinked.md').ask('textDocument/documentLink')).toBe(null);
  });

  test('selections in blocks', async () => {
    const open = editor.open(twoSetups, 'selected.md');
    const inBlock = open.at('100 mm right');
    const inText = open.at('At M');
    const both = await open.ask<SelectionRange[]>('textDocument/selectionRange', {
      positions: [inBlock, inText],
    });
    expect(open.document.getText(both[0]?.range)).toBe('right of');
    expect(open.document.getText(both[0]?.parent?.range)).toBe('100 mm right of N');
    expect(both[1]).toEqual({ range: { start: inText, end: inText } });
    expect(await open.ask('textDocument/selectionRange', { positions: [inText] })).toBe(null);
  });

  test('colours of a range are those of the whole there', async () => {
    const open = editor.open(twoSetups, 'coloured.md');
    const line = open.range('move    M  at (100, 80) mm');
    const part = await open.ask<SemanticTokens>('textDocument/semanticTokens/range', { range: line });
    expect(part.data.slice(0, 5)).toEqual([line.start.line, 0, 4, 0, 0]);
    expect(part.data.length).toBe(5 * 6);
  });

  test('names in the text are renamed after a question', async () => {
    const open = editor.open(`${twoSetups}\nMove probe M, not row M.\n`, 'asked.md');
    const position = open.at('probe   M');
    const edit = await open.ask<WorkspaceEdit>('textDocument/rename', { position, newName: 'Q' });
    const [change] = (edit.documentChanges ?? []) as TextDocumentEdit[];
    const asked = change?.edits.filter((one) => 'annotationId' in one) ?? [];
    expect(change?.textDocument).toEqual({ uri: open.uri, version: 1 });
    expect(asked.map((one) => ('range' in one ? one.range : null))).toEqual([
      { start: open.at('Move probe '), end: open.at('Move probe M') },
    ]);
    expect(edit.changeAnnotations).toEqual({ text: { label: 'In the text', needsConfirmation: true } });
  });

  test('hints and lenses are switched, and asked for anew', async () => {
    const open = editor.open(twoSetups, 'switched.md');
    const change = (settings: object): Promise<void> =>
      editor.connection.sendNotification('workspace/didChangeConfiguration', { settings });
    const shown = async (): Promise<readonly boolean[]> => [
      (await open.ask<InlayHint[] | null>('textDocument/inlayHint', { range: everything })) !== null,
      (await open.ask<CodeLens[] | null>('textDocument/codeLens')) !== null,
    ];
    const refreshed = (): readonly string[] => editor.asked.filter((method) => method.endsWith('/refresh'));
    expect(await shown()).toEqual([true, true]);
    const before = refreshed().length;
    await change({ hints: false });
    expect(await shown()).toEqual([false, true]);
    await change({ papervolt: { hints: true, lenses: false } });
    expect(await shown()).toEqual([true, false]);
    expect(refreshed().slice(before)).toEqual([
      'workspace/inlayHint/refresh',
      'workspace/inlayHint/refresh',
      'workspace/codeLens/refresh',
    ]);
    await change({ lenses: true, hints: 'yes' });
    expect(await shown()).toEqual([true, true]);
  });

  describe('a block that cannot be solved', () => {
    const drawn = (open: OpenText): Promise<Drawing> =>
      open.ask('papervolt/drawing', { position: open.at('```elect') });
    const size = (svg: string): string => /viewBox="[^"]*"/.exec(svg)?.[0] ?? '';

    it('keeps its last drawing, pale and of the same size, with the reason below', async () => {
      const open = editor.open(twoSetups, 'broken.md');
      await open.ask('textDocument/diagnostic');
      const good = await drawn(open);
      open.replace('right of N', 'right of Q');
      await open.ask('textDocument/diagnostic');
      const stale = await drawn(open);
      expect(size(stale.svg)).toBe(size(good.svg));
      expect(stale.svg).toContain('fill-opacity');
      expect(stale.svg.replace(/<rect[^>]*fill-opacity[^>]*>\n/, '')).toBe(good.svg);
      expect(stale.message).toContain('Q');
      const hover = await open.ask<Hover>('textDocument/hover', { position: open.at('```elec') });
      expect(hoverText(hover)).toContain('data:image/svg+xml');
      expect(hoverText(hover)).toContain(stale.message);
      open.replace('right of Q', 'right of N');
      expect(await drawn(open)).toEqual(good);
      open.close();
    });

    it('shows its outlines where it never was solved, and where the text was closed meanwhile', async () => {
      const open = editor.open(twoSetups.replace('right of N', 'right of Q'), 'broken.md');
      await open.ask('textDocument/diagnostic');
      const outlines = await drawn(open);
      open.close();
      expect(outlines.svg).not.toContain('fill-opacity');
      expect(outlines.message).toContain('Q');
    });
  });

  test('a hover of a busy setup stays short', async () => {
    const lines = 'field-lines 200\nequipotentials every 0.02 V\nrow     A';
    const text = twoSetups.replace('row     A', lines);
    const open = editor.open(text, 'busy.md');
    const hover = await open.ask<Hover>('textDocument/hover', { position: open.at('```elec') });
    expect(hoverText(hover)).toContain('data:image/svg+xml');
    expect(hoverText(hover).length).toBeLessThan(90_000);
  });

  it('tells an editor to ask again for findings of a text that has changed meanwhile', async () => {
    const open = editor.open(twoSetups.replace('100 mm right', '101 mm right'), 'superseded.md');
    const first = open.ask('textDocument/diagnostic');
    open.replace('101 mm right', '110 mm right');
    const second = open.ask<{ items: Diagnostic[] }>('textDocument/diagnostic');
    await expect(first).rejects.toMatchObject({
      code: LSPErrorCodes.ServerCancelled,
      data: { retriggerRequest: true },
    });
    expect((await second).items.map(({ code }) => code)).toContain('circuit-open');
  });

  test('refactorings have their own kinds', async () => {
    const open = editor.open(twoSetups, 'refactored.md');
    const context = { diagnostics: [], only: ['refactor'] };
    const range = open.range('120 mm at (60');
    const actions = await open.ask<CodeAction[] | null>('textDocument/codeAction', { range, context });
    for (const { kind } of actions ?? []) expect(kind).toMatch(/^refactor\.(rewrite|extract)\.papervolt$/);
    expect(actions?.length).toBeGreaterThan(0);
  });
});

describe('an editor with little', () => {
  test('reads no command, finds files itself, has the page on findings, and no edit of the text', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'papervolt-'));
    try {
      mkdirSync(join(folder, 'node_modules/other'), { recursive: true });
      writeFileSync(join(folder, 'bars.md'), twoSetups);
      writeFileSync(join(folder, 'node_modules/other/README.md'), twoSetups);
      const editor = await Editor.start(plain, { hints: false }, { folder: pathToFileURL(folder).href });
      const found = await editor.connection.sendRequest<SymbolInformation[]>('workspace/symbol', {
        query: 'bars',
      });
      expect(found.map(({ location }) => location.uri)).toEqual([
        pathToFileURL(join(folder, 'bars.md')).href,
      ]);
      const open = editor.open(`${twoSetups.replace('1.5 V', '1,5 V')}\nMove probe M.\n`);
      const { diagnostics } = await editor.findingsFor(open.uri, 1);
      const comma = diagnostics.find(({ code }) => code === 'decimal-comma');
      expect(comma?.codeDescription?.href).toMatch(/^file:.*docs\/findings\.md#decimal-comma$/);
      expect(await open.ask('textDocument/inlayHint', { range: everything })).toBe(null);
      const lenses = await open.ask<CodeLens[]>('textDocument/codeLens');
      expect(lenses.map(({ command }) => command?.command)).toEqual(['', '']);
      const position = open.at('probe   M');
      const edit = await open.ask<WorkspaceEdit>('textDocument/rename', { position, newName: 'Q' });
      expect(edit.changes?.[open.uri]?.length).toBe(4);
      const help = await open.ask<SignatureHelp>('textDocument/signatureHelp', {
        position: open.at('change  '),
      });
      expect(help.signatures[0]?.parameters?.map(({ label }) => label)).toEqual(['NAME', 'TERMINAL']);
      expect(await editor.stop()).toBe(0);
      expect(editor.asked).toEqual([]);
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  });
});
