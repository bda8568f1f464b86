/** Runs inside the host of the extensions, where the editor's interface for extensions is: what each request gives, as other extensions get it. */
import assert from 'node:assert/strict';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import * as vscode from 'vscode';

export interface Result {
  readonly name: string;
  /** Null where it passed. */
  readonly error: string | null;
}

const { executeCommand } = vscode.commands;
let document: vscode.TextDocument;

/** Called by the editor. Results go to a file of the workspace, since the editor has no other way to tell them. */
export async function run(): Promise<void> {
  const folder = vscode.workspace.workspaceFolders?.[0]?.uri;
  if (folder === undefined) throw new Error('there is no workspace');
  document = await vscode.workspace.openTextDocument(vscode.Uri.joinPath(folder, 'bars.md'));
  await vscode.window.showTextDocument(document);
  const results: Result[] = [];
  for (const [name, test] of Object.entries(tests)) {
    try {
      await test();
      results.push({ name, error: null });
    } catch (error) {
      results.push({ name, error: error instanceof Error ? (error.stack ?? error.message) : String(error) });
    }
  }
  writeFileSync(join(folder.fsPath, 'results.json'), JSON.stringify(results));
}

const tests: Readonly<Record<string, () => Promise<void>>> = {
  async 'it is activated by a Markdown file and gives the preview its plugin'() {
    const extension = vscode.extensions.getExtension<{ extendMarkdownIt: unknown }>('papervolt.papervolt');
    assert.ok(extension);
    const { extendMarkdownIt } = await extension.activate();
    assert.equal(typeof extendMarkdownIt, 'function');
  },

  async 'every command of the manifest is there'() {
    const extension = vscode.extensions.getExtension('papervolt.papervolt');
    const promised: { command: string }[] = extension?.packageJSON.contributes.commands;
    const present = await vscode.commands.getCommands(true);
    assert.ok(promised.length > 10);
    assert.deepEqual(
      promised.map(({ command }) => command).filter((command) => !present.includes(command)),
      [],
    );
  },

  async 'lenses lead to the drawing and tell current and resistance'() {
    const lenses = await filled(() =>
      executeCommand<vscode.CodeLens[]>('vscode.executeCodeLensProvider', document.uri, 20),
    );
    const commands = lenses.map(({ command }) => command);
    assert.equal(commands.filter((command) => command?.command === 'papervolt.showDrawing').length, 2);
    assert.ok(commands.some((command) => /mA.*kΩ/.test(command?.title ?? '')));
  },

  async 'hints stand behind probes and supplies'() {
    const all = new vscode.Range(0, 0, document.lineCount, 0);
    const hints = await filled(() =>
      executeCommand<vscode.InlayHint[]>('vscode.executeInlayHintProvider', document.uri, all),
    );
    const labels = hints.map(({ label }) => (typeof label === 'string' ? label : label[0]?.value));
    assert.ok(labels.some((label) => label?.includes('0.75\u00a0V')));
  },

  async 'a hover draws the setup, and fits into what the editor shows'() {
    const hover = await hoverAt('```electrodes bars', 6);
    assert.match(hover, /!\[.*\]\(data:image\/svg\+xml;base64,/);
    assert.ok(hover.length < 90_000);
  },

  async 'a hover explains a word of the language'() {
    assert.match(await hoverAt('equipotentials 0.25', 3), /equipotential/i);
  },

  async 'nothing is said elsewhere in the text'() {
    assert.equal(await hoverAt('Lines of equal', 3), '');
    const { items } = await completionsAt('Lines of equal', 5);
    assert.deepEqual(
      items.filter(({ detail }) => detail !== undefined),
      [],
    );
  },

  async 'names of the sheet are completed in inserts'() {
    const { items } = await completionsAt('The reading at M is ?{bars.', 27);
    const labels = items.map(({ label }) => (typeof label === 'string' ? label : label.label));
    assert.ok(labels.includes('M') || labels.includes('bars.M'), labels.join());
  },

  async 'the form of a line is told while it is written'() {
    const help = await executeCommand<vscode.SignatureHelp | undefined>(
      'vscode.executeSignatureHelpProvider',
      document.uri,
      placeOf('bar     N  10', 10),
    );
    assert.match(help?.signatures[0]?.label ?? '', /bar/);
  },

  async 'the outline holds setups with their parts'() {
    const symbols = await executeCommand<vscode.DocumentSymbol[]>(
      'vscode.executeDocumentSymbolProvider',
      document.uri,
    );
    const bars = flat(symbols).find(({ name }) => name === 'bars');
    assert.deepEqual(bars?.children.map(({ name }) => name).sort(), ['A', 'M', 'N', 'P']);
  },

  async 'a name leads to its line, and all its uses are found'() {
    const place = placeOf('from N to P', 5);
    const found = await executeCommand<(vscode.Location | vscode.LocationLink)[]>(
      'vscode.executeDefinitionProvider',
      document.uri,
      place,
    );
    const [definition] = found;
    const range =
      definition === undefined ? null : 'range' in definition ? definition.range : definition.targetRange;
    assert.equal(range?.start.line, placeOf('bar     N', 0).line);
    const uses = await executeCommand<vscode.Location[]>(
      'vscode.executeReferenceProvider',
      document.uri,
      place,
    );
    assert.ok(uses.length >= 4, String(uses.length));
  },

  async 'symbols of the workspace are ours alone'() {
    const symbols = await filled(() =>
      executeCommand<vscode.SymbolInformation[]>('vscode.executeWorkspaceSymbolProvider', 'wider'),
    );
    assert.ok(symbols.some(({ name }) => name === 'wider'));
  },

  async 'blocks and passages fold'() {
    const folds = await executeCommand<vscode.FoldingRange[]>(
      'vscode.executeFoldingRangeProvider',
      document.uri,
    );
    const starts = folds.map(({ start }) => start);
    assert.ok(starts.includes(placeOf('```electrodes bars', 0).line));
    assert.ok(starts.includes(placeOf('::: teachers', 0).line));
  },

  async 'a selection grows from the word to its line and its block'() {
    const [selection] = await executeCommand<vscode.SelectionRange[]>(
      'vscode.executeSelectionRangeProvider',
      document.uri,
      [placeOf('at (75, 85)', 4)],
    );
    const sizes: number[] = [];
    for (let step = selection; step !== undefined; step = step.parent ?? undefined)
      sizes.push(document.getText(step.range).length);
    assert.ok(sizes.length >= 3, sizes.join());
  },

  async 'the words of a block are painted'() {
    const tokens = await executeCommand<vscode.SemanticTokens | undefined>(
      'vscode.provideDocumentSemanticTokens',
      document.uri,
    );
    assert.ok((tokens?.data.length ?? 0) > 100);
  },

  async 'the whole text is not formatted unless that is asked for'() {
    const edits = await executeCommand<vscode.TextEdit[] | undefined>(
      'vscode.executeFormatDocumentProvider',
      document.uri,
      {},
    );
    assert.deepEqual(edits ?? [], []);
  },

  async 'a slip has its fix, and the fix mends it'() {
    const at = placeOf('cell 1.5 V', 6);
    const comma = new vscode.WorkspaceEdit();
    comma.replace(document.uri, new vscode.Range(at, at.translate(0, 1)), ',');
    assert.ok(await vscode.workspace.applyEdit(comma));
    const slip = await filled(async () =>
      vscode.languages.getDiagnostics(document.uri).filter(({ source }) => source === 'papervolt'),
    );
    const [diagnostic] = slip;
    assert.ok(diagnostic);
    const actions = await executeCommand<vscode.CodeAction[]>(
      'vscode.executeCodeActionProvider',
      document.uri,
      diagnostic.range,
      vscode.CodeActionKind.QuickFix.value,
    );
    const fix = actions.find(({ title }) => title === 'Write 1.5 V');
    assert.ok(fix?.edit, actions.map(({ title }) => title).join());
    assert.ok(await vscode.workspace.applyEdit(fix.edit));
    assert.equal(document.lineAt(at.line).text.includes('cell 1.5 V'), true);
  },

  async 'a rename gives one edit for all places'() {
    const edit = await executeCommand<vscode.WorkspaceEdit>(
      'vscode.executeDocumentRenameProvider',
      document.uri,
      placeOf('probe   M', 8),
      'H',
    );
    assert.ok(edit.get(document.uri).length >= 4);
  },
};

/** What a request gives once it gives something; the server may still be starting or solving. */
async function filled<T>(ask: () => Thenable<readonly T[]>): Promise<readonly T[]> {
  const end = Date.now() + 20_000;
  for (;;) {
    const given = await ask();
    if (given.length > 0) return given;
    if (Date.now() > end) throw new Error('nothing came within 20 s');
    await new Promise((done) => setTimeout(done, 50));
  }
}

/** A place behind the beginning of the first such words. */
function placeOf(words: string, more: number): vscode.Position {
  const found = document.getText().indexOf(words);
  if (found < 0) throw new Error(`no ${words} in the text`);
  return document.positionAt(found + more);
}

async function hoverAt(words: string, more: number): Promise<string> {
  const hovers = await executeCommand<vscode.Hover[]>(
    'vscode.executeHoverProvider',
    document.uri,
    placeOf(words, more),
  );
  return hovers
    .flatMap(({ contents }) => contents)
    .map((content) => (typeof content === 'string' ? content : content.value))
    .join('\n');
}

const completionsAt = (words: string, more: number): Thenable<vscode.CompletionList> =>
  executeCommand('vscode.executeCompletionItemProvider', document.uri, placeOf(words, more));

const flat = (symbols: readonly vscode.DocumentSymbol[]): readonly vscode.DocumentSymbol[] =>
  symbols.flatMap((symbol) => [symbol, ...flat(symbol.children)]);
